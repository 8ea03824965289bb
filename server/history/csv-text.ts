/** A spreadsheet runs a cell that begins with one of these; a minus before a number of ours is no name. */
export function asText(name: string): string {
  return /^[=+\-@\t\r]/.test(name) ? `'${name}` : name
}
