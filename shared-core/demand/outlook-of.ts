import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { Outlook, Range, VarietyOutlook } from '../live/outlook.ts'
import type { AfternoonOf } from '../plan/afternoon.ts'
import { afternoon } from '../plan/afternoon.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { DayDemand, RestDemand } from './demand.ts'
import type { Pieces } from './pieces.ts'
import { negativeBinomial, quantile } from './pieces.ts'
import { runOut } from './run-out.ts'
import type { Today, TodayItem } from './today.ts'

/** What an outlook is made of: today so far, and what the learner makes of it. */
export interface Foreseen {
  readonly shop: Shop
  readonly today: Today
  /** The shop's noon of today's date. */
  readonly noonMs: EpochMs
  readonly ahead: ReadonlyMap<string, DayDemand>
  readonly rest: ReadonlyMap<string, RestDemand>
  /** Of a variety's demand, what the kitchen uses: 0 to 1. */
  readonly kitchen: ReadonlyMap<VarietyId, number>
}

/** The rest of today in whole numbers and instants; varieties of which nothing is known are left out. */
export function outlookOf(foreseen: Foreseen): Outlook {
  const { today } = foreseen
  const at = instants(foreseen.noonMs)
  const known = inOrder(foreseen).flatMap((item) => knownOf(foreseen, item) ?? [])
  const { shop, kitchen } = foreseen
  const rests = new Map(known.map(({ item, rest }) => [item.id, rest]))
  const afternoons = afternoon(shop, today, rests, kitchen)
  const varieties = known.map((one) => varietyOutlook(foreseen, one, afternoons.get(varietyId(one.item.id))))
  const isBaking = !today.bakingIsOver
  return {
    date: today.date,
    atMs: at(today.nowMinute),
    closeAtMs: at(today.closeMinute),
    changeoverAtMs: today.changeoverMinute === null ? null : at(today.changeoverMinute),
    lastLoadInAtMs: isBaking && today.lastLoadInMinute !== null ? at(today.lastLoadInMinute) : null,
    varieties,
  }
}

interface Known {
  readonly item: TodayItem
  readonly basis: VarietyOutlook['basis']
  readonly rest: RestDemand
  readonly pieces: Pieces
}

function knownOf({ shop, ahead, rest: rests }: Foreseen, item: TodayItem): Known | null {
  if (!shop.varieties.has(varietyId(item.id))) return null
  const rest = rests.get(item.id)
  const basis = ahead.get(item.id)?.basis
  if (rest === undefined || basis === undefined || basis === 'nothing') return null
  return { item, basis, rest, pieces: negativeBinomial(rest.mean, rest.dispersion) }
}

function varietyOutlook(
  { today, noonMs }: Foreseen,
  { item, basis, rest, pieces }: Known,
  remains: AfternoonOf | undefined,
): VarietyOutlook {
  const { nowMinute, closeMinute } = today
  const at = instants(noonMs)
  const gone = runOut(rest, item.stock, item.more, nowMinute, closeMinute)
  const when = (minute: number | null) => (minute === null ? null : at(minute))
  const more = item.more[0]
  const isShort = more !== undefined && (gone.beforeMore ?? 0) >= 0.5
  // Without what comes: when the rod as it stands is empty.
  const alone = isShort ? runOut(rest, item.stock, [], nowMinute, closeMinute) : gone
  return {
    varietyId: varietyId(item.id),
    basis,
    rest: rangeOf(pieces),
    gone: { t10Ms: when(gone.t10), t50Ms: when(gone.t50), t90Ms: when(gone.t90) },
    moreAtMs: more === undefined ? null : at(more.minute),
    shortAtMs: isShort && alone.t50 !== null && alone.t50 < more.minute ? at(alone.t50) : null,
    beforeMorePercent: gone.beforeMore === null ? null : percent(gone.beforeMore),
    beforeClosePercent: percent(gone.beforeClose),
    leftAtClose: Math.round(gone.left),
    lost: Math.round(gone.lost),
    atChangeover:
      remains === undefined ? null : { left: remains.left, lastsPercent: percent(remains.lasts), more: remains.more },
  }
}

/** As they stand in the set-up. */
function inOrder({ shop, today }: Foreseen): readonly TodayItem[] {
  const place = (id: string) => shop.varieties.get(varietyId(id))?.order ?? Number.MAX_SAFE_INTEGER
  return [...today.items].sort((one, other) => place(one.id) - place(other.id) || (one.id < other.id ? -1 : 1))
}

function rangeOf(pieces: Pieces): Range {
  return { q10: quantile(pieces, 0.1), q50: quantile(pieces, 0.5), q90: quantile(pieces, 0.9) }
}

function percent(chance: number): number {
  return Math.round(100 * Math.min(1, Math.max(0, chance)))
}

/** Clocks change at night: the minutes of a day count from its noon. */
function instants(noonMs: EpochMs): (minute: number) => EpochMs {
  return (minute) => epochMs(Math.round(noonMs + (minute - 720) * 60_000))
}
