import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { DoughCommand } from '../day/dough-commands.ts'
import { SAMPLES_MAX } from '../day/dough-limits.ts'
import { milligrams } from '../shop/weight.ts'
import { mixRefusal } from './decide-mix.ts'
import { pieceMilligrams } from './scale.ts'

type Of<Type extends DoughCommand['type']> = Case<Extract<DoughCommand, { type: Type }>>

/** Where trays stand; null: nobody knows any more. */
export function decidePlaceBatch(oneCase: Of<'placeBatch'>): Decision {
  const { command, state } = oneCase
  const batch = state.batches.get(command.batchId)
  if (batch === undefined) return refuse('unknown-batch')
  if ((batch.place ?? null) === command.place) return refuse('same-place')
  happen(oneCase, happenedAt(oneCase, batch.sinceMs), { type: 'batchPlaced', batchId: batch.id, place: command.place })
  return take(oneCase, { doughId: batch.doughId, pieces: batch.pieces, text: command.place ?? '' })
}

export function decideReadPlace(oneCase: Of<'readPlace'>): Decision {
  const { place, read } = oneCase.command
  happen(oneCase, happenedAt(oneCase), { type: 'placeRead', place, read })
  return take(oneCase)
}

/** Pieces weighed at the divider, held against what one should weigh. */
export function decideWeighPieces(oneCase: Of<'weighPieces'>): Decision {
  const { command, state, shop } = oneCase
  const { doughId, mixId } = command
  if (!shop.doughs.has(doughId)) return refuse('unknown-dough', { doughId })
  const refusal = mixRefusal(oneCase, doughId, mixId)
  if (refusal !== null) return refusal
  const mix = mixId === null ? undefined : state.mixes.get(mixId)
  const given = mix?.gives.find((one) => one.doughId === doughId)?.pieceMilligrams ?? 0
  const scaledMilligrams = given > 0 ? given : pieceMilligrams(shop, doughId)
  if (scaledMilligrams === 0) return refuse('no-piece-weight', { doughId })
  const atMs = happenedAt(oneCase)
  const sample = { atMs, mixId, scaledMilligrams, milligrams: command.weights.map(milligrams) }
  const before = state.checks.get(doughId)?.samples ?? []
  happen(oneCase, atMs, {
    type: 'piecesWeighed',
    checks: { doughId, samples: [...before.slice(1 - SAMPLES_MAX), sample] },
  })
  const sum = sample.milligrams.reduce((all, one) => all + one, 0)
  const told = { doughId, pieces: sample.milligrams.length, milligrams: sum }
  return take(oneCase, mixId === null ? told : { ...told, mixId })
}
