import { shelfId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import { epochMs } from '../units.ts'
import type { Ahead } from './ahead.ts'
import { keyOf } from './ahead.ts'
import type { KitchenItem } from './model.ts'
import type { KitchenTask } from './queue.ts'

/** Ever is told as a year ahead: an instant must be finite. */
const NEVER_MS = 365 * 86_400_000

/** All parts that are not made: begun ones by when they are made, then by when to begin. */
export function tasksOf(ahead: Ahead): readonly KitchenTask[] {
  return ahead.kitchen.items
    .flatMap((one) => one.item.steps.slice(one.step).map((_, at) => taskOf(ahead, one, one.step + at)))
    .sort(
      (one, other) =>
        Number(other.stage === 'begun') - Number(one.stage === 'begun') ||
        (one.stage === 'begun' ? one.endAtMs - other.endAtMs : one.beginAtMs - other.beginAtMs) ||
        one.dueAtMs - other.dueAtMs ||
        (one.key < other.key ? -1 : 1),
    )
}

function taskOf({ kitchen, begins }: Ahead, one: KitchenItem, index: number): KitchenTask {
  const { order, item } = one
  const step = item.steps[index]
  const key = keyOf(one, index)
  const stage = index > one.step ? 'waiting' : one.isBegun ? 'begun' : 'next'
  const ahead = begins.get(key)
  const soonMs = Math.min(ahead?.beginMs ?? kitchen.nowMs, kitchen.nowMs + NEVER_MS)
  const beginAtMs = stage === 'begun' ? (step?.begunAtMs ?? kitchen.nowMs) : epochMs(soonMs)
  const { itemId, varietyId, toasted, without, more, allergies, no } = item
  const status: DueStatus =
    kitchen.nowMs > order.dueAtMs ? 'late' : stage === 'begun' || beginAtMs <= kitchen.nowMs ? 'due' : 'coming'
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
    stationId: step?.stationId ?? ('' as KitchenTask['stationId']),
    oven: step?.oven ?? null,
    stage,
    beginAtMs,
    endAtMs: epochMs(beginAtMs + (step?.takesMs ?? 0)),
    shelfId: stage === 'begun' ? (step?.shelfId ?? null) : ahead?.shelfId == null ? null : shelfId(ahead.shelfId),
    dueAtMs: order.dueAtMs,
    status,
    isLast: index === item.steps.length - 1,
    hasDetails: order.details > 0,
  }
}
