import type { ActType } from '../../shared-core/day/commands.ts'
import type { Role } from '../../shared-core/live/protocol.ts'

/**
 * Which screen may do what. Every command passes here, whichever way it came; with which role it came is the door's
 * business (`door.ts`).
 */
export function mayDo(role: Role, type: ActType): boolean {
  return ROLES_OF[type].includes(role)
}

export function rolesOf(type: ActType): readonly Role[] {
  return ROLES_OF[type]
}

const LINE: readonly Role[] = ['wall', 'bench', 'desk']
const STOCK: readonly Role[] = ['bench', 'counter', 'desk']
const ANYWHERE: readonly Role[] = ['wall', 'bench', 'counter', 'desk']
const BACK: readonly Role[] = ['bench', 'desk']

const ROLES_OF: { readonly [Type in ActType]: readonly Role[] } = {
  shape: BACK,
  carryIn: BACK,
  pull: LINE,
  dip: LINE,
  lift: LINE,
  board: LINE,
  moveBatch: BACK,
  load: LINE,
  changeLoad: BACK,
  flip: LINE,
  out: LINE,
  moveLoad: BACK,
  wasteBatch: BACK,
  confirmPresumed: LINE,
  care: LINE,
  setBoards: ANYWHERE,
  doStep: ANYWHERE,
  giveStep: ANYWHERE,
  testFloat: ANYWHERE,
  writeNote: ANYWHERE,
  clearNote: ANYWHERE,
  slipChangeover: ANYWHERE,
  changeOverShelf: ANYWHERE,
  readOven: ANYWHERE,
  setWanted: BACK,
  planMixes: BACK,
  orderMixes: BACK,
  dropMix: BACK,
  weighLine: BACK,
  readMix: BACK,
  moveMix: BACK,
  foldMix: BACK,
  endMix: BACK,
  placeBatch: BACK,
  readPlace: ANYWHERE,
  countIngredients: BACK,
  receiveIngredient: BACK,
  makePreparation: BACK,
  dropBuild: BACK,
  weighPieces: BACK,
  sell: STOCK,
  sellUnnamed: STOCK,
  sweep: STOCK,
  lastOneGone: STOCK,
  dayOldIn: STOCK,
  dayOldOut: STOCK,
  remove: STOCK,
  count: STOCK,
  takeOrder: STOCK,
  changeOrder: STOCK,
  cancelOrder: STOCK,
  missOrder: STOCK,
  handOverOrder: STOCK,
  setStanding: ['counter', 'desk'],
  endStanding: ['counter', 'desk'],
  moveItems: ANYWHERE,
  countPortions: STOCK,
  takeUpOrders: ['desk'],
  keep: STOCK,
  release: STOCK,
  handOver: STOCK,
  openDay: ['bench', 'counter', 'desk'],
  closeDay: ['counter', 'desk'],
  reopenDay: ['counter', 'desk'],
  setLoadList: BACK,
  skipPlanned: LINE,
  forbidLoads: BACK,
  changeSetUp: ['desk'],
  dropSetUp: ['desk'],
  takeUpSetUps: ['desk'],
  noteImport: ['desk'],
  takeBack: ANYWHERE,
}
