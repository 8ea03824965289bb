import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { estimateOf } from './estimate.ts'
import type { Leaks } from './leak.ts'
import { leaksOf } from './leak.ts'
import type { Rod } from './left.ts'
import { rods } from './left.ts'
import { openHoursOf } from './open-hours.ts'
import { unitLoss } from './unit-loss.ts'

/** When to count next, and which rods. */
export interface SweepFor {
  /** Null: everything is known well enough, or the shop is shut. Past: it is time. */
  readonly dueAtMs: EpochMs | null
  /** The rod whose count is worth most stands first. Empty when `dueAtMs` is null. */
  readonly varietyIds: readonly VarietyId[]
}

/** A count is worth a touch when it can save at least so many pieces missed or left. Common practice, no source. */
const WORTH_PIECES = 0.4
/** Who has come to count one rod counts a few more, where they are in doubt at all. */
const FEWEST = 4
const DOUBT_PIECES = 2
/** Half-dozens are right to within three pieces, evenly spread: a variance of three. A rod surer than that stays as it is. */
const SWEEP_VARIANCE = 3
/** Further ahead nobody decides by what is on a rod now. */
const LOOK_AHEAD_MS = 3 * 3_600_000
/** Where no pace is known, a rod below a half-dozen changes what is baked and promised. */
const LOW_PIECES = 6

/**
 * The rods whose count would change what people do, and when to count them.
 *
 * What is decided by a rod is whether it lasts: until more of it comes, or until close where nothing comes. If it does
 * not, more is baked or customers are told. Let `need` be what will be asked for until then. As long as the rod surely
 * holds more, or surely less, a count changes nothing; near the line, and in doubt, the decision is wrong now and then,
 * each time by as many pieces as are missed or left over. How many a count saves on average is
 *
 *   worth = d · L(|likely − need| / d),   L the unit normal loss, d the doubt that a sweep in half-dozens takes away
 *
 * (the expected value of information for a decision between two lines of cost). A rod comes first where that is most;
 * none is named where it is less than `WORTH_PIECES` for every rod. Not by doubt alone: a full rod may be far from known
 * and it does not matter. Not by a low count alone: a rod that is known need not be counted again.
 *
 * A sweep is due `sweepEveryMs` after the one before, the first so long after opening, the last before close.
 * @param most rods at a time
 */
export function sweepFor(state: State, nowMs: EpochMs, most = 6): SweepFor {
  const leaks = leaksOf(state)
  const { shop } = state
  if (shop === null || leaks === null || nowMs < leaks.hours.openMs || nowMs >= leaks.hours.closeMs) return NONE
  const ranked = rods(state, nowMs)
    .map((rod) => ({ rod, ...worthOf(rod, { state, shop, leaks, nowMs }) }))
    .sort((one, other) => other.worth - one.worth || other.doubt - one.doubt)
  const worthy = ranked.filter(({ worth }) => worth >= WORTH_PIECES)
  if (worthy.length === 0) return NONE
  const named = ranked.filter(
    ({ worth, doubt }, place) => worth >= WORTH_PIECES || (place < FEWEST && doubt >= DOUBT_PIECES),
  )
  return { dueAtMs: nextSweepMs(state), varietyIds: named.slice(0, most).map(({ rod }) => rod.varietyId) }
}

/** When the next sweep would be due, whether or not there will be anything worth counting. @returns null without a day */
export function nextSweepMs(state: State): EpochMs | null {
  const hours = openHoursOf(state)
  if (state.shop === null || hours === null) return null
  return epochMs((lastSweptMs(state) ?? hours.openMs) + state.shop.counter.sweepEveryMs)
}

const NONE: SweepFor = { dueAtMs: null, varietyIds: [] }

interface At {
  readonly state: State
  readonly shop: Shop
  readonly leaks: Leaks
  readonly nowMs: EpochMs
}

function worthOf(rod: Rod, { state, shop, leaks, nowMs }: At): { worth: number; doubt: number } {
  const stock = state.stock.get(rod.varietyId)
  if (stock === undefined) return { worth: 0, doubt: 0 }
  const lots = stock.lots.filter((lot) => lot.readyAtMs <= nowMs)
  const { mean, doubt } = estimateOf(leaks, { stock, lots, nowMs, salesFrom: shop.counter.salesFrom })
  const taken = Math.sqrt(Math.max(0, doubt * doubt - SWEEP_VARIANCE))
  if (taken === 0) return { worth: 0, doubt }
  const { closeMs } = leaks.hours
  const untilMs = Math.min(rod.onTheWay[0]?.readyAtMs ?? closeMs, closeMs, nowMs + LOOK_AHEAD_MS)
  const need = rod.perHour === null ? LOW_PIECES : (rod.perHour * Math.max(0, untilMs - nowMs)) / 3_600_000
  return { worth: taken * unitLoss(Math.abs(mean - need) / taken), doubt }
}

/** A sweep is a count of several rods at once, or one in half-dozens; the count of a single rod does not put it off. */
function lastSweptMs({ stock }: State): EpochMs | null {
  const at = new Map<EpochMs, number>()
  for (const { counted } of stock.values())
    if (counted !== null) at.set(counted.atMs, (at.get(counted.atMs) ?? 0) + (counted.within > 0 ? 2 : 1))
  const swept = [...at].filter(([, rodsThen]) => rodsThen > 1).map(([atMs]) => atMs)
  return swept.reduce<EpochMs | null>((last, atMs) => (last === null || atMs > last ? atMs : last), null)
}
