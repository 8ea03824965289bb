/** One o’clock is singular. @example atClock('1:05 p. m.') // 'a la 1:05 p. m.' */
export function atClock(clock: string): string {
  return `${/^1:/.test(clock) ? 'a la' : 'a las'} ${clock}`
}
