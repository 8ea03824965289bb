/** @example atClock('5:10 am') // 'at 5:10 am' @example atClock('Fri, Nov 27, 5:10 am') // 'on Fri, Nov 27, 5:10 am' */
export function atClock(clock: string): string {
  return `${/^\d/.test(clock) ? 'at' : 'on'} ${clock}`
}
