import type { IncomingMessage } from 'node:http'
import type { ErrorRequestHandler, Express, Request, RequestHandler, Response } from 'express'
import express from 'express'
import helmet from 'helmet'
import type { Log } from '../live/room-parts.ts'
import { RoomFailure } from '../live/room-parts.ts'
import type { Entrance } from './entrance.ts'
import { entrance, letIn } from './entrance.ts'
import { ORDERS_IMPORT } from './orders-import.ts'
import { sendProblem } from './problem.ts'
import { SALES_FILES } from './sales-files.ts'

/** A set-up file with every list full is some 40 kB. */
const BODY_BYTES_MAX = 512 * 1024

export interface AppParts extends Entrance {
  /** Hears of what nobody foresaw. */
  readonly log?: Log
}

/** The web server around the routes: who may speak to it, how much, and how every error is answered. */
export function makeApp({ log, ...parts }: AppParts, routes: (app: Express) => void): Express {
  const app = express()
  app.disable('x-powered-by')
  // One way to write an address: what is held for the API is what the API answers.
  app.enable('case sensitive routing')
  app.enable('strict routing')
  app.use(helmet(FOR_PLAIN_HTTP), denyFeatures)
  entrance(app, parts)
  app.use(express.json({ limit: BODY_BYTES_MAX, strict: false }))
  app.use(express.text({ limit: BODY_BYTES_MAX, type: isShortCsv }), letIn)
  routes(app)
  app.use((request, response) => sendNotFound(request, response))
  app.use(answerErrors(log))
  return app
}

/** Sales posted row by row; a whole file of them is as long as it is, one of orders may be in any encoding: read by routes. */
function isShortCsv({ headers, method = '', url = '' }: IncomingMessage): boolean {
  if (method === 'POST' && BY_ROUTE.includes(url.split('?')[0] ?? '')) return false
  return /^text\/csv\b/i.test(headers['content-type'] ?? '')
}

const BY_ROUTE: readonly string[] = [SALES_FILES, ORDERS_IMPORT]

/**
 * Plain http on the shop's network is the normal case: what a browser honours only on https, or what would send it there,
 * is left out.
 */
const FOR_PLAIN_HTTP: Parameters<typeof helmet>[0] = {
  strictTransportSecurity: false,
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
  contentSecurityPolicy: {
    directives: {
      defaultSrc: ["'self'"],
      connectSrc: ["'self'", 'ws:', 'wss:'],
      imgSrc: ["'self'", 'data:'],
      // Screens set the styles of single elements through the DOM, which this does not forbid.
      styleSrc: ["'self'"],
      fontSrc: ["'self'"],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
      upgradeInsecureRequests: null,
    },
  },
}

/** No page of ours looks, listens or asks where it is. */
const denyFeatures: RequestHandler = (_request, response, next) => {
  response.set('permissions-policy', 'camera=(), microphone=(), geolocation=(), payment=(), usb=(), midi=()')
  next()
}

function sendNotFound(request: Request, response: Response): void {
  if (request.path.startsWith('/api')) {
    const detail = `There is no ${request.method} ${request.path}.`
    sendProblem(response, { status: 404, title: 'No such address', detail })
    return
  }
  response.status(404).type('html').send(NO_PAGE)
}

const NO_PAGE = `<!doctype html><html lang="en"><title>Boilboard</title><h1>There is no page here</h1>
<p>The screens: <a href="/wall">wall</a>, <a href="/bench">bench</a>, <a href="/counter">counter</a>, <a href="/desk">desk</a>.`

const answerErrors =
  (log: Log | undefined): ErrorRequestHandler =>
  (error, request, response, next) => {
    if (response.headersSent) return next(error)
    if (error?.status === 404) return sendNotFound(request, response)
    if (error instanceof RoomFailure)
      return sendProblem(response, { status: 503, title: 'Not taken', detail: error.message })
    const status = typeof error?.status === 'number' && error.status >= 400 && error.status < 500 ? error.status : 500
    if (status === 500) log?.error({ error, method: request.method, path: request.path }, 'a request failed')
    if (isDiskFailing(error)) return sendProblem(response, { status: 503, title: 'Not taken', detail: DISK_FAILING })
    const detail =
      DETAIL_OF[status] ??
      (status < 500 ? 'The request could not be read.' : 'A fault of ours; the server’s log tells more.')
    sendProblem(response, { status, title: status < 500 ? 'Bad request' : 'Internal error', detail })
  }

const DISK_FAILING =
  'It could not be written to the server’s disk: nothing of it was done. Is the disk full, or may it only be read? Make room and ask again.'

/** READONLY, IOERR and FULL of https://sqlite.org/rescode.html; a code's last eight bits say which one it is. */
function isDiskFailing(error: unknown): boolean {
  return error instanceof Error && 'errcode' in error && [8, 10, 13].includes(Number(error.errcode) & 0xff)
}

const DETAIL_OF: { readonly [status: number]: string } = {
  400: 'The body is no valid JSON.',
  413: `The body is larger than ${BODY_BYTES_MAX / 1024} kB.`,
  415: 'The body must be JSON or CSV in UTF-8.',
}
