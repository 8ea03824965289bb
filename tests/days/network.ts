import type { Link, LinkEvents } from '../../client/live/link.ts'
import type { ScreenLink } from '../../server/live/room-parts.ts'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import type { Chance } from './chance.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'

/** The shop's Wi-Fi: each way of a contact is ordered, each message has its own delay, contacts break at any moment. */
export interface NetworkOptions {
  readonly delayMsMax: number
  /** Messages that arrive twice. */
  readonly repeatPermille: number
}

/** What a server lets a screen talk to; null while there is no server. */
export interface ServerEnd {
  accept(link: ScreenLink): { hear(raw: unknown): void; lost(): void } | null
}

/** A dead contact that nobody has closed is noticed by the missing answer to a ping: interval and wait, as configured. */
const STALL_NOTICED_MS = 25_000
const LINGER_MS_MAX = 2_000
/** Long enough for the first to have been answered before the second comes. */
const REPEAT_AFTER_MS_MAX = 200

export interface WireParts {
  readonly schedule: Schedule
  readonly chance: Chance
  readonly story: Story
  readonly options: NetworkOptions
  readonly server: ServerEnd
  readonly who: string
  /** Sees each message as the screen does, and may change it: that is how a bug is planted. */
  readonly deliver: (message: ToScreen, hear: (message: ToScreen) => void) => void
}

/** One screen's wire to the server, from page load to page load. */
export class Wire implements Link {
  /** No faults from now on. */
  calm = false
  readonly #parts: WireParts
  readonly #events: LinkEvents
  #contact: Contact | null = null
  #blockedUntilMs = 0
  #isClosed = false

  constructor(parts: WireParts, events: LinkEvents) {
    this.#parts = parts
    this.#events = events
    this.#knock()
  }

  get isUp(): boolean {
    return this.#contact !== null
  }

  send(message: unknown): void {
    const contact = this.#contact
    if (contact === null || contact.isStalled) return
    const text = JSON.stringify(message)
    this.#travel(contact, 'up', () => {
      if (!contact.isServerOpen) return
      if (this.#contact !== contact) this.#parts.story.fault('late-arrival', this.#parts.who)
      contact.session?.hear(JSON.parse(text))
    })
  }

  restart(): void {
    this.#parts.story.tell(this.#parts.who, 'makes the link anew')
    if (this.#blockedUntilMs === Number.POSITIVE_INFINITY) this.#blockedUntilMs = 0
    this.#break()
  }

  rest(): void {
    this.#blockedUntilMs = Number.POSITIVE_INFINITY
    this.#break()
  }

  close(): void {
    this.#isClosed = true
    this.#break()
  }

  /** Breaks the contact and keeps it away for a while. What was on the way to the server may still arrive there. */
  cut(forMs: number): void {
    this.#blockedUntilMs = this.#parts.schedule.nowMs + forMs
    this.#break()
  }

  /** The contact is dead, but neither side knows yet. */
  stall(): void {
    const contact = this.#contact
    if (contact === null) return
    contact.isStalled = true
    this.#parts.schedule.in(STALL_NOTICED_MS, () => {
      if (this.#contact === contact) this.#break()
    })
  }

  /** The server process is gone: its contacts break, or go dead without a word. */
  serverGone(): void {
    const contact = this.#contact
    if (contact === null) return
    contact.isServerOpen = false
    this.#parts.schedule.in(this.#delayMs(), () => {
      if (this.#contact === contact) this.#break()
    })
  }

  #knock(): void {
    const { schedule, chance } = this.#parts
    schedule.in(chance.between(250, 500), () => {
      if (this.#isClosed || this.#contact !== null) return
      if (schedule.nowMs < this.#blockedUntilMs) this.#knock()
      else this.#connect()
    })
  }

  #connect(): void {
    const contact: Contact = { isServerOpen: true, isStalled: false, upAtMs: 0, downAtMs: 0, session: null }
    const link: ScreenLink = {
      send: (message) => this.#receive(contact, message),
      close: () => this.#hungUp(contact),
    }
    contact.session = this.#parts.server.accept(link)
    if (contact.session === null) {
      this.#knock()
      return
    }
    this.#contact = contact
    this.#events.up()
  }

  #receive(contact: Contact, message: ToScreen): void {
    if (!contact.isServerOpen || contact.isStalled) return
    const text = JSON.stringify(message)
    this.#travel(contact, 'down', () => {
      if (this.#contact !== contact || contact.isStalled) return
      this.#parts.deliver(JSON.parse(text), (heard) => this.#events.message(heard))
    })
  }

  /** The server hung up: it knows at once, the screen after the message's way. */
  #hungUp(contact: Contact): void {
    if (!contact.isServerOpen) return
    contact.isServerOpen = false
    contact.session?.lost()
    this.#travel(contact, 'down', () => {
      if (this.#contact === contact) this.#break()
    })
  }

  #break(): void {
    const contact = this.#contact
    if (contact === null) return
    this.#contact = null
    this.#parts.schedule.in(this.#parts.chance.between(0, LINGER_MS_MAX), () => {
      if (!contact.isServerOpen) return
      contact.isServerOpen = false
      contact.session?.lost()
    })
    if (this.#isClosed) return
    this.#events.down()
    this.#knock()
  }

  /** Nothing overtakes on one way of one contact. */
  #travel(contact: Contact, way: 'up' | 'down', arrive: () => void): void {
    const { schedule, chance, story, options, who } = this.#parts
    const field = way === 'up' ? 'upAtMs' : 'downAtMs'
    contact[field] = Math.max(contact[field], schedule.nowMs + this.#delayMs())
    schedule.in(contact[field] - schedule.nowMs, arrive)
    if (this.calm || !chance.permille(options.repeatPermille)) return
    story.fault('repeat', who, way)
    contact[field] += chance.between(0, REPEAT_AFTER_MS_MAX)
    schedule.in(contact[field] - schedule.nowMs, arrive)
  }

  #delayMs(): number {
    return this.#parts.chance.between(1, this.calm ? 5 : this.#parts.options.delayMsMax)
  }
}

interface Contact {
  isServerOpen: boolean
  isStalled: boolean
  /** When the last message on each way arrives. */
  upAtMs: number
  downAtMs: number
  session: ReturnType<ServerEnd['accept']>
}
