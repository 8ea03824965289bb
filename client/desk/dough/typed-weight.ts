import type { Weight } from '../../../shared-core/shop/shop.ts'

/** What the state takes of one weight: a million of any unit is a slip of the finger. */
const THOUSANDTHS_MAX = 1_000_000_000

export interface BareUnit {
  /** A number alone is in bags where it is bought so, else in this unit. */
  readonly bag: Weight | null
  readonly unit: Weight['unit']
}

/**
 * Reads a weight as people type it: a number in the unit that stands beside the field, or with a unit of its own.
 * @returns null while it cannot be read, 'none' for an empty field
 * @example typedWeight('2 lb 4 oz', { bag: null, unit: 'lb' }) // { thousandths: 36_000, unit: 'oz' }
 */
export function typedWeight(text: string, { bag, unit }: BareUnit): Weight | 'none' | null {
  const typed = text
    .trim()
    .toLowerCase()
    .replace(/,(?=\d)/g, '.')
  if (typed === '') return 'none'
  const both = POUNDS_OUNCES.exec(typed)
  if (both !== null)
    return within({ thousandths: Math.round((Number(both[1]) * 16 + Number(both[2])) * 1_000), unit: 'oz' })
  const [, numberText, unitText = ''] = ONE_UNIT.exec(typed) ?? []
  if (numberText === undefined) return null
  const number = Number(numberText)
  const own = UNITS.find((one) => one === unitText)
  if (own !== undefined) return within({ thousandths: Math.round(number * 1_000), unit: own })
  if (bag !== null) return within({ thousandths: Math.round(number * bag.thousandths), unit: bag.unit })
  return within({ thousandths: Math.round(number * 1_000), unit })
}

const POUNDS_OUNCES = /^(\d+)\s*lbs?\s*(\d+(?:\.\d+)?)\s*oz$/
const ONE_UNIT = /^(\d+(?:\.\d+)?|\.\d+)\s*(g|kg|oz|lb)?s?$/
const UNITS = ['g', 'kg', 'oz', 'lb'] as const

function within(weight: Weight): Weight | null {
  return weight.thousandths <= THOUSANDTHS_MAX ? weight : null
}
