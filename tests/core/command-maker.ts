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

/** One command of each type, as it comes over the wire. */
export const COMMANDS = [
  { type: 'shape', doughId: 'plain', varietyId: null, pieces: 24, stage: 'proof' },
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
  { type: 'release', keepId: 'k7f3m2q9xa.1' },
  { type: 'handOver', keepId: 'k7f3m2q9xa.1' },
  { type: 'openDay' },
  { type: 'closeDay' },
  { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: AT_MS, lines: LINES }] },
  { type: 'skipPlanned', plannedId: 'k7f3m2q9xa.1' },
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
  { type: 'doStep', stepId: 'oven-on', doughId: null, personId: 'ana' },
  { type: 'giveStep', stepId: 'oven-on', doughId: null, personId: null },
  { type: 'testFloat', doughId: 'plain', passed: false, lookAgainMs: 900_000, personId: null },
  { type: 'writeNote', text: 'Rye slow today' },
  { type: 'clearNote', noteId: 'k7f3m2q9xa.1' },
  { type: 'slipChangeover', slipMs: -900_000 },
  { type: 'changeOverShelf', shelfId: '1', to: 'secondMenu' },
  { type: 'readOven', shelfId: null, degrees: 495, unit: 'F' },
].map((act) => ({ ...HEAD, ...act }))

export function commandOf(type: string): object {
  const command = COMMANDS.find((one) => one.type === type)
  if (command === undefined) throw new Error(`no command ${type}`)
  return command
}
