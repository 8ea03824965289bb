/** A zone in which it is now about so late, so that a day's hours stand around the present, whatever the machine's clock says. */
export function zoneAtHour(hour: number, now = new Date()): string {
  const ahead = ((hour - now.getUTCHours() + 36) % 24) - 12
  // In these names the sign is the other way round: Etc/GMT-3 is three hours ahead.
  return ahead === 0 ? 'Etc/GMT' : `Etc/GMT${ahead > 0 ? '-' : '+'}${Math.abs(ahead)}`
}
