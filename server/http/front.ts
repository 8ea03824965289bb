import type { RequestListener, Server } from 'node:http'
import { createServer } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import { createServer as createHttps } from 'node:https'
import { healthReason } from '../../shared-core/live/health.ts'
import type { Admission } from '../live/admission.ts'
import type { ServerCertificate } from '../operation/certificate.ts'
import { answerPlainToo } from '../operation/one-port.ts'
import { sendToHttps, withAuthority } from '../operation/plain-answer.ts'
import type { LineLimits } from './line-limits.ts'
import { LINE_LIMITS, limitLine, namesHost, serverOptions } from './line-limits.ts'

/**
 * The listening port, there from the first moment. While a long journal is folded anew after an upgrade it says how far
 * that is, to people and to scripts; then the real application takes over.
 */
export class Front {
  readonly http: Server | HttpsServer
  #share = 0
  #listener: RequestListener = (request, response) => this.#gettingReady(request, response)

  /** With a certificate it speaks https, and plain http is only told to come by https. */
  constructor(
    secure: { readonly certificate: ServerCertificate; readonly admission: Admission } | null = null,
    limits: LineLimits = LINE_LIMITS,
  ) {
    const listener = namesHost((request, response) => this.#listener(request, response))
    if (secure === null) {
      this.http = createServer(serverOptions(limits), listener)
      limitLine(this.http, limits)
      return
    }
    const { key, cert, authority } = secure.certificate
    const https = createHttps({ key, cert, ...serverOptions(limits) }, withAuthority(authority, listener))
    limitLine(https, limits)
    answerPlainToo(https, withAuthority(authority, sendToHttps(secure.admission)))
    this.http = https
  }

  /** Links that stand go on; new ones get this certificate. */
  renew({ key, cert }: ServerCertificate): void {
    if ('setSecureContext' in this.http) this.http.setSecureContext({ key, cert })
  }

  /** @returns the port, the real one when 0 was asked for @throws when the port is taken */
  listen(port: number, host: string): Promise<number> {
    return new Promise((resolve, reject) => {
      this.http.once('error', reject)
      this.http.listen(port, host, () => {
        this.http.off('error', reject)
        const address = this.http.address()
        resolve(typeof address === 'object' && address !== null ? address.port : port)
      })
    })
  }

  progress(share: number): void {
    this.#share = share
  }

  handOver(listener: RequestListener): void {
    this.#listener = listener
  }

  #gettingReady(...[request, response]: Parameters<RequestListener>): void {
    const percent = Math.floor(this.#share * 100)
    response.statusCode = 503
    response.setHeader('retry-after', '2')
    if (request.url?.startsWith('/api/')) {
      response.setHeader('content-type', 'application/json')
      response.end(
        JSON.stringify({ status: 'starting', percent, reasons: [healthReason('starting', 'failing', { percent })] }),
      )
      return
    }
    response.setHeader('content-type', 'text/html; charset=utf-8')
    response.setHeader('refresh', '2')
    response.end(`<!doctype html><title>Boilboard</title><h1>Getting ready, ${percent} %</h1>`)
  }
}
