import {
  applyBatchPlaced,
  applyBuildDropped,
  applyLineWeighed,
  applyMixDropped,
  applyMixEnded,
  applyMixesOrdered,
  applyMixesPlanned,
  applyMixFolded,
  applyMixMoved,
  applyMixRead,
  applyOnHandSet,
  applyPlaceRead,
  applyWantedSet,
  takeFromMix,
} from '../dough/apply-dough.ts'
import { withoutSheet } from '../dough/apply-taken-back.ts'
import {
  applyBatchMoved,
  applyBatchWasted,
  applyFlipped,
  applyLoadChanged,
  applyLoaded,
  applyLoadMoved,
  applyLoadUndone,
  applyOut,
  applyPieces,
} from '../line/apply-line.ts'
import { applyItemsMoved, applyOrderChanged, applyOrderTaken, applyPortionsLeft } from '../orders/apply-orders.ts'
import {
  applyCounted,
  applyDayOldPut,
  applyDayOldTaken,
  applyHandedOver,
  applyKept,
  applyReleased,
  applyStockTaken,
} from '../stock/apply-stock.ts'
import { fail } from '../support.ts'
import { epochMs } from '../units.ts'
import {
  applyDayClosed,
  applyDayOpened,
  applyDayReopened,
  applyLoadListSet,
  applySetUpChanged,
  applyTakenBack,
} from './apply-day.ts'
import type { ActType } from './commands.ts'
import type { Entry, Event, EventType } from './events.ts'
import type { Folding } from './folding.ts'
import { isWork } from './night.ts'
import type { Undo } from './recorder.ts'
import { beginUndo, put, putForbids, touchedBy, undoAll } from './recorder.ts'
import type { State } from './state.ts'
import type { Trace } from './trace.ts'

/** How many commands can be told and taken back: an hour of a busy line, and small in every snapshot. */
export const TRACES_MAX = 60

export function emptyState(): State {
  return {
    seq: 0,
    recordedAtMs: epochMs(0),
    lastActAtMs: epochMs(0),
    shop: null,
    day: null,
    lastDay: null,
    batches: new Map(),
    loads: new Map(),
    shelves: new Map(),
    stock: new Map(),
    keeps: new Map(),
    orders: new Map(),
    standing: new Map(),
    portions: new Map(),
    makeTimes: new Map(),
    planned: new Map(),
    forbids: [],
    unsure: new Map(),
    marks: new Map(),
    notes: new Map(),
    cares: new Map(),
    setUps: new Map(),
    habits: new Map(),
    wanted: new Map(),
    mixes: new Map(),
    builds: new Map(),
    readings: new Map(),
    frictions: new Map(),
    teachings: new Map(),
    onHand: new Map(),
    checks: new Map(),
    touches: new Map(),
    account: new Map(),
    traces: [],
  }
}

/**
 * Folds one entry into the state, in place. The same entries give the same state on every machine: nothing here reads
 * set-up, clock or chance.
 * @returns what `undoAll` needs to put the state back
 * @throws AssertionError when the entry does not fit the state; the state is then as it was before
 */
export function applyEntry(state: State, entry: Entry): Undo {
  const undo = beginUndo(state)
  const folding: Folding = { state, undo, booked: [], touches: [] }
  try {
    if (entry.seq !== state.seq + 1) fail(`entry ${entry.seq} after ${state.seq}`)
    if (entry.recordedAtMs < state.recordedAtMs) fail(`entry ${entry.seq} is recorded before the one before it`)
    state.seq = entry.seq
    state.recordedAtMs = entry.recordedAtMs
    for (const event of entry.events) applyEvent(folding, event)
    if (state.day !== null && entry.events.some(isWork)) state.lastActAtMs = entry.recordedAtMs
    remember(folding, entry)
  } catch (error) {
    undoAll(state, undo)
    throw error
  }
  return undo
}

type Appliers = { readonly [Type in EventType]: (folding: Folding, event: Extract<Event, { type: Type }>) => void }

