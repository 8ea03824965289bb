import type { PlannedId, ShelfId } from '../ids.ts'
import type { ExpectedLoad } from '../line/fill.ts'
import { longestBakeMs } from '../line/longest-bake.ts'
import { expectedLoads } from '../line/planned.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { Hours, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { changeoverMark } from './marks.ts'
import type { Line, State } from './state.ts'

/** The day as a ruler: instants to draw, none of them rounded. */
export interface Ruler {
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
  readonly nowMs: EpochMs
  readonly ovenReadyMs: EpochMs
  readonly openMs: EpochMs
  readonly closeMs: EpochMs
  /**
   * The oven must be empty from the first instant; the second menu bakes from the second. Today's slip is in both.
   * Null: no second menu.
   */
  readonly changeover: { readonly fromMs: EpochMs; readonly toMs: EpochMs } | null
  readonly secondMenu: string | null
  /** The last instant at which a load may go in and be out by the changeover; null without one. */
  readonly lastLoadInByMs: EpochMs | null
  /** Planned loads that are still to come. */
  readonly loadsToGo: number
  /** Soonest first. */
  readonly marks: readonly LoadMark[]
}

/** A planned load on the ruler. */
export interface LoadMark {
  readonly plannedId: PlannedId
  readonly shelfId: ShelfId
  readonly atMs: EpochMs
  /** The time was not planned but follows from when shelves come free. */
  readonly estimated: boolean
  readonly lines: readonly Line[]
  /** It would not be out by the changeover. */
  readonly tooLate: boolean
}

/**
 * The ruler of the day that `minuteToMs` stands in.
 *
 *   last load in by = changeover − longest bake target of the loads still planned, else of all varieties
 *
 * Cooling is not counted: it needs no oven. A changeover that was slipped for the day is where it was slipped to.
 * @param minuteToMs the instant of a minute after local midnight (1,440 and more: the day after); zone tables live outside
 * @param date the shop's date that `minuteToMs` stands in, for its weekday's hours; left out: the date of the open day,
 *             and without one the usual hours
 * @returns null without a set-up, and on a weekday on which the shop is closed
 * @example changeover 11:00, longest bake 16 min // last load in by 10:44
 */
export function rulerOf(
  state: State,
  nowMs: EpochMs,
  minuteToMs: (minuteOfDay: number) => EpochMs,
  date: string | null = state.day?.label ?? null,
): Ruler | null {
  const { shop } = state
  if (shop === null) return null
  const hours = date === null ? shop.hours : hoursOn(shop, date)
  if (hours === null) return null
  const expected = expectedLoads(state, nowMs)
  const changeover = changeoverOf(hours, minuteToMs, slipOf(state, date))
  const planned = expected.flatMap((one) => one.planned.lines.map((line) => line.varietyId))
  const lastLoadInByMs = changeover === null ? null : epochMs(changeover.fromMs - longestBakeMs(shop, planned))
  const marks = expected.map((one) => markOf(one, { shop, nowMs, changeover })).sort(byTime)
  const openMs = minuteToMs(hours.openMinute)
  const closeMs = minuteToMs(closesAtMinute(hours))
  const ovenReadyMs = minuteToMs(hours.ovenReadyMinute)
  return {
    fromMs: earlier(ovenReadyMs, openMs),
    toMs: closeMs,
    nowMs,
    ovenReadyMs,
    openMs,
    closeMs,
    changeover,
    secondMenu: hours.secondMenu,
    lastLoadInByMs,
    loadsToGo: marks.length,
    marks,
  }
}

interface Day {
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly changeover: Ruler['changeover']
}

function markOf({ planned, shelf, inAtMs }: ExpectedLoad, { shop, nowMs, changeover }: Day): LoadMark {
  const { id, inAtMs: plannedMs, lines } = planned
  const atMs = plannedMs ?? epochMs(Math.max(inAtMs, nowMs))
  const varietyIds = lines.map((line) => line.varietyId)
  const tooLate = changeover !== null && atMs + longestBakeMs(shop, varietyIds) > changeover.fromMs
  return { plannedId: id, shelfId: shelf.id, atMs, estimated: plannedMs === null, lines, tooLate }
}

function byTime(one: LoadMark, other: LoadMark): number {
  return one.atMs - other.atMs || (one.plannedId < other.plannedId ? -1 : 1)
}

/**
 * The date that a ruler should show: today, or the day that is open when that is a later one already (who shapes
 * tomorrow's dough after close works for tomorrow). A day that nobody closed is over all the same.
 * @param localDate the shop's date now, YYYY-MM-DD
 */
export function rulerDate({ day }: Pick<State, 'day'>, localDate: string): string {
  return day !== null && day.label > localDate ? day.label : localDate
}

/**
 * By how much the changeover was slipped, in ms, earlier negative; what was said of a day before does not count.
 * @param date which day's; left out: the open day's
 */
export function slipOf({ day, marks }: Pick<State, 'day' | 'marks'>, date: string | null = day?.label ?? null): number {
  const mark = marks.get(changeoverMark())
  const isOver = day !== null && date !== null && day.label < date
  return mark?.kind === 'changeover' && !isOver ? mark.slipMs : 0
}

function changeoverOf(hours: Hours, minuteToMs: (minuteOfDay: number) => EpochMs, slipMs: number): Ruler['changeover'] {
  const { changeoverFromMinute, changeoverToMinute } = hours
  if (changeoverFromMinute === null) return null
  const toMinute = Math.max(changeoverFromMinute, changeoverToMinute ?? changeoverFromMinute)
  return {
    fromMs: epochMs(minuteToMs(changeoverFromMinute) + slipMs),
    toMs: epochMs(minuteToMs(toMinute) + slipMs),
  }
}

function earlier(one: EpochMs, other: EpochMs): EpochMs {
  return one < other ? one : other
}
