import type { SetUpFile } from '../../../shared-core/shop/set-up-schema.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { bigSetUpFile, longest } from './big-set-up.ts'
import { doughRoomFile } from './formula-file.ts'
import { shopOf } from './set-up-file-maker.ts'

/** The shop that strains every screen, with a dough room that does: every name in it as long as it may be. */
export function bigDoughRoom(varieties: number): Shop {
  return shopOf(bigDoughRoomFile(varieties))
}

function bigDoughRoomFile(varieties: number): SetUpFile {
  const { doughRoom, ingredients = [], preparations = [], formulas = [] } = doughRoomFile() as unknown as SetUpFile
  const file = bigSetUpFile(varieties)
  return {
    ...file,
    ...(doughRoom === undefined ? {} : { doughRoom }),
    ingredients: ingredients.map((one) => ({ ...one, name: longest(one.name, 'ingredient') })),
    preparations: preparations.map((one) => ({ ...one, name: longest(one.name, 'preparation') })),
    formulas: formulas.map((one) => ({ ...one, name: longest(one.name, 'formula') })),
    doughs: file.doughs.map((dough, at) =>
      at > 1 ? dough : { ...dough, formula: 'plain', pieceWeight: { amount: 4.25 - at, unit: 'oz' } },
    ),
    mixer: { leastFlour: { amount: 10, unit: 'lb' }, mostFlour: { amount: 100, unit: 'lb' } },
  }
}
