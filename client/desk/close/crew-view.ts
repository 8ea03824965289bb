/** Longer than any crew works in a day. */
const HOURS_MAX = 200

export type CrewRead =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'minutes'; readonly minutes: number }
  | { readonly kind: 'wrong' }

/** Hours as they were typed, with a point or a comma, as whole minutes. @example readCrew('17,5') // 1050 minutes */
export function readCrew(text: string): CrewRead {
  const typed = text.trim().replace(',', '.')
  if (typed === '') return { kind: 'nothing' }
  if (!/^\d{1,3}(\.\d{1,2})?$/.test(typed) || Number(typed) > HOURS_MAX) return { kind: 'wrong' }
  return { kind: 'minutes', minutes: Math.round(Number(typed) * 60) }
}
