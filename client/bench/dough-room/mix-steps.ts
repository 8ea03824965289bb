import type { State } from '../../../shared-core/day/state.ts'
import type { Mix, MixStage } from '../../../shared-core/dough/mix.ts'
import type { Dough, Shop } from '../../../shared-core/shop/shop.ts'

/** Stages to which a mix can be moved on. */
export type LaterStage = Exclude<MixStage, 'planned' | 'ended'>

/** The stages of a mix by its formula, in order. */
export function stagesOf({ formula }: Mix): readonly LaterStage[] {
  return [
    'mixing',
    ...(formula.restMs > 0 ? (['rest'] as const) : []),
    ...(formula.bulk === null ? [] : (['bulk'] as const)),
    ...(formula.bulk?.chill ? (['bulkChill'] as const) : []),
    'bench',
  ]
}

/** @returns null at the bench and after, where dough leaves in pieces */
export function nextStage(mix: Mix): LaterStage | null {
  const stages = stagesOf(mix)
  if (mix.stage === 'planned') return stages[0] ?? null
  return stages[stageIndex(stages, mix) + 1] ?? null
}

/** The stage before, for a touch that was wrong; null where there is none but the scale. */
export function stageBefore(mix: Mix): LaterStage | null {
  const stages = stagesOf(mix)
  return stages[stageIndex(stages, mix) - 1] ?? null
}

function stageIndex(stages: readonly MixStage[], { stage }: Mix): number {
  return stages.indexOf(stage)
}

/** Which of a day's mixes of its formula it is. @example { nth: 2, of: 3 } */
export function placeAmong(state: State, mix: Mix): { readonly nth: number; readonly of: number } {
  const same = [...state.mixes.values()]
    .filter((one) => one.formula.id === mix.formula.id && one.bakeDate === mix.bakeDate)
    .sort(inOrder)
  return { nth: same.findIndex(({ id }) => id === mix.id) + 1, of: same.length }
}

/** Begun ones first, in the order in which they were mixed. */
export function inOrder(one: Mix, other: Mix): number {
  const begun = (one.mixedAtMs ?? Number.POSITIVE_INFINITY) - (other.mixedAtMs ?? Number.POSITIVE_INFINITY)
  if (!Number.isNaN(begun) && begun !== 0) return begun
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}

/** Doughs that are shaped from a formula, in the set-up's order. */
export function doughsOf(shop: Shop, { formula }: Mix): readonly Dough[] {
  return [...shop.doughs.values()]
    .filter((dough) => !dough.retired && dough.formulaId === formula.id)
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
}
