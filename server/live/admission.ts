import { isIP } from 'node:net'

/**
 * Which browsers may talk to the server. Any page on any site can reach an open port on the shop's network, so a
 * request must name this server by an address or a name of its own (a page that had its name pointed here gets nothing)
 * and, where a browser says what page it comes from, it must be one of ours.
 */
export interface Admission {
  /** Names of this server besides addresses, localhost and *.local. */
  readonly names: readonly string[]
}

export function isHostOurs(host: string | undefined, { names }: Admission): boolean {
  if (host === undefined) return false
  const name = nameOf(host)
  if (name === null) return false
  return isIP(name) !== 0 || name === 'localhost' || name.endsWith('.local') || names.includes(name)
}

/** @param origin the Origin header; undefined from what is no browser, and from a browser's plain page load */
export function isOriginOurs(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true
  try {
    return host !== undefined && new URL(origin).host === host.toLowerCase()
  } catch {
    return false
  }
}

function nameOf(host: string): string | null {
  // What no browser sends, such as a user before an @, must not be read as a part of something else.
  if (!/^[\w.:[\]-]+$/.test(host)) return null
  try {
    return new URL(`http://${host}`).hostname.replace(/^\[|\]$/g, '').toLowerCase()
  } catch {
    return null
  }
}
