import { decideEndMix, decideFoldMix, decideMoveMix, decideReadMix, decideWeighLine } from '../dough/decide-mix.ts'
import { decideDropMix, decideOrderMixes, decidePlanMixes, decideSetWanted } from '../dough/decide-plan.ts'
import { decidePlaceBatch, decideWeighPieces } from '../dough/decide-room.ts'
import { decideShape } from '../dough/decide-shape.ts'
import {
  decideCountIngredients,
  decideDropBuild,
  decideMakePreparation,
  decideReceiveIngredient,
} from '../dough/decide-stores.ts'
import { OUT_FRONT } from './decide-out-front.ts'
import type { Deciders } from './decide-with.ts'
import { decideWith } from './decide-with.ts'

/** Acts at the bench: those out front and those of the dough room, all but the set-up's. */
export const AT_BENCH = {
  ...OUT_FRONT,
  shape: decideShape,
  setWanted: decideSetWanted,
  planMixes: decidePlanMixes,
  orderMixes: decideOrderMixes,
  dropMix: decideDropMix,
  weighLine: decideWeighLine,
  readMix: decideReadMix,
  moveMix: decideMoveMix,
  foldMix: decideFoldMix,
  endMix: decideEndMix,
  placeBatch: decidePlaceBatch,
  countIngredients: decideCountIngredients,
  receiveIngredient: decideReceiveIngredient,
  makePreparation: decideMakePreparation,
  dropBuild: decideDropBuild,
  weighPieces: decideWeighPieces,
} satisfies Partial<Deciders>

/** `decide` for the bench, which does not fetch the rules of the set-up. */
export const decideAtBench = decideWith(AT_BENCH)
