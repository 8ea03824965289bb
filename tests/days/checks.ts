import { assertAccounted } from '../../shared-core/day/account.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'
import { AssertionError } from '../../shared-core/support.ts'
import type { Copy, Disk } from './disk.ts'
import { Ledger } from './ledger.ts'
import type { Screen } from './screens.ts'
import type { ShopServer } from './shop-server.ts'
import { Twins } from './twins.ts'

/** Server, replay and screens are held side by side every so many entries, each screen at others than the next. */
const COMPARE_EVERY = 16
/** Two screens whose time is known, on a calm network, show the same second or its neighbour. */
const APART_MS_MAX = 1_000

interface Looked {
  readonly who: string
  readonly state: State
  readonly turn: number
  readonly isOfThisCourse: boolean
}

/** What must hold at every moment of every day, whatever goes wrong. The first thing that does not is kept. */
export class Checks {
  /** Entries on disk, answers that people have seen, states compared; acknowledged commands that a copy did not have. */
  readonly counts = { entries: 0, taken: 0, refused: 0, asked: 0, compared: 0, cutOff: 0, notKept: 0 }
  /** How often each kind of command was taken. */
  readonly taken = new Map<string, number>()
  trouble: string | null = null
  /** The journal folded on its own, entry by entry as they come on disk. */
  replay: State = emptyState()
  readonly #ledger = new Ledger(
    (what) => this.fail(what),
    ({ kind }: Answer) => {
      this.counts[kind === 'ask' ? 'asked' : kind] += 1
    },
  )
  readonly #twins = new Twins()
  readonly #seen = new Map<string, number>()
  #entries: Entry[] = []
  readonly #copied = new Map<Copy, readonly Entry[]>()
  readonly #disk: Disk
  #server: ShopServer | null = null
  #screens: readonly Screen[] = []

  constructor(disk: Disk) {
    this.#disk = disk
  }

  watch(server: ShopServer, screens: readonly Screen[]): void {
    this.#server = server
    this.#screens = screens
  }

  fail(what: string): void {
    this.trouble ??= what
  }

  /** After each thing that happened. */
  step(): void {
    if (this.#disk.takeNews()) this.#readDisk()
    const room = this.#server?.room ?? null
    if (room !== null) this.#look({ who: 'the server', state: room.state, turn: 0, isOfThisCourse: true })
    this.#screens.forEach((screen, at) => {
      const confirmed = screen.sync?.confirmed ?? null
      if (confirmed === null) return
      // What it knew before a copy was put back it knows until the server greets it.
      const isOfThisCourse = screen.course === this.#disk.course
      const isNew = this.#look({ who: screen.who, state: confirmed, turn: at, isOfThisCourse })
      if (isNew && screen.hasWaiting) this.lookAtShown(screen)
    })
  }

  /** What a screen shows, with what is pending on top. */
  lookAtShown({ who, sync }: Screen): void {
    const { shown } = sync?.view() ?? { shown: null }
    const gap = shown === null ? null : gapIn(shown)
    if (gap !== null) this.fail(`${who} shows what is not accounted for: ${gap}`)
  }

  answered({ commandId: id, answer }: CommandAnswer, who: string, course: string): void {
    this.#readDisk()
    this.#ledger.answered(id, answer, { who, course, now: this.#disk.course })
  }

  /** A screen's time against the true one. */
  clock(screen: Screen, trueMs: number): void {
    const { serverClock } = screen.sync ?? { serverClock: null }
    const errorMs = serverClock?.errorMs() ?? null
    if (serverClock === null || errorMs === null) return
    const offMs = Math.abs(serverClock.serverNowMs() - trueMs)
    if (offMs > errorMs + 1) this.fail(`${screen.who} is ${offMs} ms off and claims ${errorMs}`)
  }

  /** A state that had to be fetched anew was wrong, whether or not it is right by now. */
  told({ who }: Screen, kind: string): void {
    if (kind !== 'ask' && kind !== 'refused' && kind !== 'not-saved') this.fail(`${who} is told ${kind}`)
  }

  /** A copy was made: what was on disk then. */
  copied(copy: Copy): void {
    this.#readDisk()
    if (copy.seq === this.replay.seq) this.#copied.set(copy, [...this.#entries])
    else this.fail(`a copy has ${copy.seq} entries, the journal ${this.replay.seq}`)
  }

  /** A copy was put back: the shop is what it was then, to the entry, and nothing but what came after is gone. */
  putBack(copy: Copy): void {
    const found = [...this.#disk.entriesAfter(0)]
    if (this.#twins.difference(found, this.#copied.get(copy)) !== null)
      this.fail(`what was put back is not the copy that was made of ${copy.seq} entries`)
    this.counts.cutOff += this.#ledger.putBack(found, this.#disk)
    this.#seen.clear()
    this.#entries = found
    this.replay = emptyState()
    for (const entry of found) applyEntry(this.replay, entry)
  }

  /** When all is quiet: every screen is the server, and every tap has come to something. */
  atRest(): void {
    const hash = hashState(this.replay)
    const { room, buildId } = this.#server ?? {}
    if (room == null || hashState(room.state) !== hash) this.fail('the server is not the replay of its journal')
    for (const screen of this.#screens) this.#screenAtRest(screen, hash, buildId)
    this.#ledger.atRest(this.#disk)
    const times = this.#screens.flatMap(({ sync }) => (sync === null ? [] : [sync.serverClock.serverNowMs()]))
    const apartMs = Math.max(...times) - Math.min(...times)
    if (times.length < this.#screens.length || apartMs > APART_MS_MAX)
      this.fail(`screens show times ${apartMs} ms apart`)
  }

  #screenAtRest(screen: Screen, hash: string, buildId: string | undefined): void {
    const { who } = screen
    const view = screen.sync?.view()
    if (view?.shown == null || hashState(view.shown) !== hash) this.fail(`${who} does not show what the journal says`)
    if (screen.buildId !== buildId) this.fail(`${who} is still ${screen.buildId}`)
    for (const { kind, id } of view?.notices ?? []) {
      if (kind === 'not-saved') this.fail(`${who} is told ${kind}`)
      this.told(screen, kind)
      if (this.#ledger.isOnDisk(commandId(id))) this.fail(`${who} still has the ${kind} notice of ${id}, which is done`)
    }
    for (const [id, act] of screen.tapped) {
      const isKnown = this.#ledger.isOnDisk(id) || this.#ledger.cutOff.has(id) || this.#ledger.isAsked(id)
      if (isKnown || this.#disk.answerOf(id) !== null) continue
      if (screen.gone.has(id)) this.counts.notKept += 1
      else this.fail(`the tap ${id} ${JSON.stringify(act)} of ${who} is lost`)
    }
  }

  #readDisk(): void {
    for (const entry of this.#disk.entriesAfter(this.replay.seq)) if (this.trouble === null) this.#newEntry(entry)
  }

  #newEntry(entry: Entry): void {
    if (entry.seq !== this.replay.seq + 1) this.fail(`seq ${entry.seq} on disk after ${this.replay.seq}`)
    this.#ledger.written(entry.commandId, entry.seq)
    this.counts.entries += 1
    this.#entries.push(entry)
    this.taken.set(entry.told.type, (this.taken.get(entry.told.type) ?? 0) + 1)
    try {
      applyEntry(this.replay, entry)
    } catch (error) {
      this.fail(`the journal cannot be replayed at ${entry.seq}: ${String(error)}`)
    }
    const gap = gapIn(this.replay)
    if (gap !== null) this.fail(`after ${entry.seq}: ${gap}`)
  }

  /** @returns whether this state is new */
  #look({ who, state, turn, isOfThisCourse }: Looked): boolean {
    if (this.#seen.get(who) === state.seq) return false
    this.#seen.set(who, state.seq)
    const gap = gapIn(state)
    if (gap !== null) this.fail(`${who} at ${state.seq}: ${gap}`)
    if (isOfThisCourse && state.seq === this.replay.seq && (state.seq + turn) % COMPARE_EVERY === 0) {
      this.counts.compared += 1
      const where = this.#twins.difference(state, this.replay)
      if (where !== null) this.fail(`${who} differs from the journal at ${state.seq}, in ${where}`)
    }
    return true
  }
}

/** What of pieces and dough is not accounted for, in words; null: nothing. */
function gapIn(state: State): string | null {
  try {
    assertAccounted(state)
    return null
  } catch (error) {
    return error instanceof AssertionError ? error.message : String(error)
  }
}
