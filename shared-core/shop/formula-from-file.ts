import { formulaId, ingredientId, preparationId } from '../ids.ts'
import { dwell } from './default-windows.ts'
import type { Degrees, DoughRoom, Formula, Ingredient, MadeOf, Preparation } from './formula.ts'
import type { DwellObject } from './human-time.ts'
import { clockMinute, spanFromObject } from './human-time.ts'
import type { FullSetUpFile } from './set-up-schema.ts'
import type { DwellWindow, Weight } from './shop.ts'

/** What doughs are made of and the dough room, out of a file that zod has accepted. Decimals go to the thousandth. */

export function weightFrom({ amount, unit }: { readonly amount: number; readonly unit: Weight['unit'] }): Weight {
  return { thousandths: thousandths(amount), unit }
}

/** @example weightOrNull(null) // null: nobody has said */
export function weightOrNull(file: Parameters<typeof weightFrom>[0] | null): Weight | null {
  return file === null ? null : weightFrom(file)
}

function degreesFrom({ degrees, unit }: { readonly degrees: number; readonly unit: Degrees['unit'] }): Degrees {
  return { thousandths: thousandths(degrees), unit }
}

/** Adding zero: a degree so small that it rounds to −0 is a plain 0 in the fold. */
function thousandths(value: number): number {
  return Math.round(value * 1_000) + 0
}

function windowFrom({ unit, earliest, target, latest }: DwellObject): DwellWindow {
  return dwell(unit, earliest, target, latest)
}

export function madeOfFrom(file: FullSetUpFile['toppings'][number]['madeOf']): MadeOf[] {
  return file.map(({ ingredient, weight }) => ({ ingredientId: ingredientId(ingredient), weight: weightFrom(weight) }))
}

export function ingredientFrom(file: FullSetUpFile['ingredients'][number], order: number): Ingredient {
  const { price } = file
  return {
    ...file,
    id: ingredientId(file.id),
    order,
    price: price === null ? null : { cents: price.cents, per: weightFrom(price.per) },
    bag: weightOrNull(file.bag),
  }
}

export function preparationFrom(file: FullSetUpFile['preparations'][number], order: number): Preparation {
  return {
    ...file,
    id: preparationId(file.id),
    order,
    lines: file.lines.map(({ ingredient, percent }) => ({
      ingredientId: ingredientId(ingredient),
      percent: thousandths(percent),
    })),
    seedPercent: thousandths(file.seedPercent),
    fedWith: weightOrNull(file.fedWith),
    ready: windowFrom(file.ready),
  }
}

export function formulaFrom(file: FullSetUpFile['formulas'][number], order: number): Formula {
  const { id, name, bulk, strength, daysAhead, retired } = file
  return {
    id: formulaId(id),
    name,
    order,
    lines: file.lines.map(({ ingredient, percent, at }) => ({
      ingredientId: ingredientId(ingredient),
      percent: thousandths(percent),
      at,
    })),
    preparations: file.preparations.map(({ preparation, percent }) => ({
      preparationId: preparationId(preparation),
      percent: thousandths(percent),
    })),
    lossPercent: thousandths(file.lossPercent),
    bakeLossPercent: thousandths(file.bakeLossPercent),
    doughAt: degreesFrom(file.doughAt),
    friction: degreesFrom(file.friction),
    mixMs: spanFromObject(file.mix),
    mixInMs: file.mixInsAfter === null ? null : spanFromObject(file.mixInsAfter),
    restMs: spanFromObject(file.rest),
    bulk: bulk === null ? null : bulkFrom(bulk),
    strength,
    daysAhead,
    decideByMinute: clockMinute(file.decideBy),
    retired,
  }
}

function bulkFrom({ window, folds, chill }: NonNullable<FullSetUpFile['formulas'][number]['bulk']>): Formula['bulk'] {
  return {
    window: windowFrom(window),
    foldsMs: folds.map(spanFromObject),
    chill: chill === null ? null : windowFrom(chill),
  }
}

export function doughRoomFrom(file: FullSetUpFile['doughRoom']): DoughRoom | null {
  if (file === null) return null
  const { flourIn, dividerPiecesPerHour, handPiecesPerHour, rollers, proofTrays, hasIce } = file
  return {
    fromMinute: clockMinute(file.from),
    coolerByMinute: clockMinute(file.coolerBy),
    scaleStep: weightFrom(file.scaleStep),
    flourIn,
    surplusTo: file.surplusTo === undefined ? null : formulaId(file.surplusTo),
    dividerPiecesPerHour,
    handPiecesPerHour,
    rollers,
    proofTrays,
    roomAt: degreesFrom(file.roomAt),
    flourAt: degreesFrom(file.flourAt),
    tapAt: degreesFrom(file.tapAt),
    hotTapAt: degreesFrom(file.hotTapAt),
    hasIce,
    provesAt: degreesFrom(file.provesAt),
    coolsIn: spanFromObject(file.coolsIn),
  }
}
