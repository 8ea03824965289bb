import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act, ActType } from '../../../shared-core/day/commands.ts'
import { CARE_KINDS } from '../../../shared-core/day/said.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, deviceId, formulaId, mixId, portionId } from '../../../shared-core/ids.ts'
import { DEFAULT_KETTLE_CARE } from '../../../shared-core/shop/default-rules.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { later, spanMs } from '../../../shared-core/units.ts'
import { asked, g, planMixes, roomShop } from '../dough/acts-shop.ts'
import { DOUGH_MAKERS, makePoolish, someMix } from './any-dough-act.ts'
import { ORDER_MAKERS } from './any-order-act.ts'
import type { Draw } from './draw.ts'
import { drawer } from './draw.ts'
import { at, lines } from './make.ts'
import { play } from './play.ts'
import { ALL_STATIONS, dough, PEOPLE, STEPS, shopWith, table } from './shop.ts'
import { kitchenParts } from './shop-kitchen.ts'

/** Boiled cold: there is no rack on its way. */
const COLD = ['proof', 'chill', 'kettle', 'boards', 'oven'] as const

/** A shop set up from nothing, with trays in the cooler, a load list and some sesame for sale. */
export function startedShop(): State {
  const state = emptyState()
  const shop = shopWith({
    stations: table(ALL_STATIONS),
    steps: table(STEPS),
    people: table(PEOPLE),
    kettle: { pieces: 36, cycleMs: spanMs(90, 's'), ...DEFAULT_KETTLE_CARE },
    ...doughRoomParts(),
    ...kitchenParts(),
    doughs: table([
      dough({ id: 'plain', order: 1, formulaId: formulaId('plain'), pieceWeight: g(120) }),
      dough({ id: 'rye', order: 2, route: COLD, contains: ['egg'], formulaId: formulaId('sour'), pieceWeight: g(100) }),
    ]),
  })
  applyEntry(state, {
    seq: 1,
    commandId: commandId('setup00001'),
    deviceId: deviceId('desk'),
    recordedAtMs: at('4:00'),
    told: { type: 'changeSetUp' },
    events: [{ v: 1, atMs: at('4:00'), type: 'setUpChanged', changes: setUpChanges(null, shop) }],
  })
  const start = (act: Act, n: number) => play(state, act, { nowMs: at('4:30'), id: `start0000${n}` })
  const [plain, rye] = [...shop.doughs.keys()]
  if (plain === undefined || rye === undefined) throw new Error('the test shop has two doughs')
  start({ type: 'carryIn', doughId: plain, varietyId: null, pieces: 240, stage: 'chill', sinceMs: at('18:00', -1) }, 1)
  start({ type: 'carryIn', doughId: rye, varietyId: null, pieces: 60, stage: 'chill', sinceMs: at('18:00', -1) }, 2)
  start({ type: 'count', varietyId: lines('sesame', 1)[0]?.varietyId ?? ('sesame' as never), pieces: 18 }, 3)
  const loads = [lines('sesame', 24, 'poppy', 12), lines('plain', 48), lines('rye', 36)]
  start({ type: 'setLoadList', loads: loads.map((one) => ({ shelfId: null, inAtMs: null, lines: one })) }, 4)
  start(planMixes(asked('plain', { plain: 120 }), asked('sour', { rye: 140 }), asked('sour'), asked('raisin')), 5)
  start(makePoolish(), 6)
  start({ type: 'countPortions', portionId: portionId('ball'), portions: 20 }, 8)
  start({ type: 'moveMix', mixId: mixId('start00005.3'), from: 'planned', to: 'bulk' }, 7)
  return state
}

/** What of the shop is the dough room's. */
function doughRoomParts() {
  const { ingredients, preparations, formulas, doughRoom, mixer } = roomShop()
  return { ingredients, preparations, formulas, doughRoom, mixer }
}

/** An act that the shop's state makes likely, drawn by a number. Wrong ones are among them: they are refused. */
export function anyAct(state: State, seed: number): Act {
  const draw = drawer(seed)
  const type = draw.oneOf(TYPES)
  return MAKERS[type](state, draw)
}

type Drawn = Exclude<ActType, 'changeSetUp'>

