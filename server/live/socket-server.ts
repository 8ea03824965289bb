import type { Server as HttpServer } from 'node:http'
import type { Socket } from 'socket.io'
import { Server } from 'socket.io'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import type { Admission } from './admission.ts'
import { isHostOurs, isOriginOurs } from './admission.ts'
import { parseFromScreen } from './parse-message.ts'
import type { Room } from './room.ts'
import type { ScreenLink } from './room-parts.ts'

/** The one event that messages travel under, both ways. */
const MESSAGE = 'm'
/** Fifty commands of a few hundred bytes, with room to spare. */
const MESSAGE_BYTES_MAX = 256 * 1024

/** Links at once: ten times the screens of a large shop. */
const LINKS_MAX = 500

class SocketLink implements ScreenLink {
  readonly socket: Socket

  constructor(socket: Socket) {
    this.socket = socket
  }

  send(message: ToScreen): void {
    this.socket.emit(MESSAGE, message)
  }

  close(): void {
    this.socket.disconnect(true)
  }
}

/** Screens over socket.io: websocket only, no compression, a lost screen noticed within half a minute. */
export class SocketServer {
  readonly #io: Server

  constructor(http: HttpServer, admission: Admission, linksMax = LINKS_MAX) {
    this.#io = new Server(http, {
      transports: ['websocket'],
      perMessageDeflate: false,
      httpCompression: false,
      serveClient: false,
      maxHttpBufferSize: MESSAGE_BYTES_MAX,
      pingInterval: 10_000,
      pingTimeout: 15_000,
      allowRequest: ({ headers }, decide) => {
        // A browser always names its page's origin on a websocket; what names none is a script of the shop's own.
        const isOurs = isHostOurs(headers.host, admission) && isOriginOurs(headers.origin, headers.host)
        decide(null, isOurs && this.#io.engine.clientsCount < linksMax)
      },
    })
  }

  open(room: Room): void {
    this.#io.on('connection', (socket) => {
      const link = new SocketLink(socket)
      socket.on(MESSAGE, (raw: unknown) => {
        const message = parseFromScreen(raw)
        if (message.ok) room.handle(link, message.message)
        else if (message.isHello) link.send({ type: 'refusedHello', reason: 'malformed' })
        else link.close()
      })
      socket.on('disconnect', () => room.leave(link))
    })
  }

  /** Encoded once for all of them. */
  broadcast(links: ReadonlySet<ScreenLink>, message: ToScreen): void {
    const ids = [...links].flatMap((link) => (link instanceof SocketLink ? [link.socket.id] : []))
    if (ids.length > 0) this.#io.local.to(ids).emit(MESSAGE, message)
  }

  async close(): Promise<void> {
    await this.#io.close()
  }
}
