import type { DoughId, VarietyId } from '../ids.ts'

/** Keys of `State.touches`. Counted up and never reset: what touched since a care is a difference of two counts. */
export function kettleKey(doughId: DoughId): string {
  return `kettle ${doughId}`
}

export function boardKey(varietyId: VarietyId): string {
  return `board ${varietyId}`
}
