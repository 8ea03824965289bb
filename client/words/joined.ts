/** Words with a space between, empty ones left out. */
export function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ')
}

/** @example listed('loaded 3', 'Onion 24') // 'loaded 3: Onion 24' */
export function listed(what: string, contents: string): string {
  return contents === '' ? what : `${what}: ${contents}`
}

/** Stays in one row where keys break their words. @example unbroken('18 h') */
export function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0')
}

export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
