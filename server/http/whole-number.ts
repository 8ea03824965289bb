/** A whole number out of a query; what was left out is `otherwise`, what is none is null. */
export function wholeNumber(raw: unknown, otherwise: number): number | null {
  if (raw === undefined) return otherwise
  return typeof raw === 'string' && /^\d{1,15}$/.test(raw) ? Number(raw) : null
}
