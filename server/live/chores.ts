import { hashState } from '../../shared-core/day/hash.ts'
import { commandId, deviceId } from '../../shared-core/ids.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { ordersToTakeUp } from '../../shared-core/orders/take-up.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import { REFUSALS_KEPT_MS } from '../journal/journal.ts'
import { saveSnapshot } from '../shop/wake.ts'
import type { Room } from './room.ts'

/** Entries since the last snapshot that are worth a new one; a start reads at most these and what a busy spell adds. */
const SNAPSHOT_ENTRIES = 1_000
/** A lull: nothing tapped for this long, so that no tap waits behind a chore. */
const LULL_MS = 2_000
/** After a start the screens come first. */
const SETTLED_MS = 5_000
/** In a spell without a lull a snapshot is taken all the same, before the tail grows long. */
const SNAPSHOT_ENTRIES_MAX = 20_000
/** Hashing costs a weak tablet some tens of milliseconds: now and then is enough to prove that all agree. */
const CHECK_EVERY_MS = 60_000
const REFUSALS_PRUNED_EVERY_MS = 3_600_000

/** Who does what nobody taps. */
export const SERVER: DeviceHello = { deviceId: deviceId('server'), name: 'Server', role: 'desk', stationId: null }

export interface ChoresParts {
  readonly room: Room
  readonly journal: Journal
  readonly now: () => number
  readonly snapshotSeq: number
  /** Further work for a lull, in pieces that nobody's tap waits for; called at every tick of one. */
  readonly inLull?: () => void
}

/**
 * What the server does when nobody taps: snapshots, fingerprints to the screens, forgetting old refusals, taking up
 * changes of the set-up whose time has come, and orders that stand.
 */
export class Chores {
  readonly #room: Room
  readonly #journal: Journal
  readonly #now: () => number
  readonly #inLull: () => void
  #snapshotSeq: number
  #checkedSeq: number
  #seenSeq: number
  #changedAtMs = 0
  #prunedAtMs = 0
  #checkedAtMs = 0
  #isTakingUp = false
  readonly #settledAtMs: number

  constructor({ room, journal, now, snapshotSeq, inLull = () => undefined }: ChoresParts) {
    this.#room = room
    this.#journal = journal
    this.#now = now
    this.#inLull = inLull
    this.#settledAtMs = now() + SETTLED_MS
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
    if (isLull && nowMs >= this.#settledAtMs) this.#inLull()
    this.#takeUp(epochMs(nowMs))
    if (nowMs - this.#prunedAtMs >= REFUSALS_PRUNED_EVERY_MS) {
      this.#prunedAtMs = nowMs
      this.#journal.pruneRefusals(epochMs(Math.max(0, nowMs - REFUSALS_KEPT_MS)))
    }
  }

  /**
   * A change planned for six holds from six, and a standing order is there when its day opens, though nobody taps
   * anything then; what nobody fetched goes back for sale.
   */
  #takeUp(nowMs: EpochMs): void {
    const { state, failure } = this.#room
    if (this.#isTakingUp || failure !== null) return
    const isDue = [...state.setUps.values()].some(({ fromMs }) => fromMs <= nowMs)
    if (isDue) this.#submit('takeUpSetUps')
    else if (ordersToTakeUp(state, nowMs)) this.#submit('takeUpOrders')
  }

  #submit(type: 'takeUpSetUps' | 'takeUpOrders'): void {
    this.#isTakingUp = true
    // By what the shop has become: asked again for the same, the first answer stands and nothing is written anew.
    const what = type === 'takeUpSetUps' ? 'takeup' : 'takeuporders'
    const id = commandId(`${what}${String(this.#room.state.seq).padStart(10, '0')}`)
    this.#room
      .submit(SERVER, [{ id, deviceSeq: 1, tappedAtMs: null, type }])
      // A disk that is full is told by the room; the next tick tries again.
      .catch(() => undefined)
      .finally(() => {
        this.#isTakingUp = false
      })
  }

  async snapshot(): Promise<void> {
    if (this.#room.failure !== null || this.#room.state.seq === this.#snapshotSeq) return
    this.#snapshotSeq = await this.#room.read((state) => {
      saveSnapshot(this.#journal, state)
      return state.seq
    })
  }
}
