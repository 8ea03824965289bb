import type { Profile } from '../../shared-core/shop/shop.ts'

/** Weights and temperatures as the shop reads them; what the state holds are milligrams and thousandths of a °C. */
export type WeightUnit = Profile['weight']

/**
 * A weight with as many digits as somebody at a scale can use: grams with hundredths below 10 g and tenths below 100 g,
 * kilograms from 10 kg on; pounds with ounces to the tenth, below 8 oz to the hundredth: a piece is scaled at 4.25 oz.
 * @param milligrams integer; what is below 0 keeps its sign
 * @example shownWeight(22_679_619, 'lb-oz') // '50 lb'
 * @example shownWeight(580_598, 'g') // '581 g'
 */
export function shownWeight(milligrams: number, unit: WeightUnit): string {
  const sign = milligrams < 0 ? '−' : ''
  return sign + (unit === 'g' ? metric(Math.abs(milligrams)) : avoirdupois(Math.abs(milligrams)))
}

/** The same to the gram or tenth of an ounce at any size, for what is weighed out by it. */
export function weighedWeight(milligrams: number, unit: WeightUnit): string {
  return unit === 'g' && milligrams >= 10_000_000
    ? `${trimmed(milligrams / 1_000_000, 3)} kg`
    : shownWeight(milligrams, unit)
}

function metric(milligrams: number): string {
  if (milligrams >= 9_999_500) return `${trimmed(milligrams / 1_000_000, 2)} kg`
  if (milligrams >= 99_950) return `${trimmed(milligrams / 1_000, 0)} g`
  return `${trimmed(milligrams / 1_000, milligrams >= 9_995 ? 1 : 2)} g`
}

/** Milligrams in an ounce. Source: NIST Special Publication 811 (2008), appendix B.8. */
const OUNCE = 453_592.37 / 16
const OUNCES_A_POUND = 16

function avoirdupois(milligrams: number): string {
  const all = milligrams / OUNCE
  if (all < 8) return `${trimmed(all, 2)} oz`
  const tenths = Math.round(all * 10)
  const pounds = Math.floor(tenths / (OUNCES_A_POUND * 10))
  const ounces = (tenths - pounds * OUNCES_A_POUND * 10) / 10
  if (pounds === 0) return `${ounces} oz`
  return ounces === 0 ? `${pounds} lb` : `${pounds} lb ${ounces} oz`
}

function trimmed(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)))
}
