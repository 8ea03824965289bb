import type { DoughId } from '../ids.ts'
import type { Account, State } from './state.ts'
import type { TableName, Touched } from './trace.ts'

/**
 * The only hand that changes a state's tables. It keeps what it replaced, for two uses: rolling an entry back when it cannot be
 * written, and take-back. Why not copy the state for each entry: a year of trading must fold in seconds.
 */
export interface Undo {
  readonly seq: number
  readonly recordedAtMs: State['recordedAtMs']
  readonly lastActAtMs: State['lastActAtMs']
  readonly shop: State['shop']
  readonly day: State['day']
  readonly lastDay: State['lastDay']
  readonly traces: State['traces']
  /** The first value before of each entity that was put. */
  readonly touched: Touched[]
  readonly accounts: { readonly doughId: DoughId; readonly before: Account | null }[]
  readonly touches: { readonly key: string; readonly before: number | null }[]
}

export function beginUndo(state: State): Undo {
  const { seq, recordedAtMs, lastActAtMs, shop, day, lastDay, traces } = state
  return { seq, recordedAtMs, lastActAtMs, shop, day, lastDay, traces, touched: [], accounts: [], touches: [] }
}

/**
 * What a command or a close replaced, to be kept: by table and id, as the tables' own order differs between a screen
 * that folded all and one that began with a snapshot. Planned changes of the set-up that took effect along with it are
 * no part of what it did.
 */
export function touchedBy({ touched }: Undo): readonly Touched[] {
  const key = ({ table, id }: Touched) => `${table} ${id}`
  return touched.filter(({ table }) => table !== 'setUps').sort((one, other) => (key(one) < key(other) ? -1 : 1))
}

/** Puts everything back as it was before the entry. */
export function undoAll(state: State, undo: Undo): void {
  for (const { table, id, before } of undo.touched) setRow(state, table, id, before)
  for (const { doughId, before } of [...undo.accounts].reverse()) {
    if (before === null) state.account.delete(doughId)
    else state.account.set(doughId, before)
  }
  for (const { key, before } of [...undo.touches].reverse()) {
    if (before === null) state.touches.delete(key)
    else state.touches.set(key, before)
  }
  const { seq, recordedAtMs, lastActAtMs, shop, day, lastDay, traces } = undo
  Object.assign(state, { seq, recordedAtMs, lastActAtMs, shop, day, lastDay, traces })
}

/** What the plan must leave out is one thing, said anew as a whole: a table of one row. */
export const FORBIDS_ROW = 'all'

export function putForbids(state: State, undo: Undo, forbids: State['forbids']): void {
  restore(state, undo, { table: 'forbids', id: FORBIDS_ROW, before: forbids })
}

type Row<Table extends TableName> = State[Table] extends Map<infer _Id, infer Value> ? Value : never

/** Replaces one entity; null removes it. */
export function put<Table extends TableName>(
  state: State,
  undo: Undo,
  table: Table,
  id: string,
  value: Row<Table> | null,
): void {
  restore(state, undo, { table, id, before: value })
}

/** Puts an entity as a trace remembers it. */
export function restore(state: State, undo: Undo, { table, id, before }: Touched): void {
  const known = undo.touched.some((step) => step.id === id && step.table === table)
  if (!known) undo.touched.push({ table, id, before: rowOf(state, table, id) })
  setRow(state, table, id, before)
}

/** Replaces a dough's account; null removes it. */
export function putAccount(state: State, undo: Undo, doughId: DoughId, account: Account | null): void {
  undo.accounts.push({ doughId, before: state.account.get(doughId) ?? null })
  if (account === null) state.account.delete(doughId)
  else state.account.set(doughId, account)
}

/** Counts pieces on to what has touched the kettle or the boards. */
export function addTouch(state: State, undo: Undo, key: string, pieces: number): void {
  const before = state.touches.get(key) ?? null
  undo.touches.push({ key, before })
  const after = (before ?? 0) + pieces
  if (after === 0) state.touches.delete(key)
  else state.touches.set(key, after)
}

function setRow(state: State, table: TableName, id: string, value: unknown): void {
  if (table === 'forbids') {
    state.forbids = value as State['forbids']
    return
  }
  const rows = rowsOf(state, table)
  if (value === null) rows.delete(id)
  else rows.set(id, value)
}

function rowOf(state: State, table: TableName, id: string): unknown {
  return table === 'forbids' ? state.forbids : (rowsOf(state, table).get(id) ?? null)
}

/** The tables differ in their types only; which entity belongs where is held by the types of `put`. */
function rowsOf(state: State, table: Exclude<TableName, 'forbids'>): Map<string, unknown> {
  return state[table] as Map<string, unknown>
}
