/** The time that a line of a load list begins with. */
export type TypedTime =
  | { readonly kind: 'none' }
  /** `at`: on a 24-hour clock, as the server takes it. */
  | { readonly kind: 'time'; readonly at: string; readonly rest: string }
  /** Meant as a time, but there is none like it. */
  | { readonly kind: 'wrong'; readonly typed: string; readonly rest: string }

/**
 * Reads it on a 24-hour clock, or on a 12-hour one with am or pm; without either the hours are those of the whole day.
 * @example typedTime('9:10 pm Sesame 36') // { kind: 'time', at: '21:10', rest: 'Sesame 36' }
 */
export function typedTime(line: string): TypedTime {
  const half = HALF_DAY.exec(line)
  const found = half ?? WHOLE_DAY.exec(line)
  if (found === null) return { kind: 'none' }
  const [text, hourText = '', minuteText = '', letter] = found
  const rest = line.slice(text.length).trimStart()
  const wrong = { kind: 'wrong', typed: text.trim(), rest } as const
  const hour = Number(hourText)
  const minutes = minuteText === '' && half !== null ? '00' : minuteText
  if (!/^[0-5]\d$/.test(minutes) || hourText.length > 2) return wrong
  if (half === null) return hour > 23 ? wrong : { kind: 'time', at: `${hourText}:${minutes}`, rest }
  if (hour < 1 || hour > 12) return wrong
  const inDay = (hour % 12) + (letter?.toLowerCase() === 'p' ? 12 : 0)
  return { kind: 'time', at: `${inDay}:${minutes}`, rest }
}

/** "9:10 pm", "9pm", "9:10 p. m." */
const HALF_DAY = /^(\d+)(?:[:.](\S*?))?\s*([ap])\.?\s?m\.?(?:\s+|$)/i
/** "9:10", and what else begins so. */
const WHOLE_DAY = /^(\d+)[:.h](\S*)(?:\s+|$)/i
