import type { EventOf } from '../day/events.ts'
import type { Folding } from '../day/folding.ts'
import { put, restore } from '../day/recorder.ts'
import type { State } from '../day/state.ts'
import type { TableName, Touched } from '../day/trace.ts'
import { must } from '../support.ts'
import { putOnHand } from './apply-dough.ts'
import type { Build } from './mix.ts'
import { takenSinceClose } from './on-hand.ts'

/** What leaves the dough room with a day: what was wanted up to it too. */
export function closeRoom(folding: Folding, { mixIds, buildIds, onHand, closedOn }: EventOf<'dayClosed'>): void {
  const { state, undo } = folding
  for (const id of buildIds) put(state, undo, 'builds', id, null)
  for (const id of mixIds) {
    for (const { buildId, milligrams } of must(state.mixes, id).builds) {
      const build = state.builds.get(buildId)
      // What a mix took of it would be forgotten with the mix, and be there again.
      if (build !== undefined)
        put(state, undo, 'builds', buildId, { ...build, milligrams: build.milligrams - milligrams })
    }
    put(state, undo, 'mixes', id, null)
  }
  for (const one of onHand) putOnHand(folding, one)
  for (const date of [...state.wanted.keys()]) if (date <= closedOn) put(state, undo, 'wanted', date, null)
}

/** Tables whose rows a reopening puts back with what was said since the close (`reopenRoom`). */
export const ROOM_TABLES: ReadonlySet<TableName> = new Set<TableName>(['wanted', 'mixes', 'builds', 'onHand'])

/**
 * What a close cleared out of the dough room comes back, with what was said since: a day's list typed anew stays, as does
 * a build thrown away, a count or a delivery. What the day's mixes took stands in the state again, so it goes back on hand.
 */
export function reopenRoom({ state, undo }: Folding, touched: readonly Touched[]): void {
  const back = takenSinceClose({ mixes: goneOf(state, touched, 'mixes'), builds: goneOf(state, touched, 'builds') })
  for (const one of touched) {
    const { table, id } = one
    if (table === 'mixes' || (table === 'wanted' && !state.wanted.has(id))) restore(state, undo, one)
    if (table === 'builds') {
      const before = one.before as Build
      const dropped = state.builds.get(before.id)?.dropped ?? before.dropped
      restore(state, undo, { ...one, before: { ...before, dropped } })
    }
  }
  // Rows that came since know nothing of what those mixes took either.
  for (const now of [...state.onHand.values()]) {
    const milligrams = now.milligrams + (back.get(now.ingredientId) ?? 0)
    if (milligrams !== now.milligrams) put(state, undo, 'onHand', now.ingredientId, { ...now, milligrams })
  }
}

/** What a close took out altogether; a build of which mixes used a part was only changed. */
function goneOf<Table extends 'mixes' | 'builds'>(
  state: State,
  touched: readonly Touched[],
  table: Table,
): State[Table] {
  const rows = touched.filter((one) => one.table === table && ![...state[table].keys()].some((id) => id === one.id))
  return new Map(rows.map(({ id, before }) => [id, before])) as unknown as State[Table]
}
