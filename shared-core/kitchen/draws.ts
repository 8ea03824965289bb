import type { State } from '../day/state.ts'
import { Chance } from '../plan/bake-off/chance.ts'
import type { Kitchen, KitchenItem, Taking } from './model.ts'
import { keyOf } from './model.ts'
import { ovenPace } from './oven-pace.ts'
import { stepTimes, timeAt, timeLeftAt } from './step-times.ts'

/**
 * Times drawn for so many runs of a kitchen. Each part has its runs spread evenly over its times, in an order drawn by
 * the part's own name: the same part draws the same in every quote, whatever else is asked (common random numbers), and
 * few runs cover all of its times (Latin hypercube sampling; McKay, Beckman and Conover 1979).
 */
export function drawsOf(state: State, kitchen: Kitchen, runs: number): (run: number) => Taking {
  const pace = ovenPace(state, kitchen.nowMs)
  const drawn = new Map<string, readonly number[]>()
  const of = (one: KitchenItem, step: number): readonly number[] => {
    const key = keyOf(one, step)
    const known = drawn.get(key)
    if (known !== undefined) return known
    const made = timesOf({ state, kitchen, pace, runs }, one, step)
    drawn.set(key, made)
    return made
  }
  return (run) => ({
    stepMs: (one, step) => of(one, step)[run] ?? 0,
    leftMs: (one) => of(one, one.step)[run] ?? 0,
  })
}

interface Drawing {
  readonly state: State
  readonly kitchen: Kitchen
  readonly pace: number
  readonly runs: number
}

/** Of the part that is begun: what is left of it. */
function timesOf({ state, kitchen, pace, runs }: Drawing, one: KitchenItem, step: number): readonly number[] {
  const { oven = null, takesMs = 0, begunAtMs = null } = one.item.steps[step] ?? {}
  const times = stepTimes(state, { itemId: one.item.itemId, step, takesMs, isOven: oven !== null })
  const factor = oven === null ? 1 : pace
  return shuffled(runs, keyOf(one, step)).map((stratum) => {
    const share = (stratum + 0.5) / runs
    if (begunAtMs === null) return factor * timeAt(times, share)
    return factor * timeLeftAt(times, (kitchen.nowMs - begunAtMs) / factor, share)
  })
}

/** 0 … count − 1 in an order that the name alone decides. */
function shuffled(count: number, name: string): readonly number[] {
  const chance = new Chance(hashOf(name))
  const all = Array.from({ length: count }, (_, at) => at)
  for (let at = count - 1; at > 0; at -= 1) {
    const other = chance.index(at + 1)
    const kept = all[at] ?? 0
    all[at] = all[other] ?? 0
    all[other] = kept
  }
  return all
}

/** FNV-1a, 32 bits. Source: Fowler, Noll and Vo; IETF draft-eastlake-fnv. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  return hash | 0
}
