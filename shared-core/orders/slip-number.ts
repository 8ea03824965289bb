import type { State } from '../day/state.ts'

/** Slips are called across the room: two digits are heard. */
const SLIPS_MAX = 99

/** The number that the next slip gets: after the last one of today, and none that somebody still waits with. */
export function nextSlip(state: State): number {
  const taken = new Set([...state.orders.values()].map(({ mark }) => mark))
  const last = state.day?.lastSlip ?? 0
  for (let step = 1; step <= SLIPS_MAX; step += 1) {
    const slip = ((last + step - 1) % SLIPS_MAX) + 1
    if (!taken.has(String(slip))) return slip
  }
  // Everybody in town waits: further on rather than twice the same.
  return SLIPS_MAX + state.orders.size
}
