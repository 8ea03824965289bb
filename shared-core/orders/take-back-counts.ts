import type { State } from '../day/state.ts'
import type { Touched, Trace } from '../day/trace.ts'
import type { PortionId } from '../ids.ts'
import type { PortionsLeft } from './order.ts'

/**
 * Portions and learnt times are of everybody who makes the same thing: in a rush the next one is begun before somebody sees
 * that they touched the wrong ring. So these rows alone keep no act from being taken back, but for a count of portions,
 * which has seen what was gone.
 */
export function isEverybodys(row: Touched, since: readonly Trace[], trace: Trace): boolean {
  if (row.table === 'makeTimes') return true
  return row.table === 'portions' && ![trace, ...since].some((one) => isCount(one, row))
}

function isCount({ told, touched }: Trace, row: Touched): boolean {
  return told.type === 'countPortions' && touched.some((one) => isSame(one, row))
}

function isSame(one: Touched, other: Touched): boolean {
  return one.table === other.table && one.id === other.id
}

/** What a taken-back act leaves of such a row that others have touched since, and what their traces remember of it then. */
export interface GivenBack {
  /** Null: as it is. */
  readonly row: Touched | null
  readonly since: readonly Trace[]
}

/**
 * Portions come back to what is left now; of times, what was learnt meanwhile stays.
 * @param since traces after the one that is taken back
 * @returns null: nobody else has touched it since, or it is another kind of row
 */
export function givenBack(state: State, row: Touched, since: readonly Trace[]): GivenBack | null {
  if (row.table !== 'portions' && row.table !== 'makeTimes') return null
  const next = since.flatMap(({ touched }) => touched.filter((one) => isSame(one, row)))[0]
  if (next === undefined) return null
  const now = state.portions.get(row.id as PortionId)
  if (row.table === 'makeTimes' || now === undefined) return { row: null, since }
  const portions = portionsOf(row) - portionsOf(next)
  const more = (before: unknown) => ({
    ...(before as PortionsLeft),
    portions: (before as PortionsLeft).portions + portions,
  })
  return {
    row: { ...row, before: more(now) },
    since: since.map((trace) => ({
      ...trace,
      touched: trace.touched.map((one) => (isSame(one, row) ? { ...one, before: more(one.before) } : one)),
    })),
  }
}

function portionsOf({ before }: Touched): number {
  return (before as PortionsLeft | null)?.portions ?? 0
}
