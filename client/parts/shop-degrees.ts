import type { Profile } from '../../shared-core/shop/shop.ts'

export type DegreesUnit = Profile['temperature']

/** A temperature in the shop's unit: whole °F, tenths of a °C. @example shownDegrees(24_444, 'F') // '76 °F' */
export function shownDegrees(milliCelsius: number, unit: DegreesUnit): string {
  const degrees = milliCelsius / 1_000
  return said(unit === 'C' ? degrees : degrees * 1.8 + 32, unit)
}

/** A difference between two temperatures, as friction is. @example shownDifference(13_333, 'F') // '24 °F' */
export function shownDifference(milliCelsius: number, unit: DegreesUnit): string {
  const degrees = milliCelsius / 1_000
  return said(unit === 'C' ? degrees : degrees * 1.8, unit)
}

function said(degrees: number, unit: DegreesUnit): string {
  const text = String(Number(degrees.toFixed(unit === 'C' ? 1 : 0)))
  return `${text.replace(/^-(?=.*[1-9])/, '−').replace(/^-/, '')} °${unit}`
}
