/** In the shop's money, as no currency is known. @example money(1250) // "12.50" */
export function money(cents: number): string {
  return (cents / 100).toFixed(2)
}
