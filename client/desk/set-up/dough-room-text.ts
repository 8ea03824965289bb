import type { DoughRoom, MadeOf, Share } from '../../../shared-core/shop/formula.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { Texts } from './field-text.ts'
import type { Telling } from './say-value.ts'
import {
  allergensSaid,
  degreesSaid,
  dwellSaid,
  minuteSaid,
  moneySaid,
  percentSaid,
  spanSaid,
  weightOrNot,
  weightSaid,
} from './say-value.ts'

/** How the fields of what doughs are made of are told. */

const text = (value: string) => value
const count = (value: number) => String(value)
const countOrNot = (value: number | null, { say }: Telling) => (value === null ? say.form.notSaid : String(value))
const span = (value: number, telling: Telling) => spanSaid(value, telling)

export const DOUGH_ROOM_TEXTS: Pick<Texts, 'ingredient' | 'preparation' | 'formula' | 'doughRoom'> = {
  ingredient: {
    name: text,
    kind: (value, { say }) => say.dough.kind[value],
    contains: allergensSaid,
    price: (value, { say }) =>
      value === null ? say.form.notSaid : say.dough.price(moneySaid(value.cents), weightSaid(value.per)),
    bag: weightOrNot,
  },
  preparation: {
    name: text,
    kind: (value, { say }) => say.dough.preparation[value].name,
    lines: linesSaid,
    seedPercent: percentSaid,
    fedWith: weightOrNot,
    ready: dwellSaid,
  },
  formula: {
    name: text,
    lines: linesSaid,
    preparations: (value, { shop }) =>
      value
        .map(
          ({ preparationId, percent }) =>
            `${shop.preparations.get(preparationId)?.name ?? '?'} ${percentSaid(percent)}`,
        )
        .join(', ') || '–',
    lossPercent: percentSaid,
    bakeLossPercent: percentSaid,
    doughAt: degreesSaid,
    friction: degreesSaid,
    mixMs: span,
    mixInMs: (value, telling) => (value === null ? '–' : spanSaid(value, telling)),
    restMs: span,
    bulk: (value, telling) => (value === null ? telling.say.dough.noBulk : bulkSaid(value, telling)),
    strength: count,
    daysAhead: count,
    decideByMinute: minuteSaid,
  },
  doughRoom: {
    fromMinute: minuteSaid,
    coolerByMinute: minuteSaid,
    scaleStep: weightSaid,
    flourIn: (value, { say }) => say.dough.flourIn[value],
    surplusTo: (value, { shop, say }) =>
      (value === null ? undefined : shop.formulas.get(value)?.name) ?? say.form.notSaid,
    dividerPiecesPerHour: countOrNot,
    handPiecesPerHour: count,
    rollers: count,
    proofTrays: countOrNot,
    roomAt: degreesSaid,
    flourAt: degreesSaid,
    tapAt: degreesSaid,
    hotTapAt: degreesSaid,
    hasIce: (value: DoughRoom['hasIce'], { say }) => (value ? say.options.yes : say.options.no),
    provesAt: degreesSaid,
    coolsIn: span,
  },
}

/** @example "Seeds 6 g" */
export function madeOfSaid(madeOf: readonly MadeOf[], { shop }: Telling): string {
  return (
    madeOf
      .map(({ ingredientId, weight }) => `${ingredientName(shop, ingredientId)} ${weightSaid(weight)}`)
      .join(', ') || '–'
  )
}

/** @example "High-gluten flour 100 %, Water 57 %" */
function linesSaid(lines: readonly Share[], { shop }: Telling): string {
  return lines
    .map(({ ingredientId, percent }) => `${ingredientName(shop, ingredientId)} ${percentSaid(percent)}`)
    .join(', ')
}

function bulkSaid(
  { window, foldsMs, chill }: NonNullable<Parameters<Texts['formula']['bulk']>[0]>,
  telling: Telling,
): string {
  const { say } = telling
  return [
    dwellSaid(window, telling),
    ...(foldsMs.length === 0 ? [] : [`${say.dough.folds} ${foldsMs.map((ms) => spanSaid(ms, telling)).join(', ')}`]),
    ...(chill === null ? [] : [`${say.dough.bulkChill} ${dwellSaid(chill, telling)}`]),
  ].join('; ')
}

function ingredientName(shop: Shop, id: Share['ingredientId']): string {
  return shop.ingredients.get(id)?.name ?? '?'
}
