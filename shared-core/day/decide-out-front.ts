import { decideReadPlace } from '../dough/decide-room.ts'
import {
  decideBoard,
  decideCarryIn,
  decideConfirmPresumed,
  decideDip,
  decideLift,
  decideMoveBatch,
  decidePull,
  decideWasteBatch,
} from '../line/decide-batches.ts'
import { decideCare, decideSetBoards } from '../line/decide-care.ts'
import { decideChangeLoad, decideFlip, decideLoad, decideMoveLoad, decideOut } from '../line/decide-loads.ts'
import { decideCountPortions, decideMoveItems } from '../orders/decide-items.ts'
import {
  decideCancelOrder,
  decideChangeOrder,
  decideHandOverOrder,
  decideMissOrder,
  decideTakeOrder,
} from '../orders/decide-orders.ts'
import { decideEndStanding, decideSetStanding } from '../orders/decide-standing.ts'
import { decideTakeUpOrders } from '../orders/take-up.ts'
import { decideCount, decideLastOneGone, decideSweep } from '../stock/decide-count.ts'
import {
  decideDayOldIn,
  decideDayOldOut,
  decideHandOver,
  decideKeep,
  decideRelease,
  decideRemove,
  decideSell,
} from '../stock/decide-stock.ts'
import { decideSellUnnamed } from '../stock/sell-unnamed.ts'
import {
  decideCloseDay,
  decideForbidLoads,
  decideOpenDay,
  decideReopenDay,
  decideSetLoadList,
  decideSkipPlanned,
} from './decide-day.ts'
import {
  decideChangeOverShelf,
  decideClearNote,
  decideDoStep,
  decideGiveStep,
  decideReadOven,
  decideSlipChangeover,
  decideTestFloat,
  decideWriteNote,
} from './decide-lists.ts'
import type { Deciders } from './decide-with.ts'
import { decideWith } from './decide-with.ts'
import { decideTakeBack } from './take-back.ts'

/** Acts at the line and the counter: all but those of the dough room and of the set-up. */
export const OUT_FRONT = {
  carryIn: decideCarryIn,
  pull: decidePull,
  dip: decideDip,
  lift: decideLift,
  board: decideBoard,
  moveBatch: decideMoveBatch,
  wasteBatch: decideWasteBatch,
  confirmPresumed: decideConfirmPresumed,
  load: decideLoad,
  changeLoad: decideChangeLoad,
  flip: decideFlip,
  out: decideOut,
  moveLoad: decideMoveLoad,
  care: decideCare,
  setBoards: decideSetBoards,
  sell: decideSell,
  sellUnnamed: decideSellUnnamed,
  remove: decideRemove,
  count: decideCount,
  sweep: decideSweep,
  lastOneGone: decideLastOneGone,
  dayOldIn: decideDayOldIn,
  dayOldOut: decideDayOldOut,
  keep: decideKeep,
  release: decideRelease,
  handOver: decideHandOver,
  takeOrder: decideTakeOrder,
  changeOrder: decideChangeOrder,
  cancelOrder: decideCancelOrder,
  missOrder: decideMissOrder,
  handOverOrder: decideHandOverOrder,
  setStanding: decideSetStanding,
  endStanding: decideEndStanding,
  moveItems: decideMoveItems,
  countPortions: decideCountPortions,
  takeUpOrders: decideTakeUpOrders,
  openDay: decideOpenDay,
  closeDay: decideCloseDay,
  reopenDay: decideReopenDay,
  setLoadList: decideSetLoadList,
  skipPlanned: decideSkipPlanned,
  forbidLoads: decideForbidLoads,
  takeBack: decideTakeBack,
  doStep: decideDoStep,
  giveStep: decideGiveStep,
  testFloat: decideTestFloat,
  writeNote: decideWriteNote,
  clearNote: decideClearNote,
  slipChangeover: decideSlipChangeover,
  changeOverShelf: decideChangeOverShelf,
  readOven: decideReadOven,
  readPlace: decideReadPlace,
} satisfies Partial<Deciders>

/** `decide` for screens that have no say in the dough room: the wall and the counter do not fetch what they may not do. */
export const decideOutFront = decideWith(OUT_FRONT)
