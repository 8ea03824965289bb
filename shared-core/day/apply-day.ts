import { closeRoom, ROOM_TABLES, reopenRoom } from '../dough/apply-close.ts'
import { withSheet } from '../dough/apply-taken-back.ts'
import type { DoughId } from '../ids.ts'
import { givenBack } from '../orders/take-back-counts.ts'
import { applySetUp } from '../shop/set-up-apply.ts'
import { closeStock, dropKept } from '../stock/apply-stock.ts'
import { halved } from '../stock/learn.ts'
import { assert, must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { EMPTY_ACCOUNT, piecesPresent } from './account.ts'
import type { ClosedDay } from './closed-day.ts'
import type { EventOf } from './events.ts'
import type { Folding } from './folding.ts'
import { book, touch } from './folding.ts'
import { sameForbids, stillAhead } from './forbids.ts'
import { put, putAccount, putForbids, restore, touchedBy } from './recorder.ts'
import type { Care } from './said.ts'
import type { State } from './state.ts'
import type { Trace } from './trace.ts'

export function applyDayOpened({ state }: Folding, event: EventOf<'dayOpened'>): void {
  state.day = { label: event.label, openedAtMs: event.atMs, noonMs: event.noonMs }
  // From here on the day before cannot be reopened.
  if (state.lastDay !== null) state.lastDay = { ...state.lastDay, before: null }
}

export function applySetUpChanged({ state }: Folding, event: EventOf<'setUpChanged'>): void {
  state.shop = applySetUp(state.shop, event.changes)
}

/** Loads that are done stay until close; the rest of the old list goes. */
export function applyLoadListSet({ state, undo }: Folding, event: EventOf<'loadListSet'>): void {
  for (const planned of [...state.planned.values()]) {
    if (!planned.done) put(state, undo, 'planned', planned.id, null)
  }
  for (const planned of event.loads) put(state, undo, 'planned', planned.id, planned)
}

/**
 * The day's account ends here; what still stands in a stage or is kept begins the next one as carried in. Today's
 * traces go: what was closed is not taken back piece by piece.
 */
export function applyDayClosed(folding: Folding, event: EventOf<'dayClosed'>): void {
  const { state, undo } = folding
  const day = state.day
  assert(day !== null, 'closing a day that is not open')
  const lastDay = state.lastDay
  const account = [...state.account].map(([doughId, before]) => ({ doughId, before })).sort(byDough)
  dropStrays(folding, event)
  closeRoom(folding, event)
  for (const stock of [...state.stock.values()]) closeStock(folding, stock)
  state.lastDay = {
    label: day.label,
    openedAtMs: day.openedAtMs,
    closedAtMs: event.atMs,
    closedOn: event.closedOn,
    account: [...state.account].map(([doughId, account]) => ({ doughId, account })).sort(byDough),
    left: event.left,
    crewMinutes: event.crewMinutes,
    before: null,
  }
  state.day = null
  for (const id of event.plannedIds) put(state, undo, 'planned', id, null)
  const forbids = stillAhead(state.forbids, event.atMs)
  if (forbids.length < state.forbids.length) putForbids(state, undo, forbids)
  for (const id of [...state.unsure.keys()]) put(state, undo, 'unsure', id, null)
  for (const id of [...state.marks.keys()]) put(state, undo, 'marks', id, null)
  for (const habit of [...state.habits.values()]) put(state, undo, 'habits', habit.varietyId, halved(habit))
  for (const id of [...state.account.keys()]) putAccount(state, undo, id, null)
  for (const [id, pieces] of piecesPresent(state)) {
    if (pieces > 0) putAccount(state, undo, id, { ...EMPTY_ACCOUNT, carriedIn: pieces })
  }
  state.traces = []
  state.lastDay = {
    ...state.lastDay,
    before: {
      touched: touchedBy(undo),
      account,
      noonMs: day.noonMs,
      ...(day.lastSlip === undefined ? {} : { lastSlip: day.lastSlip }),
      lastDay: withoutBefore(lastDay),
    },
  }
}

/** The day as it was before its close; what came since stays. */
export function applyDayReopened(folding: Folding, event: EventOf<'dayReopened'>): void {
  const { state, undo } = folding
  const { lastDay } = state
  assert(lastDay?.before != null && lastDay.label === event.label, 'reopening a day that cannot be')
  for (const touched of lastDay.before.touched) {
    // A close clears all marks: one that is there was said since, and stays.
    const isSaidSince = touched.table === 'marks' && state.marks.has(touched.id)
    if (touched.table === 'forbids' && areForbidsNew(state.forbids, touched.before, lastDay.closedAtMs)) continue
    if (!isSaidSince && !ROOM_TABLES.has(touched.table)) restore(state, undo, touched)
  }
  reopenRoom(folding, lastDay.before.touched)
  for (const id of [...state.account.keys()]) putAccount(state, undo, id, null)
  for (const { doughId, before } of lastDay.before.account) putAccount(state, undo, doughId, before)
  const { noonMs, lastSlip } = lastDay.before
  const slip = lastSlip === undefined ? {} : { lastSlip }
  state.day = { label: lastDay.label, openedAtMs: lastDay.openedAtMs, noonMs, ...slip }
  state.lastDay = lastDay.before.lastDay
  state.traces = []
}

/** What the plan must leave out was said anew since the close: another list than the close left of the one before it. */
function areForbidsNew(now: State['forbids'], before: unknown, closedAtMs: EpochMs): boolean {
  return !sameForbids(now, stillAhead(before as State['forbids'], closedAtMs))
}

/** One step back is enough: a chain of days would grow for ever. */
function withoutBefore(day: ClosedDay | null): ClosedDay | null {
  return day === null ? null : { ...day, before: null }
}

export function applyTakenBack(folding: Folding, event: EventOf<'takenBack'>): void {
  const { state, undo } = folding
  const trace = state.traces.find((one) => one.commandId === event.commandId)
  assert(trace !== undefined, `no trace of ${event.commandId}`)
  let since: readonly Trace[] = state.traces.filter(({ seq }) => seq > trace.seq)
  for (const touched of trace.touched) {
    const given = givenBack(state, touched, since)
    if (given === null) restore(state, undo, withSheet(state, touched))
    else if (given.row !== null) restore(state, undo, given.row)
    since = given?.since ?? since
  }
  for (const { doughId, column, pieces } of trace.booked) book(folding, doughId, column, -pieces)
  for (const { key, pieces } of trace.touches) touch(folding, key, -pieces)
  if (trace.touches.length > 0) forgetTouches(folding, trace)
  state.traces = [...state.traces.filter(({ seq }) => seq < trace.seq), ...since]
}

/**
 * A care that came after what is taken back counted its pieces as well: they go out of its counts too. Else as many of
 * the same, boiled since, would seem never to have touched the water.
 */
function forgetTouches({ state, undo }: Folding, trace: Trace): void {
  const isSince = ({ kind }: Care) =>
    state.traces.some(
      ({ seq, touched }) => seq > trace.seq && touched.some(({ table, id }) => table === 'cares' && id === kind),
    )
  const back = new Map<string, number>()
  for (const { key, pieces } of trace.touches) back.set(key, (back.get(key) ?? 0) + pieces)
  for (const care of [...state.cares.values()].filter(isSince)) {
    const touches = care.touches.map(([key, pieces]) => [key, Math.max(0, pieces - (back.get(key) ?? 0))] as const)
    put(state, undo, 'cares', care.kind, { ...care, touches })
  }
}

function dropStrays(folding: Folding, { batchIds, loadIds, keepIds }: EventOf<'dayClosed'>): void {
  const { state, undo } = folding
  for (const id of batchIds) {
    const batch = must(state.batches, id)
    book(folding, batch.doughId, 'unexplained', batch.pieces)
    put(state, undo, 'batches', id, null)
  }
  for (const id of loadIds) put(state, undo, 'loads', id, null)
  for (const id of keepIds) {
    for (const line of must(state.keeps, id).lines) dropKept(folding, line)
    put(state, undo, 'keeps', id, null)
  }
}

function byDough(one: { doughId: DoughId }, other: { doughId: DoughId }): number {
  return one.doughId < other.doughId ? -1 : 1
}
