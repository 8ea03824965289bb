import type { Batch, Line, State } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Allotment, Short } from './allot.ts'
import type { ExpectedLoad } from './fill.ts'
import { earliestBoilMs } from './float-hold.ts'
import { boilsAgainAt } from './kettle-care.ts'
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
  /** When they should go into the kettle, or into the oven where they are not boiled. */
  readonly atMs: EpochMs
  /** The same if no float test held the dough: what is pulled for it ferments on all the same. */
  readonly unheldAtMs: EpochMs
  /** Until when a float test holds the dough; null: nothing does. */
  readonly heldUntilMs: EpochMs | null
  /** Kettle-fulls that the load still needs, this one included: counts down to 1, so that it names the dip. */
  readonly dipsLeft: number
}

/**
 * When each kettle-full must be dipped, worked back from when its load goes in: one dip a cycle, the last one a cycle
 * before the load; where loads would want the kettle at once, the earlier load's dips move forward. A dip can be no
 * sooner than a cycle after the one that is in the kettle, before water that was topped up boils again, or before a float
 * test says so; dough that can be boiled meanwhile goes first.
 * @example in at 6:10, 48 pieces, kettle of 36 every 90 s // 36 at 6:07:00, 12 at 6:08:30
 */
export function needsAhead(
  state: State,
  shop: Shop,
  allotments: readonly Allotment[],
  nowMs: EpochMs,
): readonly Need[] {
  const loads = allotments
    .slice(0, LOADS_LOOKED_AHEAD)
    // "When a shelf is free" means nothing at night.
    .filter(({ expected }) => expected.planned.inAtMs !== null || state.day !== null)
    .sort((one, other) => one.expected.inAtMs - other.expected.inAtMs)
  const needs = workedBack(loads, shop)
  const { cycleMs } = shop.kettle
  const freeAtMs = Math.max(kettleFreeAt(state, cycleMs), boilsAgainAt(state, nowMs) ?? 0)
  const holds = needs.map(({ boiled, doughId }) => (boiled ? earliestBoilMs(state, doughId, nowMs) : null))
  const unheld = afterKettle(needs, freeAtMs, cycleMs)
  const isHeld = holds.some((hold) => hold !== null)
  const held = isHeld ? afterKettle(needs.map(heldBack(holds)), freeAtMs, cycleMs) : unheld
  // Field by field, as `actDue` is.
  const timed = needs.map((need, n) => ({
    expected: need.expected,
    doughId: need.doughId,
    varietyId: need.varietyId,
    boiled: need.boiled,
    pieces: need.pieces,
    lines: need.lines,
    dipsLeft: need.dipsLeft,
    atMs: epochMs(held[n] ?? need.atMs),
    unheldAtMs: epochMs(unheld[n] ?? need.atMs),
    heldUntilMs: holds[n] ?? null,
  }))
  // Stable: needs of one dough keep the order of their loads, in which its pieces are given out.
  return timed.sort((one, other) => one.atMs - other.atMs)
}

/** Each load's kettle-fulls, a cycle each before it goes in; loads that come later give way to earlier ones. */
function workedBack(loads: readonly Allotment[], shop: Shop): readonly WithoutHold[] {
  const { cycleMs } = shop.kettle
  const needs: WithoutHold[] = []
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
    needs.unshift(...[...boiled, ...unboiled].map((need) => ({ ...need, expected, atMs: Math.max(0, need.atMs) })))
  }
  return needs
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

type WithoutHold = Omit<Need, 'atMs' | 'unheldAtMs' | 'heldUntilMs'> & { readonly atMs: number }

function heldBack(holds: readonly (number | null)[]) {
  return (need: WithoutHold, n: number): WithoutHold => ({ ...need, atMs: Math.max(need.atMs, holds[n] ?? 0) })
}

/** When each can go in, one kettle-full after the other in the order of their times; in the order of the needs. */
function afterKettle(needs: readonly WithoutHold[], freeAtMs: number, cycleMs: number): readonly number[] {
  const times = needs.map(({ atMs }) => atMs)
  let freeMs = freeAtMs
  const inTurn = needs
    .map((need, n) => ({ need, n }))
    .sort((one, other) => one.need.atMs - other.need.atMs || one.n - other.n)
  for (const { need, n } of inTurn) {
    if (!need.boiled) continue
    const atMs = Math.max(need.atMs, freeMs)
    freeMs = atMs + cycleMs
    times[n] = atMs
  }
  return times
}
