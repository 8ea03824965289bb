import type { RequestListener } from 'node:http'
import { createServer } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import type { Socket } from 'node:net'

/** The first byte of a TLS connection: a handshake record (RFC 8446, section 5.1; from memory). */
const TLS_HANDSHAKE = 0x16
/** A link that says nothing is no browser. */
const FIRST_BYTE_MS_MAX = 10_000

/**
 * Lets plain http answer on the port of https: whoever types the old address, or scans an old code, is told where to go
 * instead of being cut off. What arrives is looked at by its first byte.
 */
export function answerPlainToo(https: HttpsServer, plain: RequestListener): void {
  const http = createServer(plain)
  const secure = https.listeners('connection') as ((socket: Socket) => void)[]
  https.removeAllListeners('connection')
  https.on('connection', (socket: Socket) => {
    const onError = () => socket.destroy()
    const timer = setTimeout(onError, FIRST_BYTE_MS_MAX)
    socket.once('error', onError)
    socket.once('close', () => clearTimeout(timer))
    socket.once('data', (bytes: Buffer) => {
      clearTimeout(timer)
      socket.off('error', onError)
      socket.pause()
      socket.unshift(bytes)
      if (bytes[0] === TLS_HANDSHAKE) for (const take of secure) take.call(https, socket)
      else http.emit('connection', socket)
      // Whoever took it listens by then.
      process.nextTick(() => socket.resume())
    })
  })
  https.once('close', () => http.closeAllConnections())
}
