import type { State } from '../day/state.ts'
import type { OrderId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { Kitchen, KitchenItem, Taking } from './model.ts'
import { kitchenOf, restFrom, simGivenOf, takingAsSetUp } from './model.ts'
import { partKey } from './parts.ts'
import { planSlots } from './plan-slots.ts'
import type { Simulated } from './simulate.ts'
import { OVEN, simulate } from './simulate.ts'
import type { SlotPart, SlotsPlan } from './slots.ts'

/** The kitchen's next hours, as set up: when each part begins and ends, and when each order is complete. */
export interface Ahead {
  readonly kitchen: Kitchen
  /** By `partKey`: parts that are not begun. */
  readonly begins: ReadonlyMap<string, { readonly beginMs: number; readonly shelfId: string | null }>
  /** By order with something to make; Infinity: never, as things stand. */
  readonly completeMs: ReadonlyMap<OrderId, number>
}

/** Looks that are made while somebody watches try fewer orders than a plan that is made once. */
const TRIES = 600

/** @returns null without a set-up */
export function lookAheadOf(state: State, nowMs: EpochMs): Ahead | null {
  const kitchen = kitchenOf(state, nowMs)
  if (kitchen === null) return null
  const taking = takingAsSetUp(nowMs)
  const first = simulate(simGivenOf(kitchen, taking))
  const plan = ovenPlan(kitchen, taking, first)
  const given = simGivenOf(kitchen, taking)
  const planned = new Map(plan.starts.map((start) => [start.partId, start]))
  const late = new Set(plan.tooLate)
  const jobs = kitchen.items.map((one, at) => ({
    readyMs: given.jobs[at]?.readyMs ?? nowMs,
    steps: (given.jobs[at]?.steps ?? []).map((step, index) => {
      const key = keyOf(one, firstStep(one) + index)
      if (step.station !== OVEN) return step
      if (late.has(key)) return { ...step, fromMs: Number.POSITIVE_INFINITY }
      return { ...step, slots: 1, fromMs: planned.get(key)?.atMs ?? step.fromMs }
    }),
  }))
  // The plan has given each its places: as many as there are things.
  const shelves = [Array<number>(jobs.length).fill(nowMs)]
  const second = simulate({ ...given, shelves, handlingMs: 0, jobs })
  return { kitchen, begins: beginsOf(kitchen, second, planned), completeMs: completeOf(kitchen, second) }
}

function beginsOf(kitchen: Kitchen, simulated: Simulated, planned: ReadonlyMap<string, { shelfId: string }>) {
  return new Map(
    kitchen.items.flatMap((one, at) =>
      [...(simulated.startMs[at] ?? [])].map((beginMs, index) => {
        const key = keyOf(one, firstStep(one) + index)
        return [key, { beginMs, shelfId: planned.get(key)?.shelfId ?? null }] as const
      }),
    ),
  )
}

function completeOf(kitchen: Kitchen, { endMs }: Simulated): ReadonlyMap<OrderId, number> {
  const complete = new Map<OrderId, number>()
  kitchen.items.forEach(({ order }, at) => {
    complete.set(order.id, Math.max(complete.get(order.id) ?? 0, endMs[at] ?? Number.POSITIVE_INFINITY))
  })
  return complete
}

/** The first oven part of each item that is not in yet; what an item bakes a second time follows from it. */
function ovenPlan(kitchen: Kitchen, taking: Taking, { startMs, endMs }: Simulated): SlotsPlan {
  const given = simGivenOf(kitchen, taking)
  const parts: SlotPart[] = []
  const otherMs = new Map<OrderId, number>()
  kitchen.items.forEach((one, at) => {
    const steps = given.jobs[at]?.steps ?? []
    const index = steps.findIndex(({ station }) => station === OVEN)
    const { order, item } = one
    if (index === -1) {
      otherMs.set(order.id, Math.max(otherMs.get(order.id) ?? kitchen.nowMs, finite(endMs[at], kitchen.nowMs)))
      return
    }
    const step = firstStep(one) + index
    const before =
      index === 0 ? (given.jobs[at]?.readyMs ?? 0) : (startMs[at]?.[index - 1] ?? 0) + (steps[index - 1]?.takesMs ?? 0)
    parts.push({
      id: keyOf(one, step),
      orderId: order.id,
      readyMs: Math.max(before, steps[index]?.fromMs ?? 0),
      bakeMs: steps[index]?.takesMs ?? 0,
      slots: steps[index]?.slots ?? 1,
      afterMs: restFrom(item, step + 1),
      group: null,
    })
  })
  return planSlots(
    {
      nowMs: kitchen.nowMs,
      stopMs: kitchen.hours.closesAtMs,
      shelves: kitchen.shelves.map(({ shelf }, at) => ({ id: shelf.id, freeMs: given.shelves[at] ?? [] })),
      handlingMs: given.handlingMs,
      orders: kitchen.orders.map(({ id, dueAtMs }) => ({
        id,
        dueMs: dueAtMs,
        otherReadyMs: otherMs.get(id) ?? kitchen.nowMs,
      })),
      parts: parts.filter(({ readyMs }) => Number.isFinite(readyMs)),
    },
    TRIES,
  )
}

export function firstStep({ step, isBegun }: KitchenItem): number {
  return isBegun ? step + 1 : step
}

export function keyOf({ order, item }: KitchenItem, step: number): string {
  return partKey(order.id, item.no, step)
}

function finite(value: number | undefined, otherwise: number): number {
  return value !== undefined && Number.isFinite(value) ? value : otherwise
}
