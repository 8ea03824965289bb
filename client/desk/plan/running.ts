import type { Line, Load, State } from '../../../shared-core/day/state.ts'
import { plannedId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { ShownLoad } from './wishes.ts'

/** Loads that are in the oven, in the form in which the plan's are drawn: they are there, and stay. */
export function runningLoads(state: State, shop: Shop): readonly ShownLoad[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()].map((load) => ({ key: load.id, load: asShown(load, contents.get(load.id) ?? []) }))
}

function asShown({ id, shelfId, loadedAtMs, flippedAtMs, flip, out }: Load, lines: readonly Line[]): ShownLoad['load'] {
  const outAtMs: EpochMs = out?.targetAtMs ?? loadedAtMs
  return {
    id: plannedId(id),
    shelfId,
    kettleAtMs: null,
    dips: 0,
    inAtMs: loadedAtMs,
    flipAtMs: flippedAtMs ?? flip?.targetAtMs ?? null,
    outAtMs,
    readyAtMs: outAtMs,
    lines,
    isPinned: false,
    isLast: false,
    why: [],
    contacts: [],
  }
}
