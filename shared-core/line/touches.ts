import type { DoughId, VarietyId } from '../ids.ts'

/** Keys of `State.touches`. Counted up and never reset: what touched since a care is a difference of two counts. */
export function kettleKey(doughId: DoughId): string {
  return `${KETTLE}${doughId}`
}

export function boardKey(varietyId: VarietyId): string {
  return `board ${varietyId}`
}

const KETTLE = 'kettle '

/** Pieces of all doughs that went through the kettle's water. */
export function boiledIn(touches: Iterable<readonly [key: string, pieces: number]>): number {
  let boiled = 0
  for (const [key, pieces] of touches) if (key.startsWith(KETTLE)) boiled += pieces
  return boiled
}
