import { isDeepStrictEqual } from 'node:util'
import { accountGaps } from '../../shared-core/day/account.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'
import type { Screen } from './screens.ts'
import type { ShopServer } from './shop-server.ts'

/** Comparing whole states costs some time: every so many entries server, replay and screens are held side by side. */
const COMPARE_EVERY = 16

/** What must hold at every moment of every day, whatever goes wrong. The first thing that does not is kept. */
export class Checks {
  /** Entries on disk, and answers that people have seen. */
  readonly counts = { entries: 0, taken: 0, refused: 0, asked: 0, compared: 0 }
  trouble: string | null = null
  /** The journal folded on its own, entry by entry as they come on disk. */
  readonly replay: State = emptyState()
  readonly #answers = new Map<CommandId, Answer>()
  readonly #onDisk = new Map<CommandId, number>()
  readonly #seen = new Map<unknown, number>()
  #server: ShopServer | null = null
  #screens: readonly Screen[] = []

  watch(server: ShopServer, screens: readonly Screen[]): void {
    this.#server = server
    this.#screens = screens
  }

  fail(what: string): void {
    this.trouble ??= what
  }

  /** After each thing that happened. */
  step(): void {
    const { disk, room } = this.#server ?? { disk: null, room: null }
    for (let at = this.replay.seq; disk !== null && this.trouble === null && at < disk.entries.length; at += 1)
      this.#newEntry(disk.entries[at] ?? '')
    if (room !== null) this.#look('the server', room.state)
    for (const screen of this.#screens) {
      const confirmed = screen.sync?.confirmed ?? null
      if (confirmed !== null && this.#look(screen.who, confirmed)) this.#lookAtShown(screen)
    }
  }

  /** An answer that a person can have seen: from now on it holds. */
  answered({ commandId: id, answer }: CommandAnswer, who: string): void {
    const before = this.#answers.get(id)
    this.#answers.set(id, answer)
    if (answer.kind === 'refused' && (answer.refusal.code === 'internal' || answer.refusal.code === 'bad-command')) {
      this.fail(`${who} is answered ${JSON.stringify(answer)}`)
    }
    // A question is no answer yet.
    if (before === undefined || before.kind === 'ask') this.#count(answer)
    else if (JSON.stringify(before) !== JSON.stringify(answer)) {
      this.fail(`${id} was answered ${JSON.stringify(before)} and then ${JSON.stringify(answer)}`)
    }
    if (answer.kind === 'taken' && this.#onDisk.get(id) !== answer.seq) {
      this.fail(`${id} is acknowledged as ${answer.seq}, and on disk as ${this.#onDisk.get(id)}`)
    }
  }

  /** A screen's time against the true one. */
  clock(screen: Screen, trueMs: number): void {
    const { serverClock } = screen.sync ?? { serverClock: null }
    const errorMs = serverClock?.errorMs() ?? null
    if (serverClock === null || errorMs === null) return
    const offMs = Math.abs(serverClock.serverNowMs() - trueMs)
    if (offMs > errorMs + 1) this.fail(`${screen.who} is ${offMs} ms off and claims ${errorMs}`)
  }

  /** When all is quiet: every screen is the server, and every tap has come to something. */
  atRest(): void {
    const hash = hashState(this.replay)
    const { room, disk, buildId } = this.#server ?? {}
    if (room == null || disk === undefined || hashState(room.state) !== hash)
      this.fail('the server is not the replay of its journal')
    for (const screen of this.#screens) {
      const view = screen.sync?.view()
      if (view?.shown == null || hashState(view.shown) !== hash)
        this.fail(`${screen.who} does not show what the journal says`)
      if (screen.buildId !== buildId) this.fail(`${screen.who} is still ${screen.buildId}`)
      for (const { kind, id } of view?.notices ?? []) {
        if (kind !== 'ask' && kind !== 'refused') this.fail(`${screen.who} is told ${kind}`)
        if (this.#onDisk.has(commandId(id)))
          this.fail(`${screen.who} still has the ${kind} notice of ${id}, which is done`)
      }
      for (const [id, act] of screen.tapped) {
        const isKnown = this.#onDisk.has(id) || disk?.refusals.has(id) || this.#answers.get(id)?.kind === 'ask'
        if (!isKnown) this.fail(`the tap ${id} ${JSON.stringify(act)} of ${screen.who} is lost`)
      }
    }
    for (const [id, answer] of this.#answers) {
      if (answer.kind === 'taken' && this.#onDisk.get(id) !== answer.seq)
        this.fail(`${id} was acknowledged and is lost`)
      if (answer.kind === 'refused' && this.#onDisk.has(id)) this.fail(`${id} is done and was refused`)
    }
  }

  #newEntry(text: string): void {
    const entry: Entry = JSON.parse(text)
    if (entry.seq !== this.replay.seq + 1) this.fail(`seq ${entry.seq} on disk after ${this.replay.seq}`)
    if (this.#onDisk.has(entry.commandId))
      this.fail(`${entry.commandId} is done twice: ${this.#onDisk.get(entry.commandId)} and ${entry.seq}`)
    this.#onDisk.set(entry.commandId, entry.seq)
    this.counts.entries += 1
    try {
      applyEntry(this.replay, entry)
    } catch (error) {
      this.fail(`the journal cannot be replayed at ${entry.seq}: ${String(error)}`)
    }
    if (accountGaps(this.replay).size > 0) this.fail(`pieces unaccounted for after ${entry.seq}`)
  }

  /** @returns whether this state is new */
  #look(who: string, state: State): boolean {
    if (this.#seen.get(who) === state.seq) return false
    this.#seen.set(who, state.seq)
    const gaps = accountGaps(state)
    if (gaps.size > 0) this.fail(`${who} at ${state.seq}: pieces unaccounted for ${JSON.stringify([...gaps])}`)
    if (state.seq === this.replay.seq && state.seq % COMPARE_EVERY === 0) {
      this.counts.compared += 1
      if (!isDeepStrictEqual(state, this.replay)) this.fail(`${who} differs from the journal at ${state.seq}`)
    }
    return true
  }

  #lookAtShown({ who, sync }: Screen): void {
    const { shown, pending } = sync?.view() ?? { shown: null, pending: [] }
    if (shown === null || pending.length === 0) return
    if (accountGaps(shown).size > 0) this.fail(`${who} shows pieces unaccounted for`)
  }

  #count(answer: Answer): void {
    this.counts[answer.kind === 'ask' ? 'asked' : answer.kind] += 1
  }
}
