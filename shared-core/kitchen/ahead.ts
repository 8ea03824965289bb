import type { State } from '../day/state.ts'
import type { OrderId } from '../ids.ts'
import type { Order } from '../orders/order.ts'
import type { EpochMs } from '../units.ts'
import { beginTogether } from './finish-together.ts'
import type { Kitchen } from './model.ts'
import { firstStep, keyOf, kitchenOf, simGivenOf, takingAsSetUp } from './model.ts'
import { ovenPlan } from './oven-plan.ts'
import type { SimGiven, Simulated } from './simulate.ts'
import { OVEN, simulate } from './simulate.ts'
import type { SlotsPlan } from './slots.ts'

/** The kitchen's next hours, as set up: when each part begins, and when each order is complete. */
export interface Ahead {
  readonly kitchen: Kitchen
  /** By `partKey`: parts that are not begun; left out: those that never can. */
  readonly begins: ReadonlyMap<string, { readonly beginMs: number; readonly shelfId: string | null }>
  /** By order with something to make; Infinity: never, as things stand. */
  readonly completeMs: ReadonlyMap<OrderId, number>
}

/** What somebody fetches is complete so long before. Common practice, no source. */
const FINISH_EARLY_MS = 3 * 60_000

/**
 * Lets the kitchen run as set up, gives the oven its plan (`plan-slots.ts`), lets it run again with that, and begins what
 * is quickly made so that its order comes together (`finish-together.ts`).
 * @returns null without a set-up
 */
export function lookAheadOf(state: State, nowMs: EpochMs): Ahead | null {
  const kitchen = kitchenOf(state, nowMs)
  if (kitchen === null) return null
  const given = simGivenOf(kitchen, takingAsSetUp(nowMs))
  const plan = ovenPlan(kitchen, given, simulate(given))
  const simulated = simulate(withPlan(kitchen, given, plan))
  const completeMs = completeOf(kitchen, simulated)
  const chains = kitchen.items.map((one, at) => ({
    targetMs: targetOf(one.order, completeMs.get(one.order.id) ?? 0),
    parts: (given.jobs[at]?.steps ?? []).map(({ station, takesMs }, index) => ({
      key: keyOf(one, firstStep(one) + index),
      station: station === OVEN ? null : station,
      soonestMs: simulated.startMs[at]?.[index] ?? Number.POSITIVE_INFINITY,
      takesMs,
    })),
  }))
  const hands = given.hands.map((some) => some.length)
  const begins = beginTogether(chains, hands, { starts: plan.starts, handlingMs: given.handlingMs })
  const shelves = new Map(plan.starts.map(({ partId, shelfId }) => [partId, shelfId]))
  return {
    kitchen,
    begins: new Map([...begins].map(([key, beginMs]) => [key, { beginMs, shelfId: shelves.get(key) ?? null }])),
    completeMs,
  }
}

/** Each thing goes into the oven when the plan says so; the plan has given it its places. */
function withPlan(kitchen: Kitchen, given: SimGiven, { starts, tooLate }: SlotsPlan): SimGiven {
  const planned = new Map(starts.map(({ partId, atMs }) => [partId, atMs]))
  const never = new Set(tooLate)
  const jobs = given.jobs.map((job, at) => ({
    ...job,
    steps: job.steps.map((step, index) => {
      const one = kitchen.items[at]
      if (step.station !== OVEN || one === undefined) return step
      const key = keyOf(one, firstStep(one) + index)
      const fromMs = never.has(key) ? Number.POSITIVE_INFINITY : (planned.get(key) ?? step.fromMs)
      return { ...step, slots: 1, fromMs }
    }),
  }))
  return { ...given, jobs, shelves: [Array<number>(jobs.length).fill(kitchen.nowMs)], handlingMs: 0 }
}

function completeOf(kitchen: Kitchen, { endMs }: Simulated): ReadonlyMap<OrderId, number> {
  const complete = new Map<OrderId, number>()
  kitchen.items.forEach(({ order }, at) => {
    complete.set(order.id, Math.max(complete.get(order.id) ?? 0, endMs[at] ?? Number.POSITIVE_INFINITY))
  })
  return complete
}

function targetOf({ way, dueAtMs }: Order, completeMs: number): number {
  return way === 'here' ? completeMs : Math.max(completeMs, dueAtMs - FINISH_EARLY_MS)
}
