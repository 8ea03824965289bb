import type { Degrees, DoughRoom, Formula, Ingredient, MadeOf, Preparation } from './formula.ts'
import { clockText, dwellObject, spanObject } from './human-time.ts'
import type { SetUpFile } from './set-up-schema.ts'
import type { Weight } from './shop.ts'

/** What doughs are made of and the dough room, as the set-up file writes them: the inverse of `formula-from-file.ts`. */

type Listed<List extends 'ingredients' | 'preparations' | 'formulas'> = NonNullable<SetUpFile[List]>[number]

export function weightFile({ thousandths, unit }: Weight) {
  return { amount: thousandths / 1_000, unit }
}

/** @example weightOrNullFile(null) // null: nobody has said */
export function weightOrNullFile(weight: Weight | null) {
  return weight === null ? null : weightFile(weight)
}

function degreesFile({ thousandths, unit }: Degrees) {
  return { degrees: thousandths / 1_000, unit }
}

export function madeOfFile(madeOf: readonly MadeOf[]) {
  return madeOf.map(({ ingredientId, weight }) => ({ ingredient: ingredientId, weight: weightFile(weight) }))
}

function retiredFile({ retired }: { readonly retired: boolean }) {
  return retired ? { retired: true } : {}
}

export function ingredientFile(ingredient: Ingredient): Listed<'ingredients'> {
  const { id, name, kind, contains, price, bag } = ingredient
  return {
    id,
    name,
    kind,
    contains: [...contains],
    price: price === null ? null : { cents: price.cents, per: weightFile(price.per) },
    bag: weightOrNullFile(bag),
    ...retiredFile(ingredient),
  }
}

export function preparationFile(preparation: Preparation): Listed<'preparations'> {
  const { id, name, kind, lines, seedPercent, fedWith, ready } = preparation
  return {
    id,
    name,
    kind,
    lines: lines.map(({ ingredientId, percent }) => ({ ingredient: ingredientId, percent: percent / 1_000 })),
    seedPercent: seedPercent / 1_000,
    fedWith: weightOrNullFile(fedWith),
    ready: dwellObject(ready),
    ...retiredFile(preparation),
  }
}

export function formulaFile(formula: Formula): Listed<'formulas'> {
  const { id, name, lines, preparations, mixInMs, bulk, strength, daysAhead } = formula
  return {
    id,
    name,
    lines: lines.map(({ ingredientId, percent, at }) => ({ ingredient: ingredientId, percent: percent / 1_000, at })),
    preparations: preparations.map(({ preparationId, percent }) => ({
      preparation: preparationId,
      percent: percent / 1_000,
    })),
    lossPercent: formula.lossPercent / 1_000,
    bakeLossPercent: formula.bakeLossPercent / 1_000,
    doughAt: degreesFile(formula.doughAt),
    friction: degreesFile(formula.friction),
    mix: spanObject(formula.mixMs),
    mixInsAfter: mixInMs === null ? null : spanObject(mixInMs),
    rest: spanObject(formula.restMs),
    bulk: bulk === null ? null : bulkFile(bulk),
    strength,
    daysAhead,
    decideBy: clockText(formula.decideByMinute),
    ...retiredFile(formula),
  }
}

function bulkFile({ window, foldsMs, chill }: NonNullable<Formula['bulk']>) {
  return {
    window: dwellObject(window),
    folds: foldsMs.map(spanObject),
    chill: chill === null ? null : dwellObject(chill),
  }
}

export function doughRoomFile(room: DoughRoom | null): SetUpFile['doughRoom'] {
  if (room === null) return null
  const { flourIn, surplusTo, dividerPiecesPerHour, handPiecesPerHour, rollers, proofTrays, hasIce } = room
  return {
    from: clockText(room.fromMinute),
    coolerBy: clockText(room.coolerByMinute),
    scaleStep: weightFile(room.scaleStep),
    flourIn,
    ...(surplusTo === null ? {} : { surplusTo }),
    dividerPiecesPerHour,
    handPiecesPerHour,
    rollers,
    proofTrays,
    roomAt: degreesFile(room.roomAt),
    flourAt: degreesFile(room.flourAt),
    tapAt: degreesFile(room.tapAt),
    hotTapAt: degreesFile(room.hotTapAt),
    hasIce,
    provesAt: degreesFile(room.provesAt),
    coolsIn: spanObject(room.coolsIn),
  }
}
