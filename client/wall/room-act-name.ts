import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { WallDoughWords } from '../words/wall-dough.ts'

/** An act of the dough room inside a sentence. @example "mixer off: Plain", "chill Plain 96" */
export function roomActInSentence(act: RoomAct, shop: Shop, { acts }: WallDoughWords): string {
  const name = nameOf(act, shop)
  if (act.kind === 'fold') return acts.fold(name, act.fold)
  return acts[act.kind](act.pieces > 0 ? `${name} ${act.pieces}` : name)
}

function nameOf({ formulaId, doughId, preparationId }: RoomAct, shop: Shop): string {
  if (doughId !== null) return shop.doughs.get(doughId)?.name ?? ''
  if (preparationId !== null) return shop.preparations.get(preparationId)?.name ?? ''
  return formulaId === null ? '' : (shop.formulas.get(formulaId)?.name ?? '')
}