const MAKERS: { readonly [Type in Drawn]: (state: State, draw: Draw) => Act } = {
  shape: (state, draw) => ({
    type: 'shape',
    ...someDough(state, draw),
    pieces: draw.upTo(96) + 1,
    stage: draw.oneOf(['proof', 'chill', 'rack']),
    ...(draw.upTo(1) === 0 ? {} : { mixId: someMix(state, draw).id, isLast: draw.upTo(3) === 0 }),
  }),
  carryIn: (state, draw) => ({
    type: 'carryIn',
    ...someDough(state, draw),
    pieces: draw.upTo(48) + 1,
    stage: 'chill',
    sinceMs: at('18:00', -1),
  }),
  pull: (state, draw) => ({ type: 'pull', ...someDough(state, draw), pieces: draw.upTo(48) + 1 }),
  dip: (state, draw) => ({ type: 'dip', ...someDough(state, draw), pieces: draw.upTo(40) + 1 }),
  lift: (state, draw) => ({ type: 'lift', batchId: someBatch(state, draw, ['kettle']).id }),
  board: (state, draw) => ({ type: 'board', lines: someLines(state, draw) }),
  moveBatch: (state, draw) => {
    const batch = someBatch(state, draw)
    const to = draw.oneOf(['proof', 'chill', 'rack', 'kettle', 'boards'] as const)
    return { type: 'moveBatch', batchId: batch.id, from: batch.stage, to, pieces: draw.upTo(batch.pieces) + 1 }
  },
  load: (state, draw) => {
    const planned = [...state.planned.values()].find((one) => !one.done)
    const shelfId = draw.oneOf([...(state.shop?.shelves.keys() ?? [])])
    if (planned !== undefined && draw.upTo(2) > 0)
      return { type: 'load', shelfId, plannedId: planned.id, lines: planned.lines }
    return { type: 'load', shelfId, plannedId: null, lines: someLines(state, draw) }
  },
  changeLoad: (state, draw) => ({
    type: 'changeLoad',
    loadId: someLoad(state, draw).id,
    lines: someLines(state, draw),
  }),
  flip: (state, draw) => ({ type: 'flip', loadId: someLoad(state, draw).id }),
  out: (state, draw) => {
    const load = someLoad(state, draw)
    const [inside] = [...state.batches.values()].filter((batch) => batch.loadId === load.id)
    const part = inside?.varietyId != null && draw.upTo(4) === 0 ? [{ varietyId: inside.varietyId, pieces: 1 }] : null
    return { type: 'out', loadId: load.id, from: load.phase, lines: part }
  },
  moveLoad: (state, draw) => {
    const load = someLoad(state, draw)
    const shelfId = draw.oneOf([...(state.shop?.shelves.keys() ?? [])])
    return {
      type: 'moveLoad',
      loadId: load.id,
      from: load.phase,
      to: draw.oneOf(['first-side', 'second-side', 'boards']),
      shelfId,
    }
  },
  wasteBatch: (state, draw) => {
    const batch = someBatch(state, draw)
    return { type: 'wasteBatch', batchId: batch.id, from: batch.stage, pieces: draw.upTo(batch.pieces - 1) + 1 }
  },
  confirmPresumed: (state, draw) => ({
    type: 'confirmPresumed',
    unsureIds: [...state.unsure.keys()].slice(0, draw.upTo(3) + 1),
  }),
  sell: (state, draw) => ({ type: 'sell', lines: someLines(state, draw, 13) }),
  remove: (state, draw) => ({
    type: 'remove',
    ...someLine(state, draw, 6),
    fate: draw.oneOf(['kitchen', 'wasted', 'given']),
  }),
  count: (state, draw) => ({ type: 'count', ...someLine(state, draw, 40) }),
  keep: (state, draw) => ({ type: 'keep', lines: someLines(state, draw, 12) }),
  release: (state, draw) => ({ type: 'release', keepId: draw.oneOf([...state.keeps.keys(), 'none' as never]) }),
  handOver: (state, draw) => ({ type: 'handOver', keepId: draw.oneOf([...state.keeps.keys(), 'none' as never]) }),
  openDay: () => ({ type: 'openDay' }),
  closeDay: ({ day, lastDay }, draw) => {
    if (draw.upTo(1) > 0) return { type: 'openDay' }
    return day === null && lastDay !== null ? { type: 'reopenDay', label: lastDay.label } : { type: 'closeDay' }
  },
  setLoadList: (state, draw) => ({
    type: 'setLoadList',
    loads: [{ shelfId: null, inAtMs: null, lines: someLines(state, draw) }],
  }),
  skipPlanned: (state, draw) => ({
    type: 'skipPlanned',
    plannedId: draw.oneOf([...state.planned.keys(), 'none' as never]),
  }),
  forbidLoads: (state, draw) => {
    const { varietyId } = someLine(state, draw, 1)
    const shelfId = draw.oneOf([null, ...(state.shop?.shelves.keys() ?? [])])
    const fromMs = later(state.recordedAtMs, spanMs(draw.upTo(60), 'min'))
    const forbid = { shelfId, varietyId: draw.oneOf([null, varietyId]), fromMs, toMs: later(fromMs, spanMs(30, 'min')) }
    return { type: 'forbidLoads', forbids: [forbid].slice(draw.upTo(1)) }
  },
  takeBack: (state, draw) => ({
    type: 'takeBack',
    commandId: draw.oneOf([commandId('none000001'), ...state.traces.map((one) => one.commandId)]),
  }),
  care: (_state, draw) => ({
    type: 'care',
    care: draw.oneOf([...CARE_KINDS]),
  }),
  setBoards: (_state, draw) => ({ type: 'setBoards', usable: draw.upTo(30) }),
  sellUnnamed: (_state, draw) => ({ type: 'sellUnnamed', pieces: draw.upTo(12) + 1 }),
  sweep: (state, draw) => ({
    type: 'sweep',
    counts: someLines(state, draw, 40).map((line) => ({ ...line, within: draw.oneOf([0, 3]) })),
  }),
  lastOneGone: (state, draw) => ({ type: 'lastOneGone', varietyId: someLine(state, draw, 1).varietyId }),
  dayOldIn: (state, draw) => ({ type: 'dayOldIn', lines: someLines(state, draw, 12) }),
  dayOldOut: (state, draw) => ({
    type: 'dayOldOut',
    ...someLine(state, draw, 6),
    fate: draw.oneOf(['sold', 'kitchen', 'wasted', 'given']),
  }),
  reopenDay: (state) => ({ type: 'reopenDay', label: state.lastDay?.label ?? '2026-01-01' }),
  dropSetUp: (state, draw) => ({ type: 'dropSetUp', setUpId: draw.oneOf([...state.setUps.keys(), 'none' as never]) }),
  takeUpSetUps: () => ({ type: 'takeUpSetUps' }),
  noteImport: (_state, draw) => ({
    type: 'noteImport',
    name: 'till.csv',
    sha256: '0123456789abcdef'.repeat(4),
    rows: draw.upTo(9_999),
    from: '2025-01-01',
    to: '2025-12-31',
  }),
  doStep: (state, draw) => ({ type: 'doStep', ...someStep(state, draw) }),
  giveStep: (state, draw) => ({ type: 'giveStep', ...someStep(state, draw) }),
  testFloat: (state, draw) => {
    const passed = draw.upTo(1) === 0
    const { doughId } = someDough(state, draw)
    return { type: 'testFloat', doughId, passed, lookAgainMs: passed ? null : spanMs(15, 'min'), personId: null }
  },
  writeNote: () => ({ type: 'writeNote', text: 'rye slow' }),
  clearNote: (state, draw) => ({ type: 'clearNote', noteId: draw.oneOf([...state.notes.keys(), 'none' as never]) }),
  slipChangeover: (_state, draw) => ({ type: 'slipChangeover', slipMs: (draw.upTo(8) - 4) * 900_000 }),
  changeOverShelf: (state, draw) => ({
    type: 'changeOverShelf',
    shelfId: draw.oneOf([...(state.shop?.shelves.keys() ?? [])]),
    to: draw.oneOf(['secondMenu', 'bagels']),
  }),
  readOven: (_state, draw) => ({ type: 'readOven', shelfId: null, degrees: 400 + draw.upTo(120), unit: 'F' }),
  ...DOUGH_MAKERS,
  ...ORDER_MAKERS,
}
const TYPES = Object.keys(MAKERS) as Drawn[]
/** Kinds that a draw can end in; planned changes of a set-up and what the server takes up have tests of their own. */
export const ACT_TYPES = TYPES.filter(
  (type) => type !== 'dropSetUp' && type !== 'takeUpSetUps' && type !== 'takeUpOrders',
)

