import type { Server as HttpServer, IncomingMessage } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import type { Socket as NetSocket } from 'node:net'
import type { Socket } from 'socket.io'
import { Server } from 'socket.io'
import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'
import type { Door, Grant } from '../devices/door.ts'
import type { Admission } from './admission.ts'
import { isHostOurs, isOriginOurs } from './admission.ts'
import { FloodGuard } from './flood-guard.ts'
import { parseFromScreen } from './parse-message.ts'
import type { Room } from './room.ts'
import type { Log, ScreenLink } from './room-parts.ts'
import { Strangers } from './strangers.ts'

/** The one event that messages travel under, both ways. */
const MESSAGE = 'm'
/** Fifty commands of a few hundred bytes, with room to spare. */
const MESSAGE_BYTES_MAX = 256 * 1024

/** Links at once: ten times the screens of a large shop. */
const LINKS_MAX = 500
/** Of one device: a desk with every page open several times. One that is out of its mind must not keep out the others. */
const LINKS_OF_DEVICE_MAX = 50

/** While it closes. */
const IDLE_CLOSED_EVERY_MS = 50

type Hello = Extract<FromScreen, { type: 'hello' }>

class SocketLink implements ScreenLink {
  readonly socket: Socket
  readonly grant: Grant
  readonly guard = new FloodGuard(() => performance.now())
  /** The last that it said; null: none yet. */
  hello: Hello | null = null

  constructor(socket: Socket, grant: Grant) {
    this.socket = socket
    this.grant = grant
  }

  get address(): string {
    return this.socket.handshake.address
  }

  send(message: ToScreen): void {
    this.socket.emit(MESSAGE, message)
  }

  close(): void {
    this.socket.disconnect(true)
  }
}

export interface SocketParts extends Admission {
  readonly door: Door
  readonly log: Log
  readonly linksMax?: number
}

/** Screens over socket.io: websocket only, no compression, a lost screen noticed within half a minute. */
export class SocketServer {
  readonly #http: HttpServer | HttpsServer
  readonly #io: Server
  readonly #parts: SocketParts
  readonly #grants = new WeakMap<IncomingMessage, Grant>()
  readonly #links = new Set<SocketLink>()
  readonly #strangers = new Strangers()
  readonly #socketsOf = new Map<string, number>()

