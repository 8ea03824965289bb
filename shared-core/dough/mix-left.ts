import type { State } from '../day/state.ts'
import { assert } from '../support.ts'
import type { Mix } from './mix.ts'
import { doughMilligramsOf } from './scale.ts'

/**
 * Dough of a mix that is still there, in milligrams: what was mixed less what was shaped, lost, spoilt and is unexplained.
 * Of one that nobody has begun there is none.
 */
export function leftOf(mix: Mix): number {
  if (mix.mixedAtMs === null) return 0
  const gone = mix.shapedMilligrams + mix.lostMilligrams + mix.spoiltMilligrams + mix.unexplainedMilligrams
  return doughMilligramsOf(mix.lines) - gone
}

/** @throws AssertionError when dough of a mix is not accounted for, or more of a build was used than was made */
export function assertMixesAccounted({ mixes, builds }: Pick<State, 'mixes' | 'builds'>): void {
  const used = new Map<string, number>()
  for (const mix of mixes.values()) {
    const left = leftOf(mix)
    assert(left >= 0, `more dough than was mixed is gone from ${mix.id}: ${-left} mg`)
    assert(mix.stage !== 'ended' || left === 0, `${mix.id} has ended with ${left} mg left`)
    assert((mix.stage === 'planned') === (mix.mixedAtMs === null), `${mix.id} is ${mix.stage}`)
    for (const { buildId, milligrams } of mix.builds) used.set(buildId, (used.get(buildId) ?? 0) + milligrams)
  }
  for (const { id, milligrams } of builds.values()) {
    const taken = used.get(id) ?? 0
    assert(taken <= milligrams, `${taken} mg of ${milligrams} in ${id} are used`)
  }
}
