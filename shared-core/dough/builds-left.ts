import type { State } from '../day/state.ts'
import type { BuildId } from '../ids.ts'

/** What mixes may still take of each build, in milligrams; nothing of one that was thrown away. */
export function buildsLeft({ mixes, builds }: Pick<State, 'mixes' | 'builds'>): Map<BuildId, number> {
  const left = new Map([...builds.values()].map(({ id, milligrams, dropped }) => [id, dropped ? 0 : milligrams]))
  for (const mix of mixes.values()) {
    for (const { buildId, milligrams } of mix.builds)
      left.set(buildId, Math.max(0, (left.get(buildId) ?? 0) - milligrams))
  }
  return left
}
