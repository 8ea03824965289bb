/**
 * One touch must be one press. Wet glass and a broad knuckle make a screen report the same touch twice, and after a
 * press another key may already lie under the finger. So a press that comes right after the last one and at the same
 * place of the glass is the same touch, whatever key it lands on; another hand at another key is not held back.
 */
export interface Press {
  /** Of the event's own clock, which never goes back (`event.timeStamp`). */
  readonly atMs: number
  /** Place on the glass in CSS pixels; null for a keyboard or a screen reader, which have none. */
  readonly place: { readonly x: number; readonly y: number } | null
}

/** Bounce ends well before, and nobody presses one large key twice as fast on purpose. */
export const SAME_TOUCH_MS = 250
/** For keys that count up and down, where people do tap fast: about eight a second. */
export const FAST_TAP_MS = 120
/** Half a key. Two fingers cannot be nearer to each other. */
export const SAME_TOUCH_MM = 12

/** Whether a press is a touch of its own and not an echo of the last one. */
export function isOwnTouch(
  last: Press | null,
  press: Press,
  { withinMs = SAME_TOUCH_MS, mmPx }: { readonly withinMs?: number; readonly mmPx: number },
): boolean {
  if (last === null || press.atMs - last.atMs >= withinMs) return true
  if (last.place === null || press.place === null) return last.place !== press.place
  const apartPx = Math.hypot(press.place.x - last.place.x, press.place.y - last.place.y)
  return apartPx >= SAME_TOUCH_MM * mmPx
}
