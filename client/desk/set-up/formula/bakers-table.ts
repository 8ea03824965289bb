import { totalPercent, WHOLE } from '../../../../shared-core/dough/percents.ts'
import { doughMilligramsOf, doughOf, shapedOf, sheetLines } from '../../../../shared-core/dough/scale.ts'
import type { Formula, FormulaLine } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { Dough, Shop, Weight } from '../../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../../shared-core/shop/weight.ts'

/** A row of a baker's table: a line of the formula, or a preparation that it takes. */
export interface BakersRow {
  readonly key: string
  readonly name: string
  /** Thousandths of a percent of all flour; null for a preparation, whose parts are in the lines. */
  readonly percent: number | null
  readonly at: FormulaLine['at']
  /** Of the whole formula, in milligrams, with fractions; null for a preparation. */
  readonly inAll: number | null
  /** What goes into the bowl, rounded to the scale's step; 0 where preparations hold all of it. */
  readonly inBowl: number
}

export interface BakersTable {
  readonly rows: readonly BakersRow[]
  readonly totalPercent: number
  readonly inBowl: number
  /** How many pieces each dough makes of it, by weight and after the loss. */
  readonly makes: readonly { readonly dough: Dough; readonly pieces: number; readonly weight: Weight }[]
}

/** A formula for so much flour. @param flour all of it, the pre-ferments' included, in milligrams */
export function bakersTable(shop: Shop, formula: Formula, flour: number): BakersTable {
  const sheet = sheetLines(shop, formula, flour)
  const inBowl = (key: string) => sheet.find((line) => line.key === key)?.milligrams ?? 0
  const lines = formula.lines.map((line): BakersRow => {
    const key = keyOf(formula, line)
    const name = shop.ingredients.get(line.ingredientId)?.name ?? '?'
    return { key, name, percent: line.percent, at: line.at, inAll: (flour * line.percent) / WHOLE, inBowl: inBowl(key) }
  })
  const made = sheet
    .filter(({ preparationId }) => preparationId !== null)
    .map(({ key, preparationId, at, milligrams }): BakersRow => {
      const name = (preparationId === null ? undefined : shop.preparations.get(preparationId)?.name) ?? '?'
      return { key, name, percent: null, at, inAll: null, inBowl: milligrams }
    })
  return {
    rows: [...lines, ...made],
    totalPercent: totalPercent(formula.lines),
    inBowl: doughMilligramsOf(sheet),
    makes: makesOf(shop, formula, shapedOf(formula, doughOf(formula, flour))),
  }
}

/** As `sheetLines` calls its lines. */
function keyOf({ lines }: Formula, { ingredientId, at }: FormulaLine): string {
  const isAgain = at === 'mixIn' && lines.some((one) => one.ingredientId === ingredientId && one.at === 'start')
  return isAgain ? `${ingredientId}+` : ingredientId
}

function makesOf(shop: Shop, { id }: Formula, shaped: number): BakersTable['makes'] {
  return inUse(shop.doughs).flatMap((dough) =>
    dough.formulaId === id && dough.pieceWeight !== null
      ? [{ dough, pieces: Math.floor(shaped / milligrams(dough.pieceWeight)), weight: dough.pieceWeight }]
      : [],
  )
}

/** What a table is shown for to begin with: the most that the mixer takes, else a bag's worth. */
export function trialFlour({ mixer, profile }: Shop): Weight {
  if (mixer !== null) return mixer.mostFlour
  return profile.weight === 'g' ? { thousandths: 25_000, unit: 'kg' } : { thousandths: 50_000, unit: 'lb' }
}
