import { shelfId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import type { ItemStep } from '../orders/order.ts'
import { epochMs } from '../units.ts'
import type { Ahead } from './ahead.ts'
import type { KitchenItem } from './model.ts'
import { keyOf } from './model.ts'
import type { KitchenTask } from './queue.ts'

/** What never can be begun, as things stand, stands at the end of its station: an instant must be finite. */
const NEVER_MS = 365 * 86_400_000

/** All parts that are not made: begun ones by when they are made, then by when to begin. */
export function tasksOf(ahead: Ahead): readonly KitchenTask[] {
  return ahead.kitchen.items
    .flatMap((one) =>
      one.item.steps.flatMap((step, index) => (index < one.step ? [] : taskOf(ahead, one, { step, index }))),
    )
    .sort(
      (one, other) =>
        Number(other.stage === 'begun') - Number(one.stage === 'begun') ||
        (one.stage === 'begun' ? one.endAtMs - other.endAtMs : one.beginAtMs - other.beginAtMs) ||
        one.dueAtMs - other.dueAtMs ||
        (one.key < other.key ? -1 : 1),
    )
}

interface PartOf {
  readonly step: ItemStep
  readonly index: number
}

function taskOf({ kitchen, begins }: Ahead, one: KitchenItem, { step, index }: PartOf): KitchenTask {
  const { nowMs } = kitchen
  const { order, item } = one
  const key = keyOf(one, index)
  const stage = index > one.step ? 'waiting' : step.begunAtMs !== null ? 'begun' : 'next'
  const ahead = begins.get(key)
  const beginAtMs = step.begunAtMs ?? epochMs(ahead?.beginMs ?? nowMs + NEVER_MS)
  const { itemId, varietyId, toasted, without, more, allergies, no } = item
  const isDue = stage === 'begun' || beginAtMs <= nowMs
  const status: DueStatus = nowMs > order.dueAtMs ? 'late' : isDue ? 'due' : 'coming'
  const planned = ahead?.shelfId == null ? null : shelfId(ahead.shelfId)
  return {
    key,
    part: { orderId: order.id, no, step: index },
    mark: order.mark,
    way: order.way,
    itemId,
    varietyId,
    toasted,
    without,
    more,
    allergies,
    stationId: step.stationId,
    oven: step.oven,
    stage,
    beginAtMs,
    endAtMs: epochMs(beginAtMs + step.takesMs),
    shelfId: stage === 'begun' ? step.shelfId : planned,
    dueAtMs: order.dueAtMs,
    status,
    isLast: index === item.steps.length - 1,
    hasDetails: order.details > 0,
  }
}