/** One function for each kind of event; a kind without one does not compile. */
const APPLIERS: Appliers = {
  dayOpened: applyDayOpened,
  dayClosed: applyDayClosed,
  dayReopened: applyDayReopened,
  setUpChanged: applySetUpChanged,
  loadListSet: applyLoadListSet,
  plannedDone: ({ state, undo }, { planned }) => put(state, undo, 'planned', planned.id, planned),
  loadsForbidden: ({ state, undo }, { forbids }) => putForbids(state, undo, forbids),
  piecesShaped: (folding, { batch, from }) => {
    applyPieces(folding, batch, 'shaped', batch.pieces)
    takeFromMix(folding, from)
  },
  piecesCarriedIn: (folding, { batch }) => applyPieces(folding, batch, 'carriedIn', batch.pieces),
  piecesFound: (folding, { batch }) => applyPieces(folding, batch, 'unexplained', -batch.pieces),
  batchMoved: applyBatchMoved,
  batchWasted: applyBatchWasted,
  loaded: applyLoaded,
  loadChanged: applyLoadChanged,
  flipped: applyFlipped,
  out: applyOut,
  loadMoved: applyLoadMoved,
  loadUndone: applyLoadUndone,
  unsureRaised: ({ state, undo }, { unsure }) => put(state, undo, 'unsure', unsure.id, unsure),
  unsureSettled: ({ state, undo }, { unsureIds }) => {
    for (const id of unsureIds) put(state, undo, 'unsure', id, null)
  },
  stockTaken: applyStockTaken,
  counted: applyCounted,
  kept: applyKept,
  released: applyReleased,
  handedOver: applyHandedOver,
  saleNoted: () => undefined,
  importNoted: () => undefined,
  dayOldPut: applyDayOldPut,
  dayOldTaken: applyDayOldTaken,
  marked: ({ state, undo }, { mark }) => put(state, undo, 'marks', mark.id, mark),
  unmarked: ({ state, undo }, { markId }) => put(state, undo, 'marks', markId, null),
  noted: ({ state, undo }, { note }) => put(state, undo, 'notes', note.id, note),
  noteCleared: ({ state, undo }, { noteId }) => put(state, undo, 'notes', noteId, null),
  cared: ({ state, undo }, { care }) => put(state, undo, 'cares', care.kind, care),
  setUpPlanned: ({ state, undo }, { setUp }) => put(state, undo, 'setUps', setUp.id, setUp),
  setUpDropped: ({ state, undo }, { setUpId }) => put(state, undo, 'setUps', setUpId, null),
  orderTaken: applyOrderTaken,
  orderChanged: applyOrderChanged,
  orderEnded: ({ state, undo }, { orderId }) => put(state, undo, 'orders', orderId, null),
  orderShort: () => undefined,
  standingSet: ({ state, undo }, { standing }) => put(state, undo, 'standing', standing.id, standing),
  standingEnded: ({ state, undo }, { standingId }) => put(state, undo, 'standing', standingId, null),
  itemsMoved: applyItemsMoved,
  portionsLeft: applyPortionsLeft,
  takenBack: applyTakenBack,
  wantedSet: applyWantedSet,
  mixesPlanned: applyMixesPlanned,
  mixesOrdered: applyMixesOrdered,
  mixDropped: applyMixDropped,
  lineWeighed: applyLineWeighed,
  mixRead: applyMixRead,
  mixMoved: applyMixMoved,
  mixFolded: applyMixFolded,
  mixEnded: applyMixEnded,
  batchPlaced: applyBatchPlaced,
  placeRead: applyPlaceRead,
  paceTaught: ({ state, undo }, { teaching }) => put(state, undo, 'teachings', teaching.doughId, teaching),
  onHandSet: applyOnHandSet,
  preparationMade: ({ state, undo }, { build }) => put(state, undo, 'builds', build.id, build),
  buildDropped: applyBuildDropped,
  piecesWeighed: ({ state, undo }, { checks }) => put(state, undo, 'checks', checks.doughId, checks),
}

function applyEvent(folding: Folding, event: Event): void {
  const apply = APPLIERS[event.type] as ((folding: Folding, event: Event) => void) | undefined
  if (apply === undefined) fail(`unknown event ${event.type}`)
  apply(folding, event)
}

/** A reading that a script posts every minute, and each line of a mix sheet, would push out what people did. */
const LEAVES_NO_TRACE: ReadonlySet<string> = new Set<ActType>(['readOven', 'readPlace', 'weighLine', 'noteImport'])

function remember({ state, undo, booked, touches }: Folding, entry: Entry): void {
  // A take-back leaves no trace: what it restored is as the command before left it, which may be taken back in turn.
  // One that closed a day, its own or a forgotten one, ends what can be taken back.
  if (entry.told.type === 'takeBack' || LEAVES_NO_TRACE.has(entry.told.type)) return
  if (entry.events.some(({ type }) => type === 'dayClosed' || type === 'dayReopened')) return
  const trace: Trace = {
    commandId: entry.commandId,
    deviceId: entry.deviceId,
    seq: entry.seq,
    atMs: entry.events[0]?.atMs ?? entry.recordedAtMs,
    told: entry.told,
    touched: touchedBy(undo).map((touched) => withoutSheet(state, touched)),
    booked,
    touches,
  }
  const kept = state.traces.length < TRACES_MAX ? state.traces : state.traces.slice(1 - TRACES_MAX)
  state.traces = [...kept, trace]
}
