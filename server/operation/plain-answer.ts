import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http'
import type { Admission } from '../live/admission.ts'
import { isHostOurs } from '../live/admission.ts'

/** Where a device fetches the authority that it is to trust; over plain http too, as it trusts no https of ours yet. */
export const AUTHORITY_PATH = '/authority.crt'

/** Answers for the authority's file; everything else goes on. */
export function withAuthority(authority: string | null, listener: RequestListener): RequestListener {
  return (request, response) => {
    if (authority === null || request.url !== AUTHORITY_PATH) return listener(request, response)
    response.setHeader('content-type', 'application/x-x509-ca-cert')
    response.setHeader('content-disposition', 'attachment; filename="boilboard-authority.crt"')
    response.end(authority)
  }
}

/**
 * What plain http says when the shop speaks https: pages send the browser there, scripts get problem details. Nothing
 * else is answered, so no token is ever read from a link that others can listen to.
 */
export function sendToHttps(admission: Admission): RequestListener {
  return (request, response) => {
    response.setHeader('connection', 'close')
    const { host } = request.headers
    if (host === undefined || !isHostOurs(host, admission)) return sayNo(response, 403, 'Not this server’s name.')
    const isPage = request.method === 'GET' && !isApi(request)
    if (!isPage) return sayNo(response, 403, `This shop is at https://${host}; plain http takes nothing.`)
    // For now, not for good: a browser that remembered it could not go back to plain http.
    response.statusCode = 307
    response.setHeader('location', `https://${host}${request.url}`)
    response.end()
  }
}

function isApi({ url }: IncomingMessage): boolean {
  return url?.startsWith('/api') ?? false
}

function sayNo(response: ServerResponse, status: number, detail: string): void {
  response.statusCode = status
  response.setHeader('content-type', 'application/problem+json')
  response.end(JSON.stringify({ type: 'about:blank', title: 'Use https', status, detail }))
}
