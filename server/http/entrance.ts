import type { Express, NextFunction, Request, RequestHandler, Response } from 'express'
import { ipKeyGenerator, rateLimit } from 'express-rate-limit'
import { COOKIE } from '../devices/credentials.ts'
import type { Door, Grant } from '../devices/door.ts'
import { rightOf } from '../devices/route-rights.ts'
import type { Admission } from '../live/admission.ts'
import { isHostOurs, isOriginOurs } from '../live/admission.ts'
import { sendProblem } from './problem.ts'

/** Orders as a calendar to subscribe to. */
export const ORDERS_CALENDAR = '/api/v1/orders.ics'

/** From one address; a till that posts each sale stays far below. */
const REQUESTS_A_MINUTE_MAX = 600

export interface Entrance extends Admission {
  readonly door: Door
}

/** Who asks, for all that comes after the entrance. */
export interface Asker {
  readonly door: Door
  readonly grant: Grant
}

/** What every request passes before anything of it is read: its names, how often it comes, and who it is. */
export function entrance(app: Express, { door, ...admission }: Entrance): void {
  app.use(namesOurs(admission, door))
  app.use('/api', notTooOften(door))
  app.use((request, response, next) => {
    const grant = door.identify(request.headers, keyIn(request))
    const asker: Asker = { door, grant }
    response.locals.asker = asker
    // What is read or told of a shop stays in no cache.
    if (request.path.startsWith('/api')) response.set('cache-control', 'no-store')
    if (isForeignPages(request)) refuseForeignPage(request, response)
    else letIn(request, response, next)
  })
}

/** Calendars send no headers of their own: their secret stands in the link, and counts for that link alone. */
function keyIn({ path, query }: Request): string | null {
  return path === ORDERS_CALENDAR && typeof query.key === 'string' ? query.key : null
}

/** @throws where a route was not reached through the entrance */
export function askerOf(response: Response): Asker {
  const { asker } = response.locals
  if (asker === undefined) throw new Error('no route without an entrance')
  return asker
}

/** Whose tries and requests are counted together: of an IPv6 address its network, since a machine has many of those. */
export function addressKey(request: Request): string {
  return ipKeyGenerator((request.socket.remoteAddress ?? '').replace(/^::ffff:/, ''), IPV6_NETWORK_BITS)
}
const IPV6_NETWORK_BITS = 64

function namesOurs(admission: Admission, door: Door): RequestHandler {
  return (request, response, next) => {
    const { host, origin } = request.headers
    const isHost = isHostOurs(host, admission)
    if (isHost && isOriginOurs(origin, host)) return next()
    door.refused.count(isHost ? 'foreign-origin' : 'foreign-host', request.socket.remoteAddress)
    const detail = 'Open Boilboard by one of the addresses that it prints at its start, or start it with --host NAME.'
    sendProblem(response, { status: 403, title: 'Not this server’s name', detail })
  }
}

function notTooOften(door: Door): RequestHandler {
  return rateLimit({
    windowMs: 60_000,
    limit: REQUESTS_A_MINUTE_MAX,
    standardHeaders: true,
    legacyHeaders: false,
    handler: (request, response) => {
      door.refused.count('too-many', request.socket.remoteAddress)
      sendProblem(response, {
        status: 429,
        title: 'Too many requests',
        detail: `At most ${REQUESTS_A_MINUTE_MAX} a minute from one address.`,
      })
    },
  })
}

/**
 * Whether a page that is not ours may have made the browser ask, cookie and all. Browsers name the page's origin with
 * whatever changes something; what carries our cookie and names none is none that we know. The fetch metadata
 * (Sec-Fetch-Site, sent to https and to this machine) also tells a page on another port of this host, which the cookie's
 * SameSite does not keep out.
 */
function isForeignPages({ method, path, headers }: Request): boolean {
  const site = headers['sec-fetch-site']
  if (path.startsWith('/api') && site !== undefined && site !== 'same-origin' && site !== 'none') return true
  const isChange = !['GET', 'HEAD', 'OPTIONS'].includes(method)
  const isByCookie = headers.authorization === undefined && headers.cookie?.includes(COOKIE) === true
  return isChange && isByCookie && headers.origin === undefined && site !== 'same-origin'
}

function refuseForeignPage(request: Request, response: Response): void {
  askerOf(response).door.refused.count('foreign-origin', request.socket.remoteAddress)
  const detail = 'Only pages of this server may ask with a device’s cookie. A script sends Authorization: Bearer TOKEN.'
  sendProblem(response, { status: 403, title: 'Not from this page', detail })
}

/**
 * Whether who asks may have what is asked for; asked once more when the body is here, which a slow sender draws out for a
 * minute: meanwhile the desk may have shown it out.
 */
export function letIn(request: Request, response: Response, next: NextFunction): void {
  const { door, grant } = askerOf(response)
  const right = rightOf(request.method, request.path)
  const device = door.deviceOf(grant)
  if (grant.kind === 'open' || right === null || right === 'everybody') next()
  else if (device === null) refuseStranger(request, response)
  else if (right.includes(device.role)) next()
  else {
    door.refused.count('not-its-role', request.socket.remoteAddress)
    const detail = `This device has joined as ${device.role}; this is for: ${right.join(', ')}.`
    sendProblem(response, { status: 403, title: 'Not for this role', detail })
  }
}

/** 401 with how to come in (RFC 9110, section 15.5.2), in the words of RFC 6750, section 3. */
function refuseStranger(request: Request, response: Response): void {
  const { door } = askerOf(response)
  const now = door.identify(request.headers, keyIn(request))
  const why = now.kind === 'out' ? now.why : 'expired'
  door.refused.count(why, request.socket.remoteAddress)
  const error = why === 'no-token' ? '' : ', error="invalid_token"'
  response.set('www-authenticate', `Bearer realm="Boilboard"${error}`)
  sendProblem(response, { status: 401, title: 'Join first', detail: TO_COME_IN[why] })
}

const HOW = 'A screen joins at / with a code from the desk; a script sends Authorization: Bearer TOKEN.'
const TO_COME_IN = {
  'no-token': `This shop lets in devices that have joined. ${HOW}`,
  forged: `This token is none of this shop’s. ${HOW}`,
  revoked: `The desk has shown this device out. ${HOW}`,
  expired: `This device’s token has run out. ${HOW}`,
} as const
