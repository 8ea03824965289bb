import type { Link, LinkEvents } from '../../client/live/link.ts'
import type { ScreenLink } from '../../server/live/room-parts.ts'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import type { Chance } from './chance.ts'
import type { Faults } from './faults.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'

/** The shop's Wi-Fi: each way of a contact is ordered, each message has its own delay, contacts break at any moment. */
export interface NetworkOptions {
  readonly delayMsMax: number
  readonly lostPermille: number
  readonly latePermille: number
  readonly repeatPermille: number
}

/** What a server lets a screen talk to; null while there is no server. */
export interface ServerEnd {
  /** Which history the running server tells: another one after a copy was put back. */
  readonly course: string
  accept(link: ScreenLink, who: string): { hear(raw: unknown): void; lost(): void } | null
}

/** A dead contact that nobody has closed is noticed by the missing answer to a ping: interval and wait, as configured. */
const STALL_NOTICED_MS = 25_000
const LINGER_MS_MAX = 2_000
/** Long enough for the first to have been answered before the second comes. */
const REPEAT_AFTER_MS_MAX = 200
/** Longer than a screen waits for an answer before it makes a new contact. */
const LATE_MS = [2_000, 14_000] as const

export interface WireParts {
  readonly schedule: Schedule
  readonly chance: Chance
  readonly story: Story
  readonly faults: Faults
  readonly options: NetworkOptions
  readonly server: ServerEnd
  readonly who: string
  /**
   * Sees each message as the screen does, and may change it: that is how a bug is planted.
   * @param course of the server that said it
   */
  readonly deliver: (message: ToScreen, course: string, hear: (message: ToScreen) => void) => void
}

/** One screen's wire to the server, from page load to page load. */
export class Wire implements Link {
  readonly #parts: WireParts
  readonly #events: LinkEvents
  #contact: Contact | null = null
  #blockedUntilMs = 0
  #isResting = false
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
    const { faults, who } = this.#parts
    this.#travel(contact, 'up', text, () => {
      if (!contact.isServerOpen) return
      if (this.#contact !== contact) faults.happens('overtaken', who)
      contact.session?.hear(JSON.parse(text))
    })
  }

  restart(): void {
    this.#parts.story.tell(this.#parts.who, 'makes the link anew')
    const wasResting = this.#isResting
    this.#isResting = false
    if (wasResting) this.#knock()
    else this.#break()
  }

  rest(): void {
    this.#isResting = true
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

  /** There is contact again, before the time. */
  free(): void {
    this.#blockedUntilMs = this.#parts.schedule.nowMs
    if (this.#contact === null && !this.#isResting) this.#knock()
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
    const awayMs = Math.max(0, this.#blockedUntilMs - schedule.nowMs)
    schedule.in(awayMs + chance.between(250, 500), () => {
      if (this.#isClosed || this.#isResting || this.#contact !== null) return
      if (schedule.nowMs < this.#blockedUntilMs) this.#knock()
      else this.#connect()
    })
  }

  #connect(): void {
    const { server, who } = this.#parts
    const { course } = server
    const contact: Contact = { course, isServerOpen: true, isStalled: false, upAtMs: 0, downAtMs: 0, session: null }
    const link: ScreenLink = {
      send: (message) => this.#receive(contact, message),
      close: () => this.#hungUp(contact),
    }
    contact.session = server.accept(link, who)
    if (contact.session === null) {
      this.#knock()
      return
    }
    this.#contact = contact
    this.#events.up()
  }

  #receive(contact: Contact, message: ToScreen): void {
    if (!contact.isServerOpen || contact.isStalled) return
    const text = textOf(message)
    this.#travel(contact, 'down', text, () => {
      if (this.#contact !== contact || contact.isStalled) return
      this.#parts.deliver(JSON.parse(text), contact.course, (heard) => this.#events.message(heard))
    })
  }

  /** The server hung up: it knows at once, the screen after the message's way. */
  #hungUp(contact: Contact): void {
    if (!contact.isServerOpen) return
    contact.isServerOpen = false
    contact.session?.lost()
    this.#travel(contact, 'down', '', () => {
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
    if (!this.#isResting) this.#knock()
  }

  /** Nothing overtakes on one way of one contact. */
  #travel(contact: Contact, way: 'up' | 'down', text: string, arrive: () => void): void {
    const { schedule, chance, faults, options, who } = this.#parts
    // What cannot arrive on an ordered way takes all that comes after it along.
    const kind = () => kindOf(text)
    if (faults.fires(chance, options.lostPermille, 'lost', who, kind)) {
      if (this.#contact === contact) this.stall()
      return
    }
    const isLate = faults.fires(chance, options.latePermille, 'late', who, kind)
    const field = way === 'up' ? 'upAtMs' : 'downAtMs'
    const delayMs = this.#delayMs() + (isLate ? chance.between(...LATE_MS) : 0)
    contact[field] = Math.max(contact[field], schedule.nowMs + delayMs)
    schedule.in(contact[field] - schedule.nowMs, arrive)
    if (!faults.fires(chance, options.repeatPermille, 'repeat', who, kind)) return
    contact[field] += chance.between(0, REPEAT_AFTER_MS_MAX)
    schedule.in(contact[field] - schedule.nowMs, arrive)
  }

  #delayMs(): number {
    const { chance, faults, options } = this.#parts
    return chance.between(1, faults.calm ? 5 : options.delayMsMax)
  }
}

interface Contact {
  readonly course: string
  isServerOpen: boolean
  isStalled: boolean
  /** When the last message on each way arrives. */
  upAtMs: number
  downAtMs: number
  session: ReturnType<ServerEnd['accept']>
}

const TEXTS = new WeakMap<ToScreen, string>()

/** A message to all screens is encoded once, as the real server does; each screen reads its own. */
function textOf(message: ToScreen): string {
  const known = TEXTS.get(message)
  if (known !== undefined) return known
  const text = JSON.stringify(message)
  TEXTS.set(message, text)
  return text
}

function kindOf(text: string): string {
  return /"type":"(\w+)"/.exec(text)?.[1] ?? 'goodbye'
}
