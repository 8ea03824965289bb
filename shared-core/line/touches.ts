import type { DoughId, VarietyId } from '../ids.ts'

/** Keys of `State.touches`. Counted up and never reset: what touched since a care is a difference of two counts. */
export function kettleKey(doughId: DoughId): string {
  return `${KETTLE}${doughId}`
}

/**
 * Pieces of a load, from the moment that it goes in. They have touched the boards that they lie on, the seed trays, where
 * they have a topping, and the peel: what has touched each since is told apart by its own care.
 */
export function boardKey(varietyId: VarietyId): string {
  return `board ${varietyId}`
}

/** Pieces that were turned off their boards onto the oven's floor. */
export function stoneKey(varietyId: VarietyId): string {
  return `stone ${varietyId}`
}

const KETTLE = 'kettle '

/** Pieces of all doughs that went through the kettle's water. */
export function boiledIn(touches: Iterable<readonly [key: string, pieces: number]>): number {
  let boiled = 0
  for (const [key, pieces] of touches) if (key.startsWith(KETTLE)) boiled += pieces
  return boiled
}
