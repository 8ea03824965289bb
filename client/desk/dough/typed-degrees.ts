import type { Degrees } from '../../../shared-core/shop/formula.ts'

/** Hotter than any tap, colder than any freezer: a slip of the finger. In degrees of the unit. */
const RANGE = { C: { least: -40, most: 100 }, F: { least: -40, most: 212 } } as const

/** A temperature with at most one decimal, in the shop's unit. @returns null while it is none @example readDegrees('74.5', 'F') */
export function readDegrees(text: string, unit: Degrees['unit']): Degrees | null {
  const typed = text.trim().replace(',', '.').replace('−', '-')
  if (!/^-?\d{1,3}(\.\d)?$/.test(typed)) return null
  const degrees = Number(typed)
  if (degrees < RANGE[unit].least || degrees > RANGE[unit].most) return null
  return { thousandths: Math.round(degrees * 1_000), unit }
}
