/** The least and most that may be counted, and by how much. */
export interface StepRange {
  readonly step: number
  readonly min: number
  readonly max: number
}

/**
 * One step up, to the next multiple of the step: 13 by boards of 6 becomes 18, and is never more than the most.
 * @example stepUp(13, { step: 6, min: 0, max: 48 }) // 18
 */
export function stepUp(value: number, { step, min, max }: StepRange): number {
  return clamp((Math.floor(value / step) + 1) * step, min, max)
}

/** One step down, to the multiple of the step below: 13 by boards of 6 becomes 12, and is never less than the least. */
export function stepDown(value: number, { step, min, max }: StepRange): number {
  return clamp((Math.ceil(value / step) - 1) * step, min, max)
}

function clamp(value: number, min: number, max: number): number {
  return Math.min(max, Math.max(min, value))
}
