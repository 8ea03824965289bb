import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { rods } from './left.ts'

/**
 * Which rods to count before the close: those that have something on the books and are not known to the piece. In the
 * set-up's order, as they stand on the rack.
 */
export function toCountAtClose(state: State, nowMs: EpochMs): readonly VarietyId[] {
  return rods(state, nowMs)
    .filter(({ forSale, cooling, within }) => forSale + cooling > 0 && within > 0)
    .map(({ varietyId }) => varietyId)
}
