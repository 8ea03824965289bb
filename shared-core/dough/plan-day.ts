import type { DoughId } from '../ids.ts'
import { hoursOn } from '../shop/hours.ts'
import { inOrder } from '../shop/in-order.ts'
import type { Dough, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { DayPlan, DoughNeed, NeedCode, NeedReason } from './day-plan.ts'
import type { Demand } from './need-demand.ts'
import type { BoilingDay, Supply, Taken } from './need-supply.ts'
import { fitting, takeFor } from './need-supply.ts'
import type { Flow, Looked } from './plan-days.ts'
import { planFormulas } from './plan-formulas.ts'
import { pieceMilligrams } from './scale.ts'

export interface Asked {
  readonly day: BoilingDay
  readonly demand: ReadonlyMap<DoughId, Demand>
  /** What the first day still takes of each dough; null: as wanted. */
  readonly open: ReadonlyMap<DoughId, number> | null
  /** All that is there is presumed to be for this day. */
  readonly takesAll: boolean
}

interface OneDough {
  readonly need: DoughNeed
  readonly taken: readonly Taken[]
}

const NOBODY: Demand = { counter: 0, orders: 0 }

/** Plans one day and takes out of `supplies` what it uses. */
export function planOf(
  looked: Looked,
  supplies: readonly Supply[],
  asked: Asked,
): { readonly plan: DayPlan; readonly taken: readonly Omit<Flow, 'bakeDate'>[] } {
  const { shop } = looked
  const { date } = asked.day
  const all = inOrder(shop.doughs).map((dough) => needOf(shop, supplies, asked, dough))
  const { doughs, formulas, mixes } = planFormulas(
    looked,
    date,
    all.map(({ need }) => need),
  )
  const decide = formulas.map(({ decideAtMs }): number => decideAtMs)
  const plan: DayPlan = {
    date,
    isClosed: hoursOn(shop, date) === null,
    doughs: doughs.filter(({ why, spare }) => why.length > 0 || spare > 0),
    formulas,
    mixes,
    decideAtMs: soonest(decide),
  }
  const taken = all
    .flatMap((one) => one.taken)
    .map(({ supply, pieces }) => ({
      doughId: supply.doughId,
      pieces,
      mixDate: supply.mixDate,
    }))
  return { plan, taken }
}

function soonest(instants: readonly number[]): EpochMs | null {
  return instants.length === 0 ? null : epochMs(Math.min(...instants))
}

/**
 *   pieces = ⌈(counter + orders ± today − chilled − begun − earlier) / tray⌉ · tray
 */
function needOf(
  shop: Shop,
  supplies: readonly Supply[],
  { day, demand, open, takesAll }: Asked,
  dough: Dough,
): OneDough {
  const { counter, orders } = demand.get(dough.id) ?? NOBODY
  const wanted = counter + orders
  const still = open === null ? wanted : (open.get(dough.id) ?? 0)
  const there = fitting(supplies, dough.id, day).reduce((sum, { left }) => sum + left, 0)
  const taken = takeFor(supplies, dough.id, day, takesAll ? there : still)
  const from = (code: NeedCode) => taken.reduce((sum, one) => (one.code === code ? sum + one.pieces : sum), 0)
  const used = taken.reduce((sum, { pieces }) => sum + pieces, 0)
  const missing = Math.max(0, still - used)
  const pieces = Math.ceil(missing / dough.trayPieces) * dough.trayPieces
  const pieceWeight = pieceMilligrams(shop, dough.id)
  const known = dough.formulaId === null ? undefined : shop.formulas.get(dough.formulaId)
  const formula = known?.retired === true ? undefined : known
  const why: NeedReason[] = [
    { code: 'counter', pieces: counter },
    { code: 'orders', pieces: orders },
    still < wanted ? { code: 'boiled', pieces: still - wanted } : { code: 'loads', pieces: still - wanted },
    { code: 'chilled', pieces: -from('chilled') },
    { code: 'begun', pieces: -from('begun') },
    { code: 'earlier', pieces: -from('earlier') },
    { code: 'trays', pieces: pieces - missing },
  ]
  const need: DoughNeed = {
    doughId: dough.id,
    formulaId: formula?.id ?? null,
    pieces,
    pieceMilligrams: pieceWeight,
    over: pieces - missing,
    short: formula === undefined || pieceWeight === 0 ? pieces : 0,
    spare: there - used,
    why: takesAll ? [] : why.filter((one) => one.pieces !== 0),
  }
  return { need, taken }
}