  constructor(http: HttpServer | HttpsServer, parts: SocketParts) {
    this.#http = http
    this.#parts = parts
    this.#io = new Server(http, {
      transports: ['websocket'],
      perMessageDeflate: false,
      httpCompression: false,
      serveClient: false,
      maxHttpBufferSize: MESSAGE_BYTES_MAX,
      pingInterval: 10_000,
      pingTimeout: 15_000,
      allowRequest: (request, decide) => decide(null, this.#mayKnock(request)),
    })
    if (parts.door.membership !== null) parts.door.membership.onChanged = (id) => this.#greetAgain(id)
  }

  open(room: Room): void {
    this.#io.on('connection', (socket) => {
      const link = new SocketLink(socket, this.#grants.get(socket.request) ?? { kind: 'out', why: 'no-token' })
      this.#links.add(link)
      socket.on(MESSAGE, (raw: unknown) => this.#hearSafely(room, link, raw))
      socket.on('disconnect', () => {
        this.#links.delete(link)
        room.leave(link)
      })
    })
  }

  /** Encoded once for all of them. */
  broadcast(links: ReadonlySet<ScreenLink>, message: ToScreen): void {
    const ids = [...links].flatMap((link) => (link instanceof SocketLink ? [link.socket.id] : []))
    if (ids.length > 0) this.#io.local.to(ids).emit(MESSAGE, message)
  }

  /** Devices that have a link now. */
  linked(): readonly string[] {
    return [...this.#links].flatMap(({ grant }) => (grant.kind === 'joined' ? [grant.id] : []))
  }

  async close(): Promise<void> {
    // A connection on which an answer is under way now is idle afterwards; a page that asks on it every few seconds
    // would keep it, and so this server, open for ever.
    const timer = setInterval(() => this.#http.closeIdleConnections(), IDLE_CLOSED_EVERY_MS)
    await this.#io.close()
    clearInterval(timer)
  }

  #mayKnock(request: IncomingMessage): boolean {
    const { headers, socket } = request
    const { door, linksMax = LINKS_MAX } = this.#parts
    const refuse = (kind: Parameters<Door['refused']['count']>[0]) => {
      door.refused.count(kind, socket.remoteAddress)
      return false
    }
    if (!isHostOurs(headers.host, this.#parts)) return refuse('foreign-host')
    // A browser always names its page's origin on a websocket; what names none is a script of the shop's own.
    if (!isOriginOurs(headers.origin, headers.host)) return refuse('foreign-origin')
    if (this.#io.engine.clientsCount >= linksMax) return refuse('too-many')
    const grant = door.identify(headers)
    if (grant.kind === 'out' && !this.#strangers.letWait(socket)) return refuse('too-many')
    if (grant.kind === 'joined' && !this.#takeOneOf(grant.id, socket)) return refuse('too-many')
    this.#grants.set(request, grant)
    return true
  }

  /** Where something cannot be written down, such as a new name on a full disk, this link ends and the others go on. */
  #hearSafely(room: Room, link: SocketLink, raw: unknown): void {
    try {
      this.#hear(room, link, raw)
    } catch (error) {
      this.#parts.log.error({ error }, 'a message could not be dealt with')
      link.close()
    }
  }

  #hear(room: Room, link: SocketLink, raw: unknown): void {
    if (!link.guard.mayCome()) {
      this.#turnAway(link, { type: 'refusedHello', reason: 'flooding' })
      return
    }
    const { refused } = this.#parts.door
    const message = parseFromScreen(raw)
    if (link.grant.kind === 'out') this.#turnAway(link, { type: 'refusedHello', reason: link.grant.why })
    else if (message.ok && message.message.type === 'hello') this.#greet(room, link, message.message)
    else if (message.ok) room.handle(link, message.message)
    else {
      refused.count('malformed', link.address)
      if (message.isHello) link.send({ type: 'refusedHello', reason: 'malformed' })
      else link.close()
    }
  }

  #greet(room: Room, link: SocketLink, hello: Hello): void {
    const greeted = this.#parts.door.greet(link.grant, hello)
    if (!greeted.ok) {
      this.#turnAway(link, greeted.refusal)
      return
    }
    link.hello = hello
    room.handle(link, { ...hello, device: greeted.device }, greeted.known)
  }

  #turnAway(link: SocketLink, refusal: Extract<ToScreen, { type: 'refusedHello' }>): void {
    this.#parts.door.refused.count(refusal.reason === 'moved' ? 'not-its-role' : refusal.reason, link.address)
    link.send(refusal)
    link.close()
  }

  /** Something about a device has changed: it hears whether it may stay, and says hello again if it may. */
  #greetAgain(id: string): void {
    for (const link of this.#linksOf(id)) {
      const greeted =
        link.hello === null ? null : this.#parts.door.greet(link.grant, { ...link.hello, isRenamed: false })
      if (greeted?.ok === false) link.send(greeted.refusal)
      link.close()
    }
  }

  /** Counted from the handshake on: links that come together are not heard of one by one. */
  #takeOneOf(id: string, socket: NetSocket): boolean {
    const before = this.#socketsOf.get(id) ?? 0
    if (before >= LINKS_OF_DEVICE_MAX) return false
    this.#socketsOf.set(id, before + 1)
    socket.once('close', () => {
      const left = (this.#socketsOf.get(id) ?? 1) - 1
      if (left > 0) this.#socketsOf.set(id, left)
      else this.#socketsOf.delete(id)
    })
    return true
  }

  #linksOf(id: string): readonly SocketLink[] {
    return [...this.#links].filter(({ grant }) => grant.kind === 'joined' && grant.id === id)
  }
}
