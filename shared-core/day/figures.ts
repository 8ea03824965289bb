import type { VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { applyEntry } from './apply.ts'
import type { Entry } from './events.ts'
import { FiguresTally } from './figures-tally.ts'
import type { State } from './state.ts'
import { forkState } from './state-json.ts'

/** What a day comes to in five figures. What nobody can know is null, never nought. */
export interface DayFigures {
  /** Null when no sale of the day is known by variety: then there is no pace to go by. */
  readonly missed: Missed | null
  /** Null until the day is closed. */
  readonly left: Left | null
  readonly onTime: OnTime
  readonly baked: Baked
  readonly unexplained: Unexplained
}

/**
 * What would probably have been sold of varieties that were sold out while the shop was open.
 *
 *   pieces of one sell-out = max(0, sold before it / time for sale before it · length − sold during it)
 *
 * Assumed: customers ask for a variety all day at the pace of that morning, none takes another one instead, and all sales
 * were told. The first two make it too high in the quiet afternoon and too low in the rush, so it is a size, not a
 * bill. A time for sale under half an hour counts as half an hour; a sell-out under a minute is none (both common
 * practice, no source). Money is by the price of the set-up at the end of the day.
 */
export interface Missed {
  readonly pieces: number
  readonly cents: number
  /** The first sell-out of the day, and how long it lasted; null when there was none. */
  readonly first: SoldOut | null
  /** In the set-up's order; only what was sold out. */
  readonly byVariety: readonly MissedOf[]
}

export interface SoldOut {
  readonly varietyId: VarietyId
  readonly fromMs: EpochMs
  readonly forMs: number
}

export interface MissedOf {
  readonly varietyId: VarietyId
  readonly pieces: number
  readonly cents: number
  readonly times: number
  /** How long there was none while the shop was open, all times together. */
  readonly goneMs: number
}

/**
 * What was left when the shop closed. Given away and wasted count from half an hour before closing time (or before the
 * close, where that was earlier): what is dropped in the morning was not left.
 */
export interface Left {
  readonly dayOld: Fate
  readonly given: Fate
  readonly wasted: Fate
}
export interface Fate {
  readonly pieces: number
  /** At the price of a fresh piece. */
  readonly cents: number
  /** What making them cost, as the set-up has it. */
  readonly costCents: number
}

export interface OnTime {
  /** Of the varieties planned or baked that day, how many had something for sale at opening. Null before opening. */
  readonly atOpen: { readonly there: number; readonly of: number } | null
  /** Orders on time are not reckoned yet. */
  readonly orders: null
  /** When the oven was empty, less when the (slipped) changeover began; early is negative. Null without either. */
  readonly ovenEmptyByMs: number | null
}

export interface Baked {
  /** Pieces that came out of the oven. */
  readonly pieces: number
  readonly crewMinutes: number | null
  /** Dozens an hour of one person's work, to a tenth; null when nobody said how long the crew worked. */
  readonly dozensPerCrewHour: number | null
}

export interface Unexplained {
  /** Positive: fewer were found than known; negative: more. */
  readonly signed: number
  /** All gaps added up without their signs: two that cancel out are still two. */
  readonly absolute: number
  /** Dough dropped or spoiled before the oven. */
  readonly thrownDough: number
}

export interface FiguresContext {
  /** The instant of a minute after local midnight of the day's label; zone tables live outside. */
  readonly minuteToMs: (minuteOfDay: number) => EpochMs
  /** For a day that is still open. */
  readonly nowMs: EpochMs
}

/**
 * The five figures of a day, from its record: the state just before the entry that opened it, and all entries from that
 * one to its last close (or to now).
 * @returns the figures; those that need a close, crew minutes, a changeover or known sales are null without
 * @throws AssertionError when the entries do not follow the state, or the first one opens no day
 */
export function dayFigures(start: State, entries: Iterable<Entry>, context: FiguresContext): DayFigures {
  const state = forkState(start)
  const tally = new FiguresTally(context.minuteToMs)
  for (const entry of entries) {
    tally.before(state, entry)
    applyEntry(state, entry)
    tally.after(state, entry)
  }
  return tally.figures(state, context.nowMs)
}
