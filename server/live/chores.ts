import { hashState } from '../../shared-core/day/hash.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import { REFUSALS_KEPT_MS } from '../journal/journal.ts'
import { saveSnapshot } from '../shop/wake.ts'
import type { Room } from './room.ts'

/** Entries since the last snapshot that are worth a new one; a start reads at most these and what a busy spell adds. */
const SNAPSHOT_ENTRIES = 1_000
/** A lull: nothing tapped for this long, so that no tap waits behind a chore. */
const LULL_MS = 2_000
/** In a spell without a lull a snapshot is taken all the same, before the tail grows long. */
const SNAPSHOT_ENTRIES_MAX = 20_000
/** Hashing costs a weak tablet some tens of milliseconds: now and then is enough to prove that all agree. */
const CHECK_EVERY_MS = 60_000
const REFUSALS_PRUNED_EVERY_MS = 3_600_000

/** What the server does when nobody taps: snapshots, fingerprints to the screens, forgetting old refusals. */
export class Chores {
  readonly #room: Room
  readonly #journal: Journal
  readonly #now: () => number
  #snapshotSeq: number
  #checkedSeq: number
  #seenSeq: number
  #changedAtMs = 0
  #prunedAtMs = 0
  #checkedAtMs = 0

  constructor({
    room,
    journal,
    now,
    snapshotSeq,
  }: { room: Room; journal: Journal; now: () => number; snapshotSeq: number }) {
    this.#room = room
    this.#journal = journal
    this.#now = now
    this.#snapshotSeq = snapshotSeq
    this.#checkedSeq = room.state.seq
    this.#seenSeq = room.state.seq
  }

  /** To be called about once a second. */
  async tick(): Promise<void> {
    const nowMs = this.#now()
    const { seq } = this.#room.state
    if (seq !== this.#seenSeq) this.#changedAtMs = nowMs
    this.#seenSeq = seq
    const isLull = nowMs - this.#changedAtMs >= LULL_MS
    const since = seq - this.#snapshotSeq
    if (since >= (isLull ? SNAPSHOT_ENTRIES : SNAPSHOT_ENTRIES_MAX)) await this.snapshot()
    if (isLull && seq !== this.#checkedSeq && nowMs - this.#checkedAtMs >= CHECK_EVERY_MS) {
      this.#checkedSeq = seq
      this.#checkedAtMs = nowMs
      this.#room.check(hashState)
    }
    if (nowMs - this.#prunedAtMs >= REFUSALS_PRUNED_EVERY_MS) {
      this.#prunedAtMs = nowMs
      this.#journal.pruneRefusals(epochMs(Math.max(0, nowMs - REFUSALS_KEPT_MS)))
    }
  }

  async snapshot(): Promise<void> {
    if (this.#room.failure !== null || this.#room.state.seq === this.#snapshotSeq) return
    this.#snapshotSeq = await this.#room.read((state) => {
      saveSnapshot(this.#journal, state)
      return state.seq
    })
  }
}
