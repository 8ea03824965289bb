import type { RequestListener, Server, ServerOptions, ServerResponse } from 'node:http'
import { STATUS_CODES } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import type { Duplex } from 'node:stream'

/** How long and how much a link may take before it has asked for anything that can be answered. */
export interface LineLimits {
  readonly headersTimeout: number
  readonly requestTimeout: number
  readonly connectionsCheckingInterval: number
  readonly maxHeaderSize: number
  readonly connectionsMax: number
}

export const LINE_LIMITS: LineLimits = {
  /** ms. Headers are one packet; on the worst Wi-Fi it comes again within seconds. */
  headersTimeout: 15_000,
  /** ms. The largest body is half a megabyte: on a bad network that is a few seconds. */
  requestTimeout: 60_000,
  /** ms. How late a slow sender is noticed, at most. */
  connectionsCheckingInterval: 2_000,
  /** Bytes. A browser of ours sends less than one kB, other programs' cookies for this host included. */
  maxHeaderSize: 16 * 1024,
  /** The most links of screens, and four times as many that load pages. */
  connectionsMax: 2_500,
}

/** What of the limits Node wants to know when the server is made. */
export function serverOptions({ connectionsMax: _, ...options }: LineLimits): ServerOptions {
  // Node would refuse what names no host without a word.
  return { ...options, requireHostHeader: false }
}

/** What names no host is refused as RFC 9112, section 3.2, says, with words. */
export function namesHost(listener: RequestListener): RequestListener {
  return (request, response) => {
    if (request.headers.host !== undefined) listener(request, response)
    else answer(response, { ...UNREADABLE, detail: 'A request names its server with a Host header.' })
  }
}

/**
 * The rest of the limits; and whoever sends what is no HTTP, or too slowly, is told so in words before the link is ended.
 */
export function limitLine(http: Server | HttpsServer, limits: LineLimits): void {
  http.maxConnections = limits.connectionsMax
  http.on('clientError', (error: Error & { readonly code?: string }, socket: Duplex & { bytesWritten?: number }) => {
    // In the middle of an answer, or after one, words would be read as a part of it.
    if (!socket.writable || error.code === 'ECONNRESET' || (socket.bytesWritten ?? 0) > 0) socket.destroy()
    else socket.end(told(problemOf(error.code, limits)), () => socket.destroy())
  })
  http.on('checkExpectation', (_request, response: ServerResponse) => {
    answer(response, {
      status: 417,
      title: 'Not expected',
      detail: 'The only Expect that is known here is 100-continue.',
    })
  })
}

function answer(response: ServerResponse, problem: LineProblem): void {
  const body = bodyOf(problem)
  const headers = { 'content-type': PROBLEM, 'content-length': Buffer.byteLength(body), connection: 'close' }
  response.writeHead(problem.status, headers).end(body)
}

interface LineProblem {
  readonly status: number
  readonly title: string
  readonly detail: string
}

function problemOf(
  code: string | undefined,
  { headersTimeout, requestTimeout, maxHeaderSize }: LineLimits,
): LineProblem {
  if (code === 'HPE_HEADER_OVERFLOW') {
    const detail = `The headers are larger than ${maxHeaderSize / 1024} kB.`
    return { status: 431, title: 'Headers too large', detail }
  }
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') {
    const [headers, all] = [headersTimeout / 1_000, requestTimeout / 1_000]
    const detail = `The request came too slowly: its headers must be here within ${headers} s, all of it within ${all} s.`
    return { status: 408, title: 'Too slow', detail }
  }
  return UNREADABLE
}

const UNREADABLE: LineProblem = {
  status: 400,
  title: 'Bad request',
  detail: 'This is no HTTP/1.1 request that can be read.',
}
const PROBLEM = 'application/problem+json'

function bodyOf(problem: LineProblem): string {
  return JSON.stringify({ type: 'about:blank', ...problem })
}

/** Problem details (RFC 9457) without a framework, for what no framework was given to read. */
function told(problem: LineProblem): string {
  const body = bodyOf(problem)
  return [
    `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}`,
    `content-type: ${PROBLEM}`,
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
    '',
    body,
  ].join('\r\n')
}
