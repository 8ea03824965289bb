import { supportsDistance } from '../parts/legibility.ts'

export interface DistanceForm {
  readonly diagonalInch: number
  readonly widthPx: number
  readonly heightPx: number
  readonly metres: number
}

/** Whether a wall of this size can be read from there; null when a number makes no sense. */
export function distanceAnswer(form: DistanceForm): { readonly supported: boolean; readonly farthestM: number } | null {
  const { diagonalInch, widthPx, heightPx, metres } = form
  if (![diagonalInch, widthPx, heightPx, metres].every((value) => Number.isFinite(value) && value > 0)) return null
  return supportsDistance({ diagonalInch, widthPx, heightPx, distanceM: metres })
}

/** Sizes in which screens are sold, for the table. */
export const USUAL_DIAGONALS = [24, 32, 43, 55, 65, 75] as const

/** How far each of them can be read, as a screen of 16 by 9. */
export function usualDistances(): readonly { readonly diagonalInch: number; readonly farthestM: number }[] {
  return USUAL_DIAGONALS.map((diagonalInch) => {
    const { farthestM } = supportsDistance({ diagonalInch, widthPx: 1920, heightPx: 1080, distanceM: 1 })
    return { diagonalInch, farthestM }
  })
}
