import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { BakingCostJson, CostJson, OverrideJson, OverridesJson, TrustJson } from '../live/trust.ts'
import { isoWeekday } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import { mase } from './accuracy.ts'
import type { Judged, WalkedDay } from './backtest.ts'
import type { Baked, PieceWorth } from './baking-cost.ts'
import { bakedAs, bakingCost } from './baking-cost.ts'
import type { DayDemand } from './demand.ts'
import type { JournalDay } from './journal-day.ts'
import type { Simple } from './same-weekdays.ts'
import { accuracyBy, accuracyOf, mean, rowOf, summedByDay, weekdayKey } from './trust-figures.ts'

/** What is needed to say how far the forecasts are to be trusted. */
export interface TrustAsked {
  readonly shop: Shop
  /** The days that are judged, in order, and those before them. */
  readonly walked: readonly WalkedDay[]
  readonly before: readonly WalkedDay[]
  readonly daysKnown: number
  /** Of the day after the last one, to say how sure the forecasts are by now. */
  readonly ahead: ReadonlyMap<string, DayDemand>
  /** The journal's account of a date; null: it has none. */
  readonly journalDay: (date: string) => JournalDay | null
  /** How many pieces of each variety the board would have advised to bake, by date; of the `costDays` at least. */
  readonly advised: ReadonlyMap<string, ReadonlyMap<VarietyId, number>>
  /** Null: the shop has no such variety any more. */
  readonly worthOf: (variety: VarietyId) => PieceWorth | null
}

/** Cost is told of a month, as owners reckon; four weeks have each weekday as often. */
const COST_DAYS = 28
/** Days on which the board knows what was baked, from which on only these are told. */
const KEPT_DAYS_MIN = 7
const OVERRIDES_MAX = 40

/** The days of which the cost is told. */
export function costDays(walked: readonly WalkedDay[]): readonly WalkedDay[] {
  return walked.slice(-COST_DAYS)
}

/**
 * The shop's forecasts held against what came, in steps of some ten milliseconds for twelve weeks of 28 varieties, so that
 * others have a turn between them.
 */
export function* trustOf(asked: TrustAsked): Generator<undefined, TrustJson> {
  const { walked, shop, daysKnown } = asked
  const judged = walked.flatMap((day) => day.judged)
  const rests = walked.flatMap((day) => day.rests)
  const doughOf = ({ itemId }: Judged) => shop.varieties.get(varietyId(itemId))?.doughId ?? ''
  const each = accuracyOf(judged.map(rowOf))
  yield
  const varieties = accuracyBy(judged, ({ itemId }) => itemId)
  yield
  const scaled = varieties.map((one) => ({ ...one, mase: maseOf(one.id, asked) }))
  yield
  const byShop = accuracyOf(summedByDay(judged))
  const doughs = accuracyBy(judged, doughOf, summedByDay).filter(({ id }) => id !== '')
  yield
  const weekdays = accuracyBy(judged, weekdayKey)
  yield
  const byMinute = accuracyBy(rests, ({ minute }) => String(minute))
  return {
    from: walked[0]?.day.date ?? null,
    to: walked[walked.length - 1]?.day.date ?? null,
    days: walked.length,
    daysKnown,
    basis: basisOf(asked.ahead),
    each: { ...each, mase: mean(scaled.flatMap(({ mase }) => mase ?? [])) },
    shop: byShop,
    varieties: scaled,
    doughs,
    weekdays,
    rests: byMinute.sort((one, other) => Number(one.id) - Number(other.id)),
    cost: costOf(asked),
    overrides: overridesOf(asked),
  }
}

/** A week has as many days as the shop opens on. */
function maseOf(id: string, { walked, before }: TrustAsked): number | null {
  const rows = walked.flatMap(({ judged }) => judged.filter(({ itemId }) => itemId === id))
  const series = before.flatMap(({ day, asked }) => {
    const pieces = asked.get(id)
    return pieces === undefined || day.items.get(id)?.offered === false ? [] : [Math.round(pieces)]
  })
  const season = new Set(walked.map(({ day }) => isoWeekday(day.date))).size
  return mase(
    rows.map(({ asked }) => asked),
    rows.map(({ said }) => said.q50),
    series,
    season,
  )
}

