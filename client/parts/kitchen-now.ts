import type { Ruler } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import { kitchenActs } from '../../shared-core/kitchen/kitchen-acts.ts'
import { kitchenQueue } from '../../shared-core/kitchen/queue.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { KitchenLook } from './kitchen-calls.ts'
import { NO_KITCHEN } from './kitchen-calls.ts'

/** A look runs the kitchen ahead, which takes milliseconds: `actsAt` dates it at each tick. */
export function kitchenLook(state: State, nowMs: EpochMs, ruler: Ruler | null): KitchenLook {
  if (state.shop === null || state.shop.kitchenStations.size === 0) return NO_KITCHEN
  return { queue: kitchenQueue(state, nowMs), acts: kitchenActs(state, nowMs, ruler) }
}
