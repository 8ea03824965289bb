import { ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type {
  DoughRoom,
  FormulaLine,
  Ingredient,
  IngredientKind,
  Preparation,
} from '../../../shared-core/shop/formula.ts'
import type { Shop, Weight } from '../../../shared-core/shop/shop.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { dwell, table } from '../support/shop.ts'

/** What doughs of these tests are made of, invented; percentages are written as bakers write them. */
export function ingredient(id: string, kind: IngredientKind, bag: Weight | null = null): Ingredient {
  return { id: ingredientId(id), name: id, order: 1, kind, contains: [], price: null, bag, retired: false }
}

export const POUNDS_50: Weight = { thousandths: 50_000, unit: 'lb' }

export const INGREDIENTS: Shop['ingredients'] = table([
  ingredient('flour', 'flour', POUNDS_50),
  ingredient('rye', 'flour', POUNDS_50),
  ingredient('water', 'water'),
  ingredient('salt', 'salt'),
  ingredient('malt', 'malt'),
  ingredient('yeast', 'yeast'),
  ingredient('raisins', 'mixIn'),
  ingredient('seeds', 'other'),
])

/** @example percents({ flour: 100, water: 57 }) // two lines at the start */
export function percents(
  shares: { readonly [ingredient: string]: number },
  at: FormulaLine['at'] = 'start',
): FormulaLine[] {
  return Object.entries(shares).map(([id, percent]) => ({
    ingredientId: ingredientId(id),
    percent: Math.round(percent * 1_000),
    at,
  }))
}

/** The formula of the reference values: 100/57/2/1.5/0.6, total 161.1 %. */
export const PLAIN_LINES = percents({ flour: 100, water: 57, salt: 2, malt: 1.5, yeast: 0.6 })

/** A poolish-like pre-ferment that is ripe after 12 h (10 to 16), unless said otherwise. */
export function preparation(parts: Partial<Omit<Preparation, 'id'>> & { readonly id: string }): Preparation {
  return {
    name: parts.id,
    order: 1,
    kind: 'preferment',
    lines: percents({ flour: 100, water: 60 }),
    seedPercent: 0,
    fedWith: null,
    ready: dwell(10, 12, 16, 'h'),
    retired: false,
    ...parts,
    id: preparationId(parts.id),
  }
}

/** Work from 5:00, in the cooler by 18:00, a scale that shows 5 g; flour as it comes. */
export function doughRoom(parts: Partial<DoughRoom> = {}): DoughRoom {
  return {
    fromMinute: 300,
    coolerByMinute: 1_080,
    scaleStep: { thousandths: 5_000, unit: 'g' },
    flourIn: 'none',
    surplusTo: null,
    dividerPiecesPerHour: null,
    handPiecesPerHour: 300,
    rollers: 1,
    proofTrays: null,
    roomAt: { thousandths: 22_000, unit: 'C' },
    flourAt: { thousandths: 20_000, unit: 'C' },
    tapAt: { thousandths: 15_000, unit: 'C' },
    hotTapAt: { thousandths: 50_000, unit: 'C' },
    hasIce: true,
    provesAt: { thousandths: 24_000, unit: 'C' },
    coolsIn: spanMs(60, 'min'),
    ...parts,
  }
}
