import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { DoughCommand } from '../day/dough-commands.ts'
import { BUILDS_MAX } from '../day/dough-limits.ts'
import { buildId } from '../ids.ts'
import { milligrams } from '../shop/weight.ts'
import { untilFrom } from '../shop/windows.ts'
import { dateRefusal } from './decide-plan.ts'
import type { Build, OnHand } from './mix.ts'
import { takenSinceClose } from './on-hand.ts'
import { preparationLines } from './percents.ts'

type Of<Type extends DoughCommand['type']> = Case<Extract<DoughCommand, { type: Type }>>

/** What lies on the shelf now; without a weight it is not known any more. */
export function decideCountIngredients(oneCase: Of<'countIngredients'>): Decision {
  const { command, state, shop } = oneCase
  if (command.counts.some(({ ingredientId }) => !shop.ingredients.has(ingredientId)))
    return refuse('unknown-ingredient')
  const atMs = happenedAt(oneCase)
  const taken = takenSinceClose(state)
  const onHand = command.counts.map(({ ingredientId, weight }): OnHand => {
    if (weight === null) return { ingredientId, milligrams: 0, countedAtMs: null }
    return { ingredientId, milligrams: milligrams(weight) + (taken.get(ingredientId) ?? 0), countedAtMs: atMs }
  })
  happen(oneCase, atMs, { type: 'onHandSet', onHand })
  return take(oneCase, { pieces: onHand.length })
}

/** A delivery: so much more is there. Of what was never counted, it is all that is known. */
export function decideReceiveIngredient(oneCase: Of<'receiveIngredient'>): Decision {
  const { command, state, shop } = oneCase
  const { ingredientId, weight } = command
  if (!shop.ingredients.has(ingredientId)) return refuse('unknown-ingredient')
  const before = state.onHand.get(ingredientId)
  const known = before?.milligrams ?? takenSinceClose(state).get(ingredientId) ?? 0
  const came = milligrams(weight)
  const onHand = [{ ingredientId, milligrams: known + came, countedAtMs: before?.countedAtMs ?? null }]
  happen(oneCase, happenedAt(oneCase), { type: 'onHandSet', onHand })
  return take(oneCase, { ingredientId, milligrams: came })
}

/** So much of a preparation was begun, the seed that is kept back for the next one not counted. */
export function decideMakePreparation(oneCase: Of<'makePreparation'>): Decision {
  const { command, state, shop, context } = oneCase
  const { forDate } = command
  const preparation = shop.preparations.get(command.preparationId)
  if (preparation === undefined) return refuse('unknown-preparation')
  if (preparation.retired) return refuse('retired', { name: preparation.name })
  const refusal = forDate === null ? null : dateRefusal(forDate, context.localDate)
  if (refusal !== null) return refusal
  if (state.builds.size >= BUILDS_MAX) return refuse('too-many', { most: BUILDS_MAX })
  const atMs = happenedAt(oneCase)
  const build: Build = {
    id: buildId(oneCase.newId()),
    preparationId: preparation.id,
    madeAtMs: atMs,
    milligrams: command.milligrams,
    forDate,
    ready: untilFrom(preparation.ready, atMs),
    lines: preparationLines(preparation, command.milligrams),
    dropped: false,
  }
  happen(oneCase, atMs, { type: 'preparationMade', build })
  const told = { preparationId: preparation.id, milligrams: command.milligrams }
  return take(oneCase, forDate === null ? told : { ...told, date: forDate })
}

/** Thrown away, or gone over: none of it goes into a mix any more. What went into it stays used. */
export function decideDropBuild(oneCase: Of<'dropBuild'>): Decision {
  const { command, state } = oneCase
  const build = state.builds.get(command.buildId)
  if (build === undefined) return refuse('unknown-build')
  if (build.dropped) return refuse('already-moved', { stage: null })
  happen(oneCase, happenedAt(oneCase, build.madeAtMs), { type: 'buildDropped', buildId: build.id })
  return take(oneCase, { preparationId: build.preparationId })
}
