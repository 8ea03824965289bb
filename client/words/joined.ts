/** Words with a space between, empty ones left out. */
export function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ')
}

/** @example listed('loaded 3', 'Onion 24') // 'loaded 3: Onion 24' */
export function listed(what: string, contents: string): string {
  return contents === '' ? what : `${what}: ${contents}`
}

export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
