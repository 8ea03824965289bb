import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** So many entries are folded within a frame on a small computer; a fork costs less than they do. */
const ENTRIES_A_CHECKPOINT = 150

/**
 * A day played again: the state at any instant, by the very fold that ran the shop. Every so many entries a fork is kept,
 * so that going anywhere folds few; going on from where one was folds only what lies between.
 *
 * An entry stands where it happened, though never before the one before it: a tap that was made without contact came late
 * into the record, and the record's order is the one that gives the state.
 */
export class Replay {
  readonly #entries: readonly Entry[]
  readonly #atMs: readonly EpochMs[]
  readonly #checkpoints: readonly State[]
  /** Where one was last: the state with so many entries folded. */
  #last: { readonly count: number; readonly state: State }

  /** @param start the state just before the first entry; it stays as it is */
  constructor(start: State, entries: readonly Entry[], onEntry: (state: State, atMs: EpochMs) => void) {
    this.#entries = entries
    this.#atMs = instantsOf(entries)
    const state = forkState(start)
    const checkpoints = [forkState(start)]
    for (const [index, entry] of entries.entries()) {
      applyEntry(state, entry)
      onEntry(state, this.#atMs[index] ?? entry.recordedAtMs)
      if ((index + 1) % ENTRIES_A_CHECKPOINT === 0) checkpoints.push(forkState(state))
    }
    this.#checkpoints = checkpoints
    this.#last = { count: entries.length, state }
  }

  /** How many entries there were by an instant, those of the instant included. */
  countAt(atMs: EpochMs): number {
    let [low, high] = [0, this.#atMs.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.#atMs[middle] ?? 0) <= atMs) low = middle + 1
      else high = middle
    }
    return low
  }

  /** The entry that happened last by an instant; null before the first. */
  lastEntryAt(atMs: EpochMs): Entry | null {
    return this.#entries[this.countAt(atMs) - 1] ?? null
  }

  /** The shop as it was at an instant. It is not changed afterwards. */
  stateAt(atMs: EpochMs): State {
    const count = this.countAt(atMs)
    if (count === this.#last.count) return this.#last.state
    const from = this.#nearest(count)
    const state = forkState(from.state)
    for (let index = from.count; index < count; index++) {
      const entry = this.#entries[index]
      if (entry !== undefined) applyEntry(state, entry)
    }
    this.#last = { count, state }
    return state
  }

  #nearest(count: number): { readonly count: number; readonly state: State } {
    const place = Math.floor(count / ENTRIES_A_CHECKPOINT)
    const state = this.#checkpoints[place]
    const kept = { count: place * ENTRIES_A_CHECKPOINT, state: state ?? this.#last.state }
    const { count: lastCount } = this.#last
    return lastCount <= count && lastCount >= kept.count ? this.#last : kept
  }
}

/** Where each entry stands on the day's ruler; never going back. */
export function instantsOf(entries: readonly Entry[]): readonly EpochMs[] {
  let last = 0
  return entries.map(({ events, recordedAtMs }) => {
    const happenedMs = events.reduce((latest, { atMs }) => Math.max(latest, atMs), 0)
    last = Math.max(last, Math.min(recordedAtMs, happenedMs === 0 ? recordedAtMs : happenedMs))
    return last as EpochMs
  })
}
