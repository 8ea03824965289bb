import type { Degrees } from './formula.ts'
import type { Temperature } from './shop.ts'

/**
 * A temperature in thousandths of a °C, rounded to the nearest.
 *
 *   °C = (°F − 32) · 5 / 9
 *
 * Source: NIST Special Publication 811 (2008), appendix B.9.
 * @example milliCelsius({ degrees: 495, unit: 'F' }) // 257_222
 */
export function milliCelsius({ degrees, unit }: Temperature): number {
  return unit === 'C' ? degrees * 1_000 : Math.round(((degrees - 32) * 5_000) / 9)
}

/** The same of one that was read with decimals. @example milliCelsiusOf({ thousandths: 76_000, unit: 'F' }) // 24_444 */
export function milliCelsiusOf({ thousandths, unit }: Degrees): number {
  return unit === 'C' ? thousandths : Math.round(((thousandths - 32_000) * 5) / 9)
}

/** A difference, as friction is. @example milliDifferenceOf({ thousandths: 24_000, unit: 'F' }) // 13_333 */
export function milliDifferenceOf({ thousandths, unit }: Degrees): number {
  return unit === 'C' ? thousandths : Math.round((thousandths * 5) / 9)
}

/** As people write it. @example degreesText({ thousandths: 76_500, unit: 'F' }) // '76.5 °F' */
export function degreesText({ thousandths, unit }: Degrees): string {
  return `${thousandths / 1_000} °${unit}`
}

/** In a shop's unit, to the nearest degree. @example degreesIn('F', 257_222) // 495 */
export function degreesIn(unit: Temperature['unit'], milli: number): number {
  return Math.round(unit === 'C' ? milli / 1_000 : (milli * 9) / 5_000 + 32)
}
