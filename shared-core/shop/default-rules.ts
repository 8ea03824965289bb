import { spanMs } from '../units.ts'
import type { BakingRules, CounterRules, DemandRules, OrderRules } from './rules.ts'
import type { Dough, Kettle, Mixer } from './shop.ts'

/** What holds in a shop that has said nothing yet. Common practice, no source, and there to be changed. */
export const DEFAULT_COUNTER: CounterRules = { salesFrom: 'taps', sweepEveryMs: spanMs(90, 'min'), dayOldPercent: 50 }

export const DEFAULT_DEMAND: DemandRules = {
  region: null,
  disappointCents: 50,
  takeAnotherPercent: 50,
  dayOldSells: 24,
}

export const DEFAULT_BAKING: BakingRules = {
  advice: true,
  changeGainCents: 400,
  stalePercentPerHour: 3,
  carryPercent: 60,
  boardWaitMs: spanMs(8, 'min'),
  unitPieces: 6,
  toleranceMs: spanMs(2, 'min'),
  door: { loadMs: spanMs(0, 's'), flipMs: spanMs(0, 's'), outMs: spanMs(0, 's') },
  turnMs: spanMs(0, 's'),
  people: [],
  showUntilMinute: null,
  contactCents: 10,
}

export const DEFAULT_ORDERS: OrderRules = {
  dozenPieces: 12,
  cutOffMinute: null,
  walkInPercent: 100,
  walkInLeast: 0,
  keepsAsTheyCome: true,
  noShowMs: null,
  forgetDays: 30,
  madeInMs: spanMs(8, 'min'),
  sliceCoolMs: spanMs(30, 'min'),
  packMs: spanMs(2, 'min'),
  boxPieces: 12,
}

/** Boarded by the half-dozen, or piece by piece where a board holds no whole number of them. */
export function defaultUnitPieces(boardPieces: number): number {
  return boardPieces % DEFAULT_BAKING.unitPieces === 0 ? DEFAULT_BAKING.unitPieces : 1
}

export const DEFAULT_KETTLE_CARE: Pick<Kettle, 'recoverMs' | 'care'> = {
  recoverMs: spanMs(5, 'min'),
  care: { topUp: 300, malt: 600, skim: 300, change: 3_000 },
}

/** A kettle of a set-up that was written before the board knew of its care: nobody asked to be reminded. */
export const NO_KETTLE_CARE: Pick<Kettle, 'recoverMs' | 'care'> = {
  recoverMs: spanMs(5, 'min'),
  care: { topUp: null, malt: null, skim: null, change: null },
}

/** A mixer of a set-up from before mixers had names; a wash of bowl and hook takes some minutes. */
export const DEFAULT_MIXER: Pick<Mixer, 'name' | 'washMs'> = { name: 'Mixer', washMs: spanMs(10, 'min') }

/** A dough of which nobody has said what it is mixed by. */
export const NO_FORMULA: Pick<Dough, 'formulaId' | 'pieceWeight' | 'shapedBy' | 'labelWeight'> = {
  formulaId: null,
  pieceWeight: null,
  shapedBy: 'hand',
  labelWeight: null,
}
