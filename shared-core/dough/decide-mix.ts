import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { DoughCommand } from '../day/dough-commands.ts'
import type { Until } from '../day/state.ts'
import type { DoughId, MixId } from '../ids.ts'
import { outOfTime } from '../line/route.ts'
import { DEFAULT_MIXER } from '../shop/default-rules.ts'
import type { EpochMs } from '../units.ts'
import { buildsLeft } from './builds-left.ts'
import type { Build, Mix, MixStage } from './mix.ts'
import { leftOf } from './mix-left.ts'
import { hasStage, isMixBefore, mixUntil } from './mix-stages.ts'
import { frictionTaught, waterFor } from './mix-water.ts'

type Of<Type extends DoughCommand['type']> = Case<Extract<DoughCommand, { type: Type }>>

export function decideWeighLine(oneCase: Of<'weighLine'>): Decision {
  const { command, state } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  const line = mix.lines.find(({ key }) => key === command.line)
  if (line === undefined) return refuse('unknown-line')
  if ((line.weighedAtMs !== null) === command.done) return refuse('already-moved', { stage: null })
  const atMs = happenedAt(oneCase)
  const weighedAtMs = command.done ? atMs : null
  happen(oneCase, atMs, { type: 'lineWeighed', mixId: mix.id, line: line.key, weighedAtMs })
  const what = line.preparationId === null ? {} : { preparationId: line.preparationId }
  return take(oneCase, line.ingredientId === null ? what : { ingredientId: line.ingredientId })
}

/**
 * A temperature of a mix. Those from before mixing give the water; the dough's gives what the mixer warmed it by, for the
 * next ones. What is reckoned comes into the event rounded.
 */
export function decideReadMix(oneCase: Of<'readMix'>): Decision {
  const { command, state, shop } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  const atMs = happenedAt(oneCase)
  const temps = { ...mix.temps, [command.temp]: command.read }
  const read: Mix = { ...mix, temps }
  const isAfter = command.temp === 'dough' || command.temp === 'water'
  const water = isAfter ? mix.water : waterFor(state, shop, read)
  const friction = command.temp === 'dough' ? frictionTaught(state, shop, read, atMs) : null
  happen(oneCase, atMs, { type: 'mixRead', mixId: mix.id, temps, water, friction })
  return take(oneCase, { formulaId: mix.formula.id })
}

/** On to another stage, past one, or back; a mix that leaves the plan begins with it. */
export function decideMoveMix(oneCase: Of<'moveMix'>): Decision {
  const { command, state } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  if (mix.stage === 'ended') return refuse('mix-ended')
  if (mix.stage !== command.from) return refuse('already-moved', { stage: mix.stage })
  if (mix.stage === command.to) return refuse('same-place')
  if (!hasStage(mix.formula, command.to)) return refuse('not-of-formula', { name: mix.formula.name })
  moveMix(oneCase, mix, command.to)
  return take(oneCase, { formulaId: mix.formula.id, mixStage: command.to })
}

/** The fact that a mix goes to another stage, with what begins when it leaves the plan. */
export function moveMix(oneCase: Case, mix: Mix, to: Exclude<MixStage, 'planned' | 'ended'>): void {
  const { state, shop } = oneCase
  const atMs = happenedAt(oneCase, mix.sinceMs)
  const begun =
    mix.stage === 'planned'
      ? { mixer: shop.mixer?.name ?? DEFAULT_MIXER.name, builds: buildsFor(state, mix, atMs) }
      : null
  const over = isMixBefore(mix.stage, to) ? outOfTime(mix.until, atMs) : []
  const until = mixUntil(mix.formula, to, atMs)
  happen(oneCase, atMs, { type: 'mixMoved', mixId: mix.id, stage: to, until, begun, over })
}

/** The n-th fold; those before it that nobody tapped were done too. More than the formula asks for are taken. */
export function decideFoldMix(oneCase: Of<'foldMix'>): Decision {
  const { command, state } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  if (mix.stage !== 'bulk' || command.fold <= mix.folds) return refuse('already-moved', { stage: null })
  happen(oneCase, happenedAt(oneCase, mix.sinceMs), { type: 'mixFolded', mixId: mix.id, folds: command.fold })
  return take(oneCase, { formulaId: mix.formula.id, pieces: command.fold })
}

export function decideEndMix(oneCase: Of<'endMix'>): Decision {
  const { command, state } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  if (mix.stage === 'planned') return refuse('mix-not-begun')
  if (mix.stage === 'ended') return refuse('mix-ended')
  const left = leftOf(mix)
  const isLost = command.left === 'lost'
  happen(oneCase, happenedAt(oneCase, mix.sinceMs), {
    type: 'mixEnded',
    mixId: mix.id,
    lostMilligrams: isLost ? left : 0,
    spoiltMilligrams: isLost ? 0 : left,
  })
  return take(oneCase, { formulaId: mix.formula.id, milligrams: left })
}

/** Which builds go into a mix: ripe ones first, the oldest of them first; where they do not suffice, what there is. */
function buildsFor(state: Case['state'], mix: Mix, atMs: EpochMs): Mix['builds'] {
  const left = buildsLeft(state)
  const all = [...state.builds.values()].sort((one, other) => ripeFirst(one, other, atMs))
  const used = new Map<Build['id'], number>()
  for (const { preparationId, milligrams } of mix.lines) {
    let short = preparationId === null ? 0 : milligrams
    for (const build of all) {
      const got = build.preparationId === preparationId ? Math.min(short, left.get(build.id) ?? 0) : 0
      if (got === 0) continue
      short -= got
      left.set(build.id, (left.get(build.id) ?? 0) - got)
      used.set(build.id, (used.get(build.id) ?? 0) + got)
    }
  }
  return [...used].map(([buildId, milligrams]) => ({ buildId, milligrams }))
}

function ripeFirst(one: Build, other: Build, atMs: EpochMs): number {
  const isRipe = ({ earliestAtMs, latestAtMs }: Until) => earliestAtMs <= atMs && atMs <= latestAtMs
  const rank = (build: Build) => (isRipe(build.ready) ? 0 : 1)
  return rank(one) - rank(other) || one.madeAtMs - other.madeAtMs || (one.id < other.id ? -1 : 1)
}

/** Whether pieces of that dough can be of the mix that is named; null: they can, or no mix is. */
export function mixRefusal({ state, shop }: Case, doughId: DoughId, mixId: MixId | null): Decision | null {
  if (mixId === null) return null
  const mix = state.mixes.get(mixId)
  if (mix === undefined) return refuse('unknown-mix')
  const isOfIt = shop.doughs.get(doughId)?.formulaId === mix.formula.id
  return isOfIt || mix.gives.some((one) => one.doughId === doughId)
    ? null
    : refuse('other-formula', { doughId, name: mix.formula.name })
}
