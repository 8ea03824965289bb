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
import { decideChangeSetUp, decideDropSetUp, decideTakeUpSetUps } from './decide-set-up.ts'
import type { Deciders } from './decide-with.ts'
import { decideWith } from './decide-with.ts'

export type { Context, Decision } from './decision.ts'

/** A kind of command without a decider does not compile. */
const DECIDERS: Deciders = {
  ...OUT_FRONT,
  changeSetUp: decideChangeSetUp,
  dropSetUp: decideDropSetUp,
  takeUpSetUps: decideTakeUpSetUps,
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
}

/** What the server says, and the bench and the desk, to every kind of command. */
export const decide = decideWith(DECIDERS)
