import { formulaId } from '../ids.ts'
import { spanMs } from '../units.ts'
import type { Degrees, DoughRoom, Formula, FormulaLine, IngredientKind } from './formula.ts'
import { inUse } from './in-order.ts'
import type { Profile, Shop } from './shop.ts'

/**
 * A dough room of one person with a scale, to begin with. Common practice, no source, and there to be changed; but for
 * the cooling: bare pieces in moving air follow their cooler with a time constant of some 20 to 40 min (worked from the
 * heat of bread crumb in Rask, J. Food Eng. 9, 1989), covered trays on a rack slower.
 */
export function defaultDoughRoom({ temperature, weight }: Pick<Profile, 'temperature' | 'weight'>): DoughRoom {
  const at = (celsius: number, fahrenheit: number): Degrees =>
    temperature === 'C' ? { thousandths: celsius * 1_000, unit: 'C' } : { thousandths: fahrenheit * 1_000, unit: 'F' }
  return {
    fromMinute: 8 * 60,
    coolerByMinute: 18 * 60,
    scaleStep: weight === 'g' ? { thousandths: 1_000, unit: 'g' } : { thousandths: 100, unit: 'oz' },
    flourIn: 'none',
    surplusTo: null,
    dividerPiecesPerHour: null,
    handPiecesPerHour: 300,
    rollers: 1,
    proofTrays: null,
    roomAt: at(22, 72),
    flourAt: at(21, 70),
    tapAt: at(15, 60),
    hotTapAt: at(49, 120),
    hasIce: false,
    provesAt: at(24, 76),
    coolsIn: spanMs(60, 'min'),
  }
}

/**
 * Percentages of a bagel to begin with, in thousandths.
 *
 * Source: within the ranges of baystatemilling.com "Everything bagel" (water 50 to 55, salt 1 to 2, malt 0 to 2) and
 * ratios.fyi (instant yeast 0.5 for a dough that is chilled overnight).
 */
const USUAL: readonly (readonly [IngredientKind, number])[] = [
  ['flour', 100_000],
  ['water', 55_000],
  ['salt', 2_000],
  ['malt', 1_500],
  ['yeast', 500],
]

/**
 * A formula to begin with: of the first ingredient of each kind that the shop has. Dough of 24 °C or 76 °F, a friction
 * factor of 24 °F (13 °C), 12 min of mixing, 7 min of rest, decided by noon the day before: common practice, no source.
 */
export function newFormula({ ingredients, profile }: Pick<Shop, 'ingredients' | 'profile'>): Formula {
  const used = inUse(ingredients)
  const lines = USUAL.flatMap(([kind, percent]): FormulaLine[] => {
    const first = used.find((ingredient) => ingredient.kind === kind)
    return first === undefined ? [] : [{ ingredientId: first.id, percent, at: 'start' }]
  })
  const isMetric = profile.temperature === 'C'
  return {
    id: formulaId('new'),
    name: '',
    order: 0,
    lines,
    preparations: [],
    lossPercent: 1_000,
    bakeLossPercent: 10_000,
    doughAt: isMetric ? { thousandths: 24_000, unit: 'C' } : { thousandths: 76_000, unit: 'F' },
    friction: isMetric ? { thousandths: 13_000, unit: 'C' } : { thousandths: 24_000, unit: 'F' },
    mixMs: spanMs(12, 'min'),
    mixInMs: null,
    restMs: spanMs(7, 'min'),
    bulk: null,
    strength: 0,
    daysAhead: 1,
    decideByMinute: 12 * 60,
    retired: false,
  }
}
