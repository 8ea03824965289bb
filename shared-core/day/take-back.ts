import { counts, madeBy, tookOf, usedBy } from '../dough/apply-taken-back.ts'
import { keptSince } from '../orders/kept-since.ts'
import { isEverybodys } from '../orders/take-back-counts.ts'
import type { DayCommand } from './commands.ts'
import type { Case, Decision } from './decision.ts'
import { happen, happenedAt, refuse, take } from './decision.ts'
import type { State } from './state.ts'
import type { Trace } from './trace.ts'

/**
 * What cannot be taken back: what ends or begins a day's account, what others have seen and planned by, and a yes to a
 * question, and readings. Each is put right by doing the next thing: opening, typing the list anew, reading again.
 */
export const NEVER_TAKEN_BACK: ReadonlySet<string> = new Set([
  'openDay',
  'closeDay',
  'reopenDay',
  'setLoadList',
  'changeSetUp',
  'dropSetUp',
  'takeUpSetUps',
  'confirmPresumed',
  'takeBack',
  'readOven',
  'readPlace',
  'weighLine',
  'noteImport',
  'takeUpOrders',
])

/**
 * Undoes one command. Allowed while everything that it touched is as it left it: the traces after it, which are kept
 * in order, must have touched none of it.
 */
export function decideTakeBack(oneCase: Case<Extract<DayCommand, { type: 'takeBack' }>>): Decision {
  const { command, state } = oneCase
  const trace = state.traces.find((one) => one.commandId === command.commandId)
  if (trace === undefined) return refuse('take-back-unknown')
  if (NEVER_TAKEN_BACK.has(trace.told.type)) return refuse('take-back-never', { type: trace.told.type })
  const after = changedSince(state, trace)
  if (after !== null)
    return refuse('take-back-changed-since', { type: after.told.type, atMs: after.atMs, commandId: after.commandId })
  happen(oneCase, happenedAt(oneCase, trace.atMs), { type: 'takenBack', commandId: trace.commandId })
  const { type: takenBack, ...what } = trace.told
  return take(oneCase, { ...what, takenBack })
}

/** The first command after a trace that touched something of it; null when it can still be taken back. */
export function changedSince(state: State, trace: Trace): Trace | null {
  const since = state.traces.filter((one) => one.seq > trace.seq)
  const own = trace.touched.filter((row) => !isEverybodys(row, since, trace))
  const keys = new Set(own.map(({ table, id }) => `${table} ${id}`))
  const used = usedBy(state, trace)
  const made = madeBy(trace)
  const isKept = keptSince(state, trace)
  const isOfIt = (one: Trace) =>
    one.touched.some(
      (row) =>
        keys.has(`${row.table} ${row.id}`) || counts(one, row, used) || tookOf(state, one, row, made) || isKept(row),
    )
  return since.find(isOfIt) ?? null
}
