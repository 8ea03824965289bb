import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { WallDoughWords } from '../words/wall-dough.ts'

/** Where names come from: a mix keeps the formula that it was planned by. */
export type RoomNames = Pick<State, 'shop' | 'mixes'>

/** An act of the dough room inside a sentence. @example "mixer off: Plain", "chill Plain 96" */
export function roomActInSentence(act: RoomAct, names: RoomNames, { acts }: WallDoughWords): string {
  const name = nameOf(act, names)
  if (act.kind === 'fold') return acts.fold(name, act.fold)
  return acts[act.kind](act.pieces > 0 ? `${name} ${act.pieces}` : name)
}

function nameOf({ mixId, doughId, preparationId }: RoomAct, { shop, mixes }: RoomNames): string {
  if (doughId !== null) return shop?.doughs.get(doughId)?.name ?? ''
  if (preparationId !== null) return shop?.preparations.get(preparationId)?.name ?? ''
  return mixId === null ? '' : (mixes.get(mixId)?.formula.name ?? '')
}
