import type { Weight } from './shop.ts'

/**
 * Milligrams in a thousandth of each unit.
 *
 * Source: NIST Special Publication 811 (2008), appendix B.8: avoirdupois pound 453.592 37 g, a sixteenth of it an ounce.
 */
const MILLIGRAMS_PER_THOUSANDTH = { g: 1, kg: 1_000, oz: 453.59237 / 16, lb: 453.59237 } as const

/** A weight in whole milligrams, rounded to the nearest. @example milligrams({ thousandths: 1_000, unit: 'lb' }) // 453_592 */
export function milligrams({ thousandths, unit }: Weight): number {
  return Math.round(thousandths * MILLIGRAMS_PER_THOUSANDTH[unit])
}

/** As people write it. @example weightText({ thousandths: 25_500, unit: 'lb' }) // '25.5 lb' */
export function weightText({ thousandths, unit }: Weight): string {
  return `${thousandths / 1_000} ${unit}`
}
