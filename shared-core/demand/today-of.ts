import { bakingIsOver } from '../day/changeover.ts'
import { rulerOf } from '../day/ruler.ts'
import type { State } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import type { LookAhead } from '../line/look-ahead.ts'
import { lookAhead } from '../line/look-ahead.ts'
import type { Shop } from '../shop/shop.ts'
import { NO_STOCK } from '../stock/apply-stock.ts'
import { estimateOf } from '../stock/estimate.ts'
import type { Leaks } from '../stock/leak.ts'
import { leaksOf } from '../stock/leak.ts'
import type { Coming } from '../stock/on-the-way.ts'
import { onTheWayAhead } from '../stock/on-the-way.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { purchasesIn, unseenIn } from './journal-item.ts'
import type { JournalTally } from './journal-tally.ts'
import { hoursOf, meantIn } from './journal-tally.ts'
import type { Today, TodayItem } from './today.ts'

/**
 * The open day as far as it has come.
 * @param tally of all entries of the day that the state has
 * @returns null without a set-up, and when the tally's day is not the one that is open
 */
export function todayOf(state: State, tally: JournalTally, nowMs: EpochMs): Today | null {
  const { shop, day } = state
  if (shop === null || day === null || tally.date !== day.label || tally.closedAtMs !== null) return null
  const ahead = lookAhead(state, nowMs)
  if (ahead === null) return null
  const date = day.label
  const ruler = rulerOf(state, nowMs, (minute) => epochMs(tally.noonMs + (minute - 720) * 60_000), date)
  const minuteOf = (atMs: EpochMs | null | undefined) => (atMs == null ? null : tally.minuteAt(atMs))
  const at: At = { state, shop, tally, nowMs, leaks: leaksOf(state), coming: onTheWayAhead(ahead) }
  return {
    date,
    ...hoursOf(shop, date),
    nowMinute: tally.minuteAt(nowMs),
    changeoverMinute: minuteOf(ruler?.changeover?.fromMs),
    lastLoadInMinute: minuteOf(ruler?.lastLoadInByMs),
    bakingIsOver: bakingIsOver(state, nowMs, ruler),
    chilled: notPlanned(ahead),
    items: offered(at, date).map((id) => itemOf(at, id)),
  }
}

/** Dough that is there less what planned loads still need brought to the kettle. */
function notPlanned({ state, allotments }: LookAhead): ReadonlyMap<DoughId, number> | null {
  if (state.batches.size === 0) return null
  const pieces = new Map<DoughId, number>()
  for (const batch of state.batches.values())
    if (batch.stage === 'proof' || batch.stage === 'chill' || batch.stage === 'rack')
      pieces.set(batch.doughId, (pieces.get(batch.doughId) ?? 0) + batch.pieces)
  for (const { short } of allotments)
    for (const one of short) pieces.set(one.doughId, Math.max(0, (pieces.get(one.doughId) ?? 0) - one.pieces))
  return pieces
}

interface At {
  readonly state: State
  readonly shop: Shop
  readonly tally: JournalTally
  readonly nowMs: EpochMs
  readonly leaks: Leaks | null
  readonly coming: ReadonlyMap<VarietyId, readonly Coming[]>
}

/** What is neither there nor was nor will be is not asked about today. In order of id. */
function offered({ state, shop, tally, coming }: At, date: string): readonly VarietyId[] {
  const meant = new Set(meantIn(state, date))
  return [...shop.varieties.keys()].filter((id) => tally.wasThere(id) || coming.has(id) || meant.has(id)).sort()
}

function itemOf({ state, shop, tally, nowMs, leaks, coming }: At, id: VarietyId): TodayItem {
  const { doughId } = must(shop.varieties, id)
  const stock = state.stock.get(id) ?? { varietyId: id, doughId, ...NO_STOCK }
  const lots = stock.lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)
  const { mean, doubt } = estimateOf(leaks, { stock, lots, nowMs, salesFrom: shop.counter.salesFrom })
  const moves = tally.movesOf(id)
  const { closeMinute } = hoursOf(shop, tally.date)
  return {
    id,
    sold: purchasesIn(moves, 'sold', 'noted', 'allotted', 'kitchen').flatMap(({ minute, pieces }) => [minute, pieces]),
    unseen: unseenIn(moves, piecesOf(lots) - mean),
    gone: tally.goneBy(id, shop, nowMs).flatMap(({ fromMinute, toMinute }) => [fromMinute, toMinute]),
    stock: { mean, doubt },
    more: (coming.get(id) ?? [])
      .map(({ readyAtMs, pieces }) => ({ minute: tally.minuteAt(readyAtMs), pieces }))
      .filter(({ minute }) => minute < closeMinute),
    kept: stock.kept,
  }
}
