import type { Batch, Line, State } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Allotment, Short } from './allot.ts'
import type { ExpectedLoad } from './fill.ts'
import { piecesOf } from './lines.ts'

/**
 * Planned loads that dips and pulls are worked back from. Far enough for dough that stands an hour on the rack (five
 * shelves of a quarter of an hour each); a whole day's list would only make a longer list of what nobody does yet.
 */
const LOADS_LOOKED_AHEAD = 20

/** Dough that a planned load still needs: one kettle-full, or all of it at once where it is not boiled. */
export interface Need {
  readonly expected: ExpectedLoad
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly boiled: boolean
  readonly pieces: number
  /** What these pieces become. */
  readonly lines: readonly Line[]
  /** When they must go into the kettle, or into the oven where they are not boiled. */
  readonly atMs: EpochMs
  /** Kettle-fulls that the load still needs, this one included: counts down to 1, so that it names the dip. */
  readonly dipsLeft: number
}

/**
 * When each kettle-full must be dipped, worked back from when its load goes in: one dip a cycle, the last one a cycle
 * before the load; where loads would want the kettle at once, the earlier load's dips move forward. A dip can be no
 * sooner than a cycle after the one that is in the kettle.
 * @example in at 6:10, 48 pieces, kettle of 36 every 90 s // 36 at 6:07:00, 12 at 6:08:30
 */
export function needsAhead(state: State, shop: Shop, allotments: readonly Allotment[]): readonly Need[] {
  const loads = allotments
    .slice(0, LOADS_LOOKED_AHEAD)
    // "When a shelf is free" means nothing at night.
    .filter(({ expected }) => expected.planned.inAtMs !== null || state.day !== null)
    .sort((one, other) => one.expected.inAtMs - other.expected.inAtMs)
  const cycleMs = shop.kettle.cycleMs
  const needs: Need[] = []
  let kettleTakenMs = Number.MAX_SAFE_INTEGER
  for (const { expected, short } of loads.slice().reverse()) {
    const raw = short.filter((one) => !isBoiled(shop, one.doughId))
    const dips = short
      .filter((one) => isBoiled(shop, one.doughId))
      .flatMap((one) => kettleFulls(one, shop.kettle.pieces))
    kettleTakenMs = Math.min(kettleTakenMs, expected.inAtMs) - dips.length * cycleMs
    const startMs = kettleTakenMs
    const boiled = dips.map((dip, n) => ({
      ...dip,
      atMs: startMs + n * cycleMs,
      dipsLeft: dips.length - n,
      boiled: true,
    }))
    const unboiled = raw.map((one) => ({ ...one, atMs: expected.inAtMs, dipsLeft: 0, boiled: false }))
    needs.unshift(
      ...[...boiled, ...unboiled].map((need) => ({ ...need, expected, atMs: epochMs(Math.max(0, need.atMs)) })),
    )
  }
  return afterKettle(needs, kettleFreeAt(state, cycleMs), cycleMs)
}

export function isBoiled(shop: Shop, doughId: DoughId): boolean {
  return must(shop.doughs, doughId).route.includes('kettle')
}

/** Cuts lines into kettle-fulls in their order. @example 24 sesame and 24 poppy at 36 // 24 + 12, then 12 */
function kettleFulls(short: Short, kettlePieces: number): readonly Short[] {
  const fulls: Short[] = []
  let lines: Line[] = []
  const close = () => {
    if (lines.length > 0) fulls.push({ ...short, lines, pieces: piecesOf(lines) })
    lines = []
  }
  for (const line of short.lines) {
    let rest = line.pieces
    while (rest > 0) {
      const pieces = Math.min(rest, kettlePieces - piecesOf(lines))
      lines.push({ varietyId: line.varietyId, pieces })
      rest -= pieces
      if (piecesOf(lines) >= kettlePieces) close()
    }
  }
  close()
  return fulls
}

function kettleFreeAt(state: State, cycleMs: number): number {
  const inKettle = [...state.batches.values()].filter((batch: Batch) => batch.stage === 'kettle')
  return inKettle.reduce((latestMs, batch) => Math.max(latestMs, batch.sinceMs + cycleMs), 0)
}

function afterKettle(needs: readonly Need[], freeAtMs: number, cycleMs: number): readonly Need[] {
  let freeMs = freeAtMs
  return needs.map((need) => {
    if (!need.boiled) return need
    const atMs = Math.max(need.atMs, freeMs)
    freeMs = atMs + cycleMs
    return { ...need, atMs: epochMs(atMs) }
  })
}