function basisOf(ahead: ReadonlyMap<string, DayDemand>): TrustJson['basis'] {
  const counts = { guess: 0, few: 0, many: 0 }
  for (const { basis } of ahead.values()) counts[basis === 'nothing' ? 'guess' : basis] += 1
  return counts
}

interface CostRow {
  readonly one: Judged
  readonly simple: Simple
  readonly worth: PieceWorth
  readonly journal: JournalDay | null
  readonly advised: number
}

/** Only what all ways have a number for, and, once there is a week of them, only days of which it is known what was baked. */
function costOf(asked: TrustAsked): BakingCostJson {
  const { dayOldSells } = asked.shop.demand
  const rows = costRows(asked)
  const as = (piecesOf: (row: CostRow) => number): CostJson => {
    const baked = rows.map((row) => {
      const { date, asked } = row.one
      return { date, worth: row.worth, ...bakedAs(Math.round(piecesOf(row)), asked) }
    })
    return bakingCost(baked, dayOldSells)
  }
  const isKnown = rows.length > 0 && rows.every(({ journal }) => journal !== null)
  return {
    days: new Set(rows.map(({ one }) => one.date)).size,
    baked: isKnown ? bakingCost(rows.map(bakedThen), dayOldSells) : null,
    advised: as(({ advised }) => advised),
    lastWeek: as(({ simple }) => simple.lastWeek),
    lastFour: as(({ simple }) => simple.lastFour),
  }
}

function costRows({ walked, journalDay, advised, worthOf }: TrustAsked): CostRow[] {
  const days = costDays(walked).map(({ day, judged }) => ({ judged, journal: bakedDay(journalDay(day.date)) }))
  const kept = days.filter(({ journal }) => journal !== null)
  return (kept.length >= KEPT_DAYS_MIN ? kept : days).flatMap(({ judged, journal }) => {
    return judged.flatMap((one): CostRow[] => {
      const id = varietyId(one.itemId)
      const worth = worthOf(id)
      const pieces = advised.get(one.date)?.get(id)
      if (worth === null || pieces === undefined || one.simple === null) return []
      return [{ one, simple: one.simple, worth, journal, advised: pieces }]
    })
  })
}

function bakedDay(journal: JournalDay | null): JournalDay | null {
  return journal?.items.some(({ baked }) => baked > 0) === true ? journal : null
}

/** What was left or given away at the close, and what was asked for beyond what was sold. */
function bakedThen({ one, worth, journal }: CostRow): Baked {
  const item = journal?.items.find(({ id }) => id === one.itemId)
  const left = item === undefined ? 0 : item.left + item.given
  return { date: one.date, worth, left, lost: Math.max(0, one.asked - one.sold) }
}

/** What was advised, what was typed instead, and what was asked for. */
function overridesOf({ walked, journalDay, shop }: TrustAsked): OverridesJson {
  const lines = walked.flatMap((day): OverrideJson[] => {
    const wanted = journalDay(day.day.date)?.wanted ?? []
    return wanted.flatMap(({ doughId, varietyId: id, pieces, advised }) => {
      if (advised === null || advised === pieces) return []
      const some = day.judged.filter(({ itemId }) =>
        id === null ? shop.varieties.get(varietyId(itemId))?.doughId === doughId : itemId === id,
      )
      if (some.length === 0) return []
      const asked = some.reduce((sum, one) => sum + one.asked, 0)
      const isEstimated = some.some((one) => one.isEstimated)
      return [{ date: day.day.date, doughId, varietyId: id, advised, typed: pieces, asked, isEstimated }]
    })
  })
  const gain = ({ advised, typed, asked }: OverrideJson) => Math.abs(advised - asked) - Math.abs(typed - asked)
  return {
    changed: lines.length,
    nearer: lines.filter((line) => gain(line) > 0).length,
    farther: lines.filter((line) => gain(line) < 0).length,
    lines: lines.reverse().slice(0, OVERRIDES_MAX),
  }
}
