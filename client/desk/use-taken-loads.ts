import { useRef } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { Outcome } from './post.ts'

/**
 * How many loads a list brought, from the first state that knows the list. It stays, whatever becomes of the loads.
 * @returns null until a list was taken and this screen knows of it
 */
export function useTakenLoads(outcome: Outcome | null, state: State): number | null {
  const known = useRef<{ readonly outcome: Outcome; readonly loads: number } | null>(null)
  if (outcome?.kind === 'taken' && state.seq >= outcome.seq && known.current?.outcome !== outcome) {
    known.current = { outcome, loads: [...state.planned.values()].filter((load) => !load.done).length }
  }
  return known.current?.outcome === outcome ? (known.current?.loads ?? null) : null
}
