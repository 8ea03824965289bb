import type { Server, ServerOptions } from 'node:http'
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
  return options
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
}

interface LineProblem {
  readonly status: number
  readonly title: string
  readonly detail: string
}

function problemOf(code: string | undefined, { headersTimeout, requestTimeout, maxHeaderSize }: LineLimits): LineProblem {
  if (code === 'HPE_HEADER_OVERFLOW') {
    const detail = `The headers are larger than ${maxHeaderSize / 1024} kB.`
    return { status: 431, title: 'Headers too large', detail }
  }
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') {
    const [headers, all] = [headersTimeout / 1_000, requestTimeout / 1_000]
    const detail = `The request came too slowly: its headers must be here within ${headers} s, all of it within ${all} s.`
    return { status: 408, title: 'Too slow', detail }
  }
  return { status: 400, title: 'Bad request', detail: 'This is no HTTP/1.1 request that can be read.' }
}

/** Problem details (RFC 9457) without a framework, for what no framework was given to read. */
function told(problem: LineProblem): string {
  const body = JSON.stringify({ type: 'about:blank', ...problem })
  return [
    `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}`,
    'content-type: application/problem+json',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
    '',
    body,
  ].join('\r\n')
}
