import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { DoughId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { NoonOf } from './dates.ts'
import { boilingOn } from './dates.ts'
import type { DayPlan } from './day-plan.ts'
import { boardOrders, demandOn, firstDate, openingDemand } from './need-demand.ts'
import type { BoilingDay, Supply } from './need-supply.ts'
import { mixSupplies, suppliesNow } from './need-supply.ts'
import { planOf } from './plan-day.ts'

/** What planning looks at. */
export interface Looked {
  readonly state: State
  readonly shop: Shop
  readonly noonOf: NoonOf
}

/** Pieces that stand in the cooler from the night of one date on, until they are boiled on another. */
export interface Flow {
  readonly doughId: DoughId
  readonly pieces: number
  /** Null: from now on. */
  readonly mixDate: string | null
  readonly bakeDate: string
}

/** Plans of days that follow each other, and what stands in the cooler between them. */
export interface DaysAhead {
  readonly plans: readonly DayPlan[]
  readonly flows: readonly Flow[]
  /** What no day takes. */
  readonly left: readonly Supply[]
}

/**
 * Plans each date up to the last one. Days take from what is there in their order, each by whose window closes first; what
 * a day's mixes give over its need (as they stand, else as the plan has them) is there for the next ones.
 * @returns plans from the first date on which anything is boiled; at least that of the last one
 */
export function planDays(looked: Looked, lastDate: string): DaysAhead {
  const { state, shop, noonOf } = looked
  const supplies = suppliesNow(looked)
  const first = firstDate(state, lastDate)
  const plans: DayPlan[] = []
  const flows: Flow[] = []
  for (let date = first < lastDate ? first : lastDate; date <= lastDate; date = dateAfter(date, 1)) {
    const day: BoilingDay = { date, ...boilingOn(shop, date, noonOf) }
    const open = date === first ? openingDemand(looked, date, state.recordedAtMs > day.toMs) : undefined
    // Nothing is known of the first day: what is there is presumed to be boiled on it, unless it is the day that is asked.
    const takesAll = open === null && date !== lastDate
    const { plan, taken } = planOf(looked, supplies, {
      day,
      demand: demandOn(state, date, boardOrders(looked, date)),
      open: open ?? null,
      takesAll,
    })
    plans.push(plan)
    flows.push(...taken.map((one) => ({ ...one, bakeDate: date })))
    for (const made of producedFor(looked, plan)) {
      flows.push({ doughId: made.doughId, pieces: made.used, mixDate: made.supply.mixDate, bakeDate: date })
      if (made.supply.left > 0) supplies.push(made.supply)
    }
  }
  return { plans, flows: flows.filter(({ pieces }) => pieces > 0), left: supplies.filter(({ left }) => left > 0) }
}

interface Produced {
  readonly doughId: DoughId
  /** Boiled on the day that it is for. */
  readonly used: number
  /** What is left over of it. */
  readonly supply: Supply
}

/** What will be shaped for a day: as its planned mixes have it, else as the plan does. */
function producedFor({ state, shop, noonOf }: Looked, { date, doughs, mixes }: DayPlan): Produced[] {
  const planned = [...state.mixes.values()].filter(({ stage, bakeDate }) => stage === 'planned' && bakeDate === date)
  const asked = mixes.flatMap(({ formulaId, gives }, n) => {
    const formula = shop.formulas.get(formulaId)
    return formula === undefined ? [] : [{ id: `${date}/${n}`, formula, bakeDate: date, gives }]
  })
  const open = new Map(doughs.map(({ doughId, pieces, over }) => [doughId, pieces - over]))
  return (planned.length > 0 ? planned : asked).flatMap((mix) =>
    mixSupplies(shop, mix, mix.gives, noonOf).map((supply) => {
      const used = Math.min(supply.left, open.get(supply.doughId) ?? 0)
      open.set(supply.doughId, (open.get(supply.doughId) ?? 0) - used)
      supply.left -= used
      return { doughId: supply.doughId, used, supply }
    }),
  )
}
