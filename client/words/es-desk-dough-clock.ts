/** One o’clock is singular, a day has an article. @example atClock('1:05 p. m.') // 'a la 1:05 p. m.' */
export function atClock(clock: string): string {
  if (!/^\d/.test(clock)) return `el ${clock}`
  return `${/^1:/.test(clock) ? 'a la' : 'a las'} ${clock}`
}

/** After “antes”. @example ofClock('9:30 a. m.') // 'de las 9:30 a. m.' */
export function ofClock(clock: string): string {
  if (!/^\d/.test(clock)) return `del ${clock}`
  return `${/^1:/.test(clock) ? 'de la' : 'de las'} ${clock}`
}
