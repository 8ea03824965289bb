/**
 * A link may name the screen that it opens ("/wall?name=Boiler%20wall"): the desk draws such links as codes to be read by a
 * tablet, and a kiosk begins with one. The name wins over the one that the device had, and leaves the address afterwards,
 * so that a screen that is renamed by hand stays so when its page is loaded anew.
 */

const FIELD = 'name'

/** @param search a page's query @returns null when it gives no name @example nameInLink('?name=Boiler%20wall') // 'Boiler wall' */
export function nameInLink(search: string): string | null {
  const name = (new URLSearchParams(search).get(FIELD) ?? '').trim()
  return name === '' ? null : name
}

/** The address without the name, from its path on. */
export function withoutName({ pathname, search, hash }: Pick<URL, 'pathname' | 'search' | 'hash'>): string {
  const fields = new URLSearchParams(search)
  fields.delete(FIELD)
  const rest = fields.toString()
  return `${pathname}${rest === '' ? '' : `?${rest}`}${hash}`
}

/** A screen's link with a name in it. @example linkFor('http://boilboard.local:4610', 'wall', 'Boiler') */
export function linkFor(base: string, page: string, name: string): string {
  const address = `${base.replace(/\/+$/, '')}/${page}`
  return name.trim() === '' ? address : `${address}?${FIELD}=${encodeURIComponent(name.trim())}`
}