function someStep(state: State, draw: Draw) {
  const stepId = draw.oneOf([...(state.shop?.steps.keys() ?? []), 'none' as never])
  return { stepId, doughId: null, personId: draw.oneOf([null, ...(state.shop?.people.keys() ?? [])]) }
}

function someDough(state: State, draw: Draw) {
  return { doughId: draw.oneOf([...(state.shop?.doughs.keys() ?? [])]), varietyId: null }
}

function someBatch(state: State, draw: Draw, stages?: readonly string[]) {
  const batches = [...state.batches.values()].filter((batch) => stages === undefined || stages.includes(batch.stage))
  const none = { id: 'none' as never, stage: 'rack' as const, pieces: 1 }
  return batches.length === 0 ? none : draw.oneOf(batches)
}

function someLoad(state: State, draw: Draw) {
  const loads = [...state.loads.values()]
  return loads.length === 0 ? { id: 'none' as never, phase: 'first-side' as const } : draw.oneOf(loads)
}

function someLine(state: State, draw: Draw, most: number) {
  return { varietyId: draw.oneOf([...(state.shop?.varieties.keys() ?? [])]), pieces: draw.upTo(most) + 1 }
}

function someLines(state: State, draw: Draw, most = 36) {
  const made = [someLine(state, draw, most), someLine(state, draw, most)]
  return made.filter((line, n) => made.findIndex((one) => one.varietyId === line.varietyId) === n)
}
