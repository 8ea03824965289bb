import type { DoughId, ShelfId, StepId } from '../ids.ts'

/** Keys of `State.marks`: one mark for each thing that can be said of a day. */
export function stepMark(stepId: StepId, doughId: DoughId | null): string {
  return doughId === null ? `step ${stepId}` : `step ${stepId} ${doughId}`
}

export function floatMark(doughId: DoughId): string {
  return `float ${doughId}`
}

export function boardsMark(): string {
  return 'boards'
}

export function changeoverMark(): string {
  return 'changeover'
}

export function shelfMark(shelfId: ShelfId): string {
  return `shelf ${shelfId}`
}

export function ovenMark(shelfId: ShelfId | null): string {
  return shelfId === null ? 'oven' : `oven ${shelfId}`
}
