// Checked by the compiler alone (`npm run check`): every line under a mark must be an error, or the mark is one.
import type { Answer, RefusalCode } from '../../shared-core/day/answers.ts'
import type { Act, ActType, Command } from '../../shared-core/day/commands.ts'
import type { Entry, Event } from '../../shared-core/day/events.ts'
import type { Batch, Lot, State } from '../../shared-core/day/state.ts'
import { batchId, commandId, loadId, shelfId } from '../../shared-core/ids.ts'
import type { FromScreen, Role } from '../../shared-core/live/protocol.ts'
import { unreachable } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'

const head = { id: commandId('c1'), deviceSeq: 1, tappedAtMs: epochMs(0) }

export const commands: readonly Command[] = [
  { ...head, type: 'flip', loadId: loadId('l1') },
  // @ts-expect-error there is no such command
  { ...head, type: 'flipp', loadId: loadId('l1') },
  // @ts-expect-error a flip names its load
  { ...head, type: 'flip' },
  // @ts-expect-error a flip names a load, not a shelf
  { ...head, type: 'flip', loadId: shelfId('s1') },
  // @ts-expect-error a field that the command does not have
  { ...head, type: 'openDay', label: '2026-01-02' },
  // @ts-expect-error nothing is moved into the oven by hand: that is a load
  { ...head, type: 'moveBatch', batchId: batchId('b1'), from: 'boards', to: 'oven', pieces: 12 },
  // @ts-expect-error a command without its id could not be told from its repeat
  { deviceSeq: 1, tappedAtMs: null, type: 'openDay' },
]

export function aSwitchNamesEveryCommand(act: Extract<Act, { type: 'openDay' | 'closeDay' | 'takeBack' }>): string {
  switch (act.type) {
    case 'openDay':
    case 'closeDay':
      return act.type
    default:
      // @ts-expect-error take-back is missing above
      return unreachable(act)
  }
}

export function whatIsSharedCannotBeChanged(state: State, batch: Batch, lot: Lot, entry: Entry): void {
  // @ts-expect-error entities are replaced, never changed
  batch.pieces = 3
  // @ts-expect-error nor what lies in them
  lot.readyAtMs = epochMs(0)
  // @ts-expect-error the tables are changed, never exchanged
  state.batches = new Map()
  // @ts-expect-error what is in the journal stays
  entry.events.push(entry.events[0])
}

export const answers: readonly Answer[] = [
  { kind: 'taken', seq: 7 },
  // @ts-expect-error an entry's number comes with every "taken"
  { kind: 'taken' },
  // @ts-expect-error a sentence is no code: sentences are in client/words
  { kind: 'refused', refusal: { code: 'Somebody was faster', params: {} } },
]

// @ts-expect-error there is no such refusal
export const refusal: RefusalCode = 'already-done'
// @ts-expect-error there is no such command
export const act: ActType = 'lever'
// @ts-expect-error there is no such screen
export const role: Role = 'office'
// @ts-expect-error a screen asks, the server tells
export const said: FromScreen = { type: 'turn', entries: [], answers: [] }
// @ts-expect-error an event without its version could not be read later
export const event: Event = { type: 'dayOpened', label: '2026-01-02', atMs: epochMs(0) }
