import type { Mix, SheetLine } from '../../../shared-core/dough/mix.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

/** What stands on the printed sheet of one mix. */
export interface Sheet {
  readonly mix: Mix
  /** Its place among the mixes of its day, from 1. */
  readonly place: number
  readonly all: number
  readonly start: readonly SheetRow[]
  readonly mixIns: readonly SheetRow[]
  readonly doughMilligrams: number
}

export interface SheetRow {
  readonly key: string
  /** Null: not in the set-up any more. */
  readonly name: string | null
  /** Of all flour, in tenths of a percent. */
  readonly tenths: number
  readonly milligrams: number
  readonly isWeighed: boolean
}

/** The sheets of a day of boiling, in the order of mixing; what has ended needs none. */
export function sheetsOf(mixes: Iterable<Mix>, date: string, shop: Shop): readonly Sheet[] {
  const ofDay = [...mixes]
    .filter((mix) => mix.bakeDate === date && mix.stage !== 'ended')
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
  return ofDay.map((mix, index) => {
    const flour = flourOf(mix, shop)
    const row = (line: SheetLine): SheetRow => ({
      key: line.key,
      name: nameOf(line, shop),
      tenths: flour === 0 ? 0 : Math.round((line.milligrams * 1_000) / flour),
      milligrams: line.milligrams,
      isWeighed: line.weighedAtMs !== null,
    })
    return {
      mix,
      place: index + 1,
      all: ofDay.length,
      start: mix.lines.filter(({ at }) => at === 'start').map(row),
      mixIns: mix.lines.filter(({ at }) => at === 'mixIn').map(row),
      doughMilligrams: mix.lines.reduce((sum, { milligrams }) => sum + milligrams, 0),
    }
  })
}

export function nameOf(line: Pick<SheetLine, 'ingredientId' | 'preparationId'>, shop: Shop): string | null {
  if (line.ingredientId !== null) return shop.ingredients.get(line.ingredientId)?.name ?? null
  return line.preparationId === null ? null : (shop.preparations.get(line.preparationId)?.name ?? null)
}

/**
 * All flour of the formula, pre-ferments' included, as the percentages mean it: the dough's weight by what the formula
 * sums to, since what the preparations hold stands in no line of its own.
 */
function flourOf({ lines, formula }: Mix, shop: Shop): number {
  const dough = lines.reduce((sum, { milligrams }) => sum + milligrams, 0)
  const percents = formula.lines.reduce((sum, { percent }) => sum + percent, 0)
  const flours = formula.lines.filter(({ ingredientId }) => shop.ingredients.get(ingredientId)?.kind === 'flour')
  const ofFlour = flours.reduce((sum, { percent }) => sum + percent, 0)
  return percents === 0 ? 0 : Math.round((dough * ofFlour) / percents)
}
