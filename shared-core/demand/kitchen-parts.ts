import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { JournalDay } from './journal-day.ts'
import { wentOf } from './merge-days.ts'

/** Long enough for every weekday to come several times, short enough to follow a new sandwich. Common practice, no source. */
export const KITCHEN_DAYS = 28

/**
 * Of what went of each variety, the part that the kitchen used, 0 to 1. Only varieties of which it used any.
 * @param days the newest ones, as many as are to count
 */
export function kitchenParts(days: readonly JournalDay[]): ReadonlyMap<VarietyId, number> {
  const used = new Map<string, number>()
  const went = new Map<string, number>()
  for (const item of days.flatMap(({ items }) => items)) {
    const kitchen = item.kitchen.reduce((sum, { pieces }) => sum + pieces, 0)
    if (kitchen > 0) used.set(item.id, (used.get(item.id) ?? 0) + kitchen)
    went.set(item.id, (went.get(item.id) ?? 0) + Math.max(kitchen, wentOf(item)))
  }
  return new Map([...used].map(([id, pieces]) => [varietyId(id), pieces / (went.get(id) ?? pieces)]))
}
