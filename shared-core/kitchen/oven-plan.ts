import type { OrderId } from '../ids.ts'
import type { Kitchen } from './model.ts'
import { firstStep, keyOf, restFrom } from './model.ts'
import { planSlots } from './plan-slots.ts'
import type { SimGiven, Simulated } from './simulate.ts'
import { OVEN } from './simulate.ts'
import type { SlotPart, SlotsPlan } from './slots.ts'

/** Looks that are made while somebody watches, every second, try fewer orders than a plan that is made once. */
const TRIES = 300

/** The oven's plan for the first oven part of each item that is not in yet; what one bakes a second time follows it. */
export function ovenPlan(kitchen: Kitchen, given: SimGiven, { startMs, endMs }: Simulated): SlotsPlan {
  const { nowMs } = kitchen
  const parts: SlotPart[] = []
  const otherMs = new Map<OrderId, number>()
  kitchen.items.forEach((one, at) => {
    const { readyMs = 0, steps = [] } = given.jobs[at] ?? {}
    const index = steps.findIndex(({ station }) => station === OVEN)
    const { order, item } = one
    const step = steps[index]
    if (step === undefined) {
      const itemMs = endMs[at] ?? nowMs
      if (Number.isFinite(itemMs)) otherMs.set(order.id, Math.max(otherMs.get(order.id) ?? nowMs, itemMs))
      return
    }
    const before = index === 0 ? readyMs : (startMs[at]?.[index - 1] ?? 0) + (steps[index - 1]?.takesMs ?? 0)
    const no = firstStep(one) + index
    parts.push({
      id: keyOf(one, no),
      orderId: order.id,
      readyMs: Math.max(before, step.fromMs),
      bakeMs: step.takesMs,
      slots: step.slots,
      afterMs: restFrom(item, no + 1),
      group: null,
    })
  })
  return planSlots(
    {
      nowMs,
      stopMs: kitchen.hours.closesAtMs,
      shelves: kitchen.shelves.map(({ shelf }, at) => ({ id: shelf.id, freeMs: given.shelves[at] ?? [] })),
      handlingMs: given.handlingMs,
      orders: kitchen.orders.map(({ id, dueAtMs }) => ({
        id,
        dueMs: dueAtMs,
        otherReadyMs: otherMs.get(id) ?? nowMs,
      })),
      parts: parts.filter(({ readyMs }) => Number.isFinite(readyMs)),
    },
    TRIES,
  )
}
