import { randomId } from '../../client/live/random-id.ts'
import type { SavedText } from '../../client/live/saved-text.ts'
import type { ShopStore } from '../../client/live/shop-store.ts'
import { createShopStore } from '../../client/live/shop-store.ts'
import { socketLink } from '../../client/live/socket-link.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { CommandAnswer, Role } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Chance } from '../days/chance.ts'
import { nextAct } from './acts.ts'

export interface ScreenParts {
  readonly who: string
  readonly role: Role
  readonly address: string
  readonly buildId: string
  readonly chance: Chance
  readonly told: (answer: CommandAnswer, who: string) => void
}

/** A screen without a page: the real store over a real socket, and somebody who taps. */
export class KillsScreen {
  readonly who: string
  readonly tapped = new Set<CommandId>()
  /** When it was last up to date for the first time after it had not been; ms of `performance.now()`. */
  liveAtMs: number | null = null
  readonly #parts: ScreenParts
  readonly #saved = new Saved()
  #store: ShopStore

  constructor(parts: ScreenParts) {
    this.#parts = parts
    this.who = parts.who
    this.#store = this.#load()
  }

  get isLive(): boolean {
    return this.#store.getState().connection.phase === 'live'
  }

  /** The server's time as this screen had it at its last tap, answer or tick. */
  get nowMs(): EpochMs {
    return this.#store.getState().nowMs
  }

  get clockErrorMs(): number | null {
    return this.#store.getState().clockErrorMs
  }

  localTime(atMs: EpochMs): string {
    return this.#store.localTime(atMs)
  }

  /** The page is looked at again: it asks for the time anew. */
  woke(): void {
    this.#store.visibilityChanged()
  }

  get pending(): number {
    return this.#store.getState().pending.length
  }

  /** What is confirmed, once nothing is pending. */
  get shown() {
    return this.#store.getState().shown
  }

  get notices() {
    return this.#store.getState().notices
  }

  /** Somebody does what the screen suggests. */
  tap(): void {
    const { shown } = this.#store.getState()
    if (shown === null || this.#parts.role === 'wall') return
    const { role, chance } = this.#parts
    this.send(nextAct(shown, role, chance))
  }

  send(act: Act): void {
    const id = this.#store.send(act)
    if (id !== null) this.tapped.add(id)
  }

  /** Questions are answered, refusals read. */
  tidyUp(): void {
    for (const notice of this.notices) {
      if (notice.kind === 'ask' && this.#parts.chance.permille(500)) this.#store.confirm(notice.id)
      else this.#store.dismiss(notice.id)
    }
  }

  /** The page is loaded anew: what is saved survives it, nothing else. */
  reload(): void {
    this.#store.stop()
    this.liveAtMs = null
    this.#store = this.#load()
  }

  stop(): void {
    this.#store.stop()
  }

  #load(): ShopStore {
    const { role, address, buildId, chance, told } = this.#parts
    const store = createShopStore({
      decide,
      role,
      saved: this.#saved,
      openLink: (events) =>
        socketLink(
          {
            ...events,
            message: (message) => {
              if (message.type === 'turn') for (const answer of message.answers) told(answer, this.who)
              events.message(message)
            },
          },
          address,
        ),
      clock: { monotonicMs: () => performance.now(), wallMs: () => Date.now() },
      makeId: () =>
        randomId((bytes) =>
          bytes.forEach((_, at) => {
            bytes[at] = chance.between(0, 255)
          }),
        ),
      buildId,
      reload: () => undefined,
      moveTo: () => undefined,
      timers: {
        set: (run, afterMs) => Number(setTimeout(run, afterMs)),
        clear: (timer) => clearTimeout(timer),
      },
      isHidden: () => false,
    })
    store.subscribe(({ connection }, before) => {
      if (connection.phase === before.connection.phase) return
      this.liveAtMs = connection.phase === 'live' ? performance.now() : null
    })
    return store
  }
}

/** The device's disk: it outlives the page. */
class Saved implements SavedText {
  readonly #texts = new Map<string, string>()

  read(key: string): string | null {
    return this.#texts.get(key) ?? null
  }

  write(key: string, text: string): boolean {
    this.#texts.set(key, text)
    return true
  }

  remove(key: string): void {
    this.#texts.delete(key)
  }

  keys(prefix: string): string[] {
    return [...this.#texts.keys()].filter((key) => key.startsWith(prefix))
  }
}
