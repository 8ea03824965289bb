import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'

export const AT_MS = 1_795_600_000_000
export const HEAD = { id: 'k7f3m2q9xa', deviceSeq: 4, tappedAtMs: AT_MS }
export const LINES = [
  { varietyId: 'sesame', pieces: 24 },
  { varietyId: 'poppy', pieces: 12 },
]
const CHANGES = setUpChanges(
  null,
  startingPoint('shelves', { name: 'New shop', zone: 'America/Chicago', language: 'en' }),
)

const ORDER = {
  ...{ mark: 'AK', dueAtMs: AT_MS + 3_600_000, way: 'pickUp', runId: null, stop: 0, isPaid: false },
  lines: [{ varietyId: null, without: ['sesame'], dozens: 1, pieces: 0, sliced: true, bagged: false }],
  items: [
    {
      ...{ itemId: 'egg-bagel', varietyId: 'sesame', toasted: true, without: [], more: ['egg'], times: 2 },
      allergies: ['milk'],
    },
  ],
}

/** One command of each type, as it comes over the wire. */
export const COMMANDS = [
  { type: 'shape', doughId: 'plain', varietyId: null, pieces: 24, stage: 'proof' },
  {
    ...{ type: 'shape', doughId: 'plain', varietyId: null, pieces: 24, stage: 'proof' },
    ...{ mixId: 'k7f3m2q9xa.1', isLast: true, place: 'Rack 2, level 5' },
  },
  { type: 'carryIn', doughId: 'plain', varietyId: 'sesame', pieces: 24, stage: 'chill', sinceMs: null },
  { type: 'pull', doughId: 'plain', varietyId: null, pieces: 24 },
  { type: 'dip', doughId: 'plain', varietyId: null, pieces: 36 },
  { type: 'lift', batchId: 'k7f3m2q9xa.1' },
  { type: 'board', lines: LINES },
  { type: 'moveBatch', batchId: 'k7f3m2q9xa.1', from: 'oven', to: 'boards', pieces: 6 },
  { type: 'load', shelfId: '1', plannedId: null, lines: LINES },
  { type: 'changeLoad', loadId: 'k7f3m2q9xa.1', lines: LINES },
  { type: 'flip', loadId: 'k7f3m2q9xa.1' },
  { type: 'out', loadId: 'k7f3m2q9xa.1', from: 'second-side', lines: null },
  { type: 'moveLoad', loadId: 'k7f3m2q9xa.1', from: 'second-side', to: 'first-side', shelfId: '2' },
  { type: 'wasteBatch', batchId: 'k7f3m2q9xa.1', from: 'rack', pieces: 2 },
  { type: 'confirmPresumed', unsureIds: ['k7f3m2q9xa.1', 'k7f3m2q9xa.2'] },
  { type: 'sell', lines: LINES },
  { type: 'remove', varietyId: 'sesame', pieces: 3, fate: 'given' },
  { type: 'count', varietyId: 'sesame', pieces: 0 },
  { type: 'keep', lines: LINES },
  { type: 'keep', lines: LINES, orderId: 'k7f3m2q9xa.1' },
  { type: 'release', keepId: 'k7f3m2q9xa.1' },
  { type: 'handOver', keepId: 'k7f3m2q9xa.1' },
  { type: 'openDay' },
  { type: 'closeDay' },
  { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: AT_MS, lines: LINES }] },
  { type: 'skipPlanned', plannedId: 'k7f3m2q9xa.1' },
  { type: 'forbidLoads', forbids: [{ shelfId: '2', varietyId: null, fromMs: AT_MS, toMs: AT_MS + 900_000 }] },
  { type: 'changeSetUp', changes: CHANGES },
  { type: 'takeBack', commandId: 'k7f3m2q9xb' },
  { type: 'care', care: 'topUp' },
  { type: 'setBoards', usable: 20 },
  { type: 'sellUnnamed', pieces: 12, from: 'till' },
  { type: 'sweep', counts: [{ varietyId: 'sesame', pieces: 18, within: 3 }] },
  { type: 'lastOneGone', varietyId: 'sesame' },
  { type: 'dayOldIn', lines: LINES },
  { type: 'dayOldOut', varietyId: 'sesame', pieces: 3, fate: 'sold' },
  { type: 'reopenDay', label: '2026-11-24' },
  { type: 'dropSetUp', setUpId: 'k7f3m2q9xa.1' },
  { type: 'takeUpSetUps' },
  { type: 'noteImport', name: 'till.csv', sha256: 'a'.repeat(64), rows: 14_142, from: '2025-10-30', to: '2026-11-23' },
  { type: 'doStep', stepId: 'oven-on', doughId: null, personId: 'ana' },
  { type: 'giveStep', stepId: 'oven-on', doughId: null, personId: null },
  { type: 'testFloat', doughId: 'plain', passed: false, lookAgainMs: 900_000, personId: null },
  { type: 'writeNote', text: 'Rye slow today' },
  { type: 'clearNote', noteId: 'k7f3m2q9xa.1' },
  { type: 'slipChangeover', slipMs: -900_000 },
  { type: 'changeOverShelf', shelfId: '1', to: 'secondMenu' },
  { type: 'readOven', shelfId: null, degrees: 495, unit: 'F' },
  { type: 'setWanted', date: '2026-11-25', lines: [{ doughId: 'plain', varietyId: null, pieces: 240, ordered: 12 }] },
  {
    type: 'planMixes',
    date: '2026-11-25',
    mixes: [
      { formulaId: 'plain', flourMilligrams: 22_680_000, startAtMs: AT_MS, gives: [{ doughId: 'plain', pieces: 300 }] },
    ],
  },
  { type: 'orderMixes', mixes: [{ mixId: 'k7f3m2q9xa.1', startAtMs: null }] },
  { type: 'dropMix', mixId: 'k7f3m2q9xa.1' },
  { type: 'weighLine', mixId: 'k7f3m2q9xa.1', line: 'malt+', done: true },
  { type: 'readMix', mixId: 'k7f3m2q9xa.1', temp: 'flour', read: { thousandths: 68_000, unit: 'F' } },
  { type: 'moveMix', mixId: 'k7f3m2q9xa.1', from: 'planned', to: 'mixing' },
  { type: 'foldMix', mixId: 'k7f3m2q9xa.1', fold: 2 },
  { type: 'endMix', mixId: 'k7f3m2q9xa.1', left: 'lost' },
  { type: 'placeBatch', batchId: 'k7f3m2q9xa.1', place: null },
  { type: 'readPlace', place: 'cooler', read: { thousandths: 3_500, unit: 'C' } },
  { type: 'countIngredients', counts: [{ ingredientId: 'flour', weight: { thousandths: 150_000, unit: 'lb' } }] },
  { type: 'receiveIngredient', ingredientId: 'flour', weight: { thousandths: 500_000, unit: 'lb' } },
  { type: 'makePreparation', preparationId: 'poolish', milligrams: 4_000_000, forDate: '2026-11-25' },
  { type: 'dropBuild', buildId: 'k7f3m2q9xa.1' },
  {
    ...{ type: 'takeOrder', ...ORDER, mark: null, dueAtMs: null, way: 'here', isRisk: true, ref: 'till 4711' },
    details: { name: 'A. Guest', phone: '555 0100', note: 'rings twice' },
  },
  { type: 'changeOrder', ...ORDER, orderId: 'k7f3m2q9xa.1', keepsItems: true },
  { type: 'cancelOrder', orderId: 'k7f3m2q9xa.1' },
  { type: 'missOrder', orderId: 'k7f3m2q9xa.1' },
  { type: 'handOverOrder', orderId: 'k7f3m2q9xa.1', lines: LINES },
  {
    ...{
      type: 'setStanding',
      standingId: null,
      mark: 'School',
      way: 'delivery',
      runId: 'east',
      stop: 2,
      dueMinute: 450,
    },
    ...{ lines: ORDER.lines, isPaid: false, onHolidays: false },
    recurrence: {
      ...{ freq: 'weekly', interval: 2, from: '2026-11-24', until: '2027-06-11', weekdays: [2, 4] },
      ...{ nth: null, except: ['2026-12-24'], also: ['2026-12-23'] },
    },
  },
  { type: 'endStanding', standingId: 'k7f3m2q9xa.1' },
  { type: 'moveItems', parts: [{ orderId: 'k7f3m2q9xa.1', no: 1, step: 0 }], to: 'begun', shelfId: '1' },
  { type: 'countPortions', portionId: 'egg', portions: 24 },
  { type: 'takeUpOrders' },
  { type: 'weighPieces', doughId: 'plain', mixId: null, weights: [{ thousandths: 113_000, unit: 'g' }] },
].map((act) => ({ ...HEAD, ...act }))

export function commandOf(type: string): object {
  const command = COMMANDS.find((one) => one.type === type)
  if (command === undefined) throw new Error(`no command ${type}`)
  return command
}
