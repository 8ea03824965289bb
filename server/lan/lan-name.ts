/**
 * A name for the server on the shop's network, by multicast DNS (RFC 6762): `corner-bagels.local` goes on holding when
 * the router hands out another address, and can be read out across the room. It is a comfort: where the network does not
 * let it through, or another machine has the name, addresses still do.
 */
export interface LanNameParts {
  readonly openSocket: () => MulticastSocket
  readonly addresses: () => readonly string[]
  /** Runs something after so many milliseconds; what comes back cancels it. */
  readonly after: (ms: number, run: () => void) => () => void
  readonly say: (line: string) => void
  /** Hears of each name that is answered to from now on. */
  readonly onName: (name: string) => void
}

/** What is used of the `multicast-dns` package. */
export interface MulticastSocket {
  on(event: 'query' | 'response', heard: (packet: Packet) => void): unknown
  on(event: 'error' | 'warning', heard: (error: Error) => void): unknown
  query(packet: { readonly questions: readonly Question[] }): unknown
  respond(packet: { readonly answers: readonly Answer[] }): unknown
  destroy(): unknown
}
interface Question {
  readonly name: string
  readonly type: string
}
interface Answer {
  readonly name: string
  readonly type: string
  readonly ttl?: number
  readonly flush?: boolean
  readonly data?: unknown
}
export interface Packet {
  readonly questions?: readonly Question[]
  readonly answers?: readonly Answer[]
}

/** RFC 6762, section 10: records of host names live for two minutes. */
const TTL_S = 120
/** RFC 6762, section 8.1: three questions 250 ms apart; who has the name already answers within that. */
const PROBES = 3
const PROBE_MS = 250
/** As many machines of one name in one shop are a mistake. */
const NAMES_TRIED_MAX = 9
const FALLBACK = 'boilboard'
/** RFC 1035, section 2.3.4; a number may follow. */
const LABEL_LETTERS_MAX = 60

/** @example nameFor('Café Corner & Bagels') // 'cafe-corner-bagels' */
export function nameFor(shopName: string | null): string {
  const plain = (shopName ?? '').normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase()
  const label = plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, LABEL_LETTERS_MAX)
    .replaceAll(/^-+|-+$/g, '')
  return label === '' ? FALLBACK : label
}

export class LanName {
  readonly #parts: LanNameParts
  #socket: MulticastSocket | null = null
  #wanted: string | null = null
  #tried = 1
  #probesLeft = 0
  #isOurs = false
  #cancel: () => void = () => undefined

  constructor(parts: LanNameParts) {
    this.#parts = parts
  }

  /** The name that is answered to, with its ".local"; null while there is none. */
  get name(): string | null {
    return this.#isOurs ? this.#candidate() : null
  }

  /** Announces the name of a shop, another one when it is called something else. */
  follow(shopName: string | null): void {
    const wanted = nameFor(shopName)
    if (wanted === this.#wanted) return
    this.#sayGoodbye()
    this.#wanted = wanted
    this.#tried = 1
    if (this.#socket === null && !this.#open()) return
    this.#probe()
  }

  stop(): void {
    this.#sayGoodbye()
    this.#shut()
  }

  #open(): boolean {
    try {
      const socket = this.#parts.openSocket()
      socket.on('query', (packet) => this.#asked(packet))
      socket.on('response', (packet) => this.#heard(packet))
      socket.on('error', (error) => this.#fail(error))
      // A packet that is none, a network that went away: the next announcement may do.
      socket.on('warning', () => undefined)
      this.#socket = socket
      return true
    } catch (error) {
      this.#fail(error)
      return false
    }
  }

  #probe(): void {
    this.#isOurs = false
    this.#probesLeft = PROBES
    this.#askAgain()
  }

  #askAgain(): void {
    if (this.#probesLeft === 0) {
      this.#isOurs = true
      this.#answer(TTL_S)
      if (this.name !== null) this.#parts.onName(this.name)
      return
    }
    this.#probesLeft -= 1
    this.#send((socket) => socket.query({ questions: [{ name: this.#candidate(), type: 'ANY' }] }))
    if (this.#socket === null) return
    this.#cancel = this.#parts.after(PROBE_MS, () => this.#askAgain())
  }

  #asked({ questions = [] }: Packet): void {
    const isForUs = questions.some(({ name, type }) => {
      return name.toLowerCase() === this.#candidate() && (type === 'A' || type === 'ANY')
    })
    if (this.#isOurs && isForUs) this.#answer(TTL_S)
  }

  /** Another machine answers to the name: this one takes the next. */
  #heard({ answers = [] }: Packet): void {
    const ours = this.#parts.addresses()
    const isTaken = answers.some((answer) => {
      const isIt = answer.type === 'A' && answer.name.toLowerCase() === this.#candidate()
      return isIt && answer.ttl !== 0 && !ours.includes(String(answer.data))
    })
    if (!isTaken || this.#wanted === null) return
    this.#cancel()
    this.#isOurs = false
    this.#tried += 1
    if (this.#tried <= NAMES_TRIED_MAX) this.#probe()
  }

  #answer(ttl: number): void {
    const name = this.#candidate()
    const answers = this.#parts.addresses().map((data): Answer => ({ name, type: 'A', ttl, flush: true, data }))
    if (answers.length > 0) this.#send((socket) => socket.respond({ answers }))
  }

  /** RFC 6762, section 10.1: a record of no life is forgotten at once. */
  #sayGoodbye(): void {
    this.#cancel()
    if (this.#isOurs) this.#answer(0)
    this.#isOurs = false
  }

  #candidate(): string {
    return `${this.#wanted}${this.#tried > 1 ? `-${this.#tried}` : ''}.local`
  }

  #send(run: (socket: MulticastSocket) => unknown): void {
    try {
      if (this.#socket !== null) run(this.#socket)
    } catch (error) {
      this.#fail(error)
    }
  }

  /** No name, then: told once, and nothing else is any different. */
  #fail(error: unknown): void {
    this.#cancel()
    this.#shut()
    const why = error instanceof Error ? error.message : String(error)
    this.#parts.say(
      `No .local name on this network (${why}). The addresses work all the same; --no-name leaves it out.`,
    )
  }

  #shut(): void {
    this.#isOurs = false
    const socket = this.#socket
    this.#socket = null
    try {
      socket?.destroy()
    } catch {
      // It never opened.
    }
  }
}
