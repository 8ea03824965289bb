import type { OpenSpan, SellOut } from '../../../shared-core/day/figures-sold-out.ts'
import { SoldOutOf } from '../../../shared-core/day/figures-sold-out.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import type { LoadId, ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** A load as it lies on its shelf's lane. */
export interface LaneLoad {
  readonly loadId: LoadId
  readonly shelfId: ShelfId
  readonly fromMs: EpochMs
  readonly flippedAtMs: EpochMs | null
  /** Null: still in at the end of the record. */
  readonly toMs: EpochMs | null
  readonly lines: readonly Line[]
}

export interface RodGap extends Pick<SellOut, 'fromMs' | 'toMs'> {
  readonly varietyId: VarietyId
}

/**
 * What was in the oven when, and what ran out when, followed entry by entry. Gaps are told by the same reckoning as the
 * day's figures, so that both say the same.
 */
export class DayTracks {
  readonly #open: OpenSpan
  readonly #openedAtMs: EpochMs
  readonly #loads = new Map<LoadId, LaneLoad>()
  readonly #done: LaneLoad[] = []
  readonly #rods = new Map<VarietyId, SoldOutOf>()
  #endMs: EpochMs

  /** @param openedAtMs which day is followed */
  constructor(open: OpenSpan, openedAtMs: EpochMs) {
    this.#open = open
    this.#openedAtMs = openedAtMs
    this.#endMs = openedAtMs
  }

  /** @param state as it is after the entry */
  follow(state: State, atMs: EpochMs): void {
    // A close takes what is left off the rods: that is no sell-out. One entry may close this day and open the next.
    if (state.day?.openedAtMs !== this.#openedAtMs) return
    this.#endMs = atMs
    for (const [id, load] of this.#loads) {
      if (state.loads.has(id)) continue
      this.#loads.delete(id)
      // Loaded and taken back at once was never baked.
      if (load.fromMs < atMs) this.#done.push({ ...load, toMs: atMs })
    }
    const contents = state.shop === null ? null : contentsByLoad(state, state.shop)
    for (const { id, shelfId, loadedAtMs, flippedAtMs } of state.loads.values()) {
      const before = this.#loads.get(id)
      const lines = contents?.get(id) ?? []
      const here = { loadId: id, shelfId, fromMs: loadedAtMs, flippedAtMs, toMs: null }
      this.#loads.set(id, { ...here, lines: lines.length === 0 ? (before?.lines ?? []) : lines })
    }
    for (const stock of state.stock.values()) this.#followRod(stock.varietyId, state, atMs)
  }

  /** Soonest first. */
  loads(): readonly LaneLoad[] {
    return [...this.#done, ...this.#loads.values()].sort(
      (one, other) => one.fromMs - other.fromMs || (one.loadId < other.loadId ? -1 : 1),
    )
  }

  /** Soonest first. @param endMs the close, or now */
  gaps(endMs: EpochMs | null): readonly RodGap[] {
    return [...this.#rods.values()]
      .flatMap((rod) =>
        rod
          .sellOutsBy(endMs ?? this.#endMs, this.#open)
          .map(({ fromMs, toMs }) => ({ varietyId: rod.varietyId, fromMs, toMs })),
      )
      .sort((one, other) => one.fromMs - other.fromMs || (one.varietyId < other.varietyId ? -1 : 1))
  }

  #followRod(varietyId: VarietyId, state: State, atMs: EpochMs): void {
    const rod = this.#rods.get(varietyId) ?? new SoldOutOf(varietyId, atMs)
    this.#rods.set(varietyId, rod)
    const stock = state.stock.get(varietyId) ?? null
    if (rod.stock !== stock) rod.change(stock, atMs, this.#open)
  }
}
