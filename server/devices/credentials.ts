import type { IncomingHttpHeaders } from 'node:http'
import { parseCookie, stringifySetCookie } from 'cookie'
import type { DeviceKind } from '../../shared-core/live/devices.ts'

export const COOKIE = 'boilboard_device'
/** The longest that browsers keep one (RFC 6265bis, section 5.5); the register forgets unused devices sooner. */
const COOKIE_LASTS_S = 400 * 86_400

export type Headers = Pick<IncomingHttpHeaders, 'cookie' | 'authorization'>

/** The secret that a request shows, and by what kind of device it can have been sent. */
export interface Shown {
  readonly token: string
  readonly kind: DeviceKind
}

/**
 * A browser shows its token as a cookie, a script as `Authorization: Bearer TOKEN` (RFC 6750, section 2.1). Where both
 * are there the header counts alone: a script means what it says. Another scheme shows a token that nobody has.
 * @returns null when nothing is shown
 */
export function shownBy({ cookie, authorization }: Headers): Shown | null {
  if (authorization !== undefined) {
    return { token: /^Bearer +([\w.~+/-]+=*) *$/i.exec(authorization)?.[1] ?? '', kind: 'script' }
  }
  const token = cookie === undefined ? undefined : parseCookie(cookie)[COOKIE]
  return token === undefined || token === '' ? null : { token, kind: 'screen' }
}

/**
 * Set-Cookie (RFC 6265, section 4.1) for a device that has joined: no script reads it, no other site's page sends it.
 * Plain http on the shop's network is the normal case, so it is Secure only where the shop serves https.
 */
export function setCookie(token: string, isSecure: boolean): string {
  return stringifySetCookie({
    ...{ name: COOKIE, value: token, path: '/', maxAge: COOKIE_LASTS_S },
    ...{ httpOnly: true, sameSite: 'strict', secure: isSecure },
  })
}
