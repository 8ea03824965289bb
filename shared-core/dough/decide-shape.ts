import type { LineCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, take } from '../day/decision.ts'
import type { Batch } from '../day/state.ts'
import { doughRefusal } from '../line/lines.ts'
import { standing } from '../line/standing.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { mixRefusal, moveMix } from './decide-mix.ts'
import { leftOf } from './mix-left.ts'
import { pieceMilligrams } from './scale.ts'

type Shape = Case<Extract<LineCommand, { type: 'shape' }>>

/** New pieces in the account, shaped now; where a mix is named, out of its dough. */
export function decideShape(oneCase: Shape): Decision {
  const { command } = oneCase
  const { mixId, place, doughId, pieces } = command
  const refusal = doughRefusal(oneCase.shop, doughId, command.varietyId) ?? mixRefusal(oneCase, doughId, mixId ?? null)
  if (refusal !== null) return refusal
  const atMs = happenedAt(oneCase)
  const batch = {
    ...standing(oneCase, command, command.stage, atMs),
    ...(mixId === undefined ? {} : { mixId }),
    ...(place === undefined ? {} : { place }),
  }
  shapeFromMix(oneCase, batch, atMs)
  return take(oneCase, mixId === undefined ? { doughId, pieces } : { doughId, pieces, mixId })
}

/**
 * Pieces shaped, out of a mix where one is named: its dough is on the bench by then, whatever was tapped. More than was
 * left is taken all the same and booked as unexplained; with the last pieces the mix ends, and what is left was lost.
 */
function shapeFromMix(oneCase: Shape, batch: Batch, atMs: EpochMs): void {
  const { command, state, shop } = oneCase
  if (command.mixId === undefined) {
    happen(oneCase, atMs, { type: 'piecesShaped', batch })
    return
  }
  const mix = must(state.mixes, command.mixId)
  const { id, stage } = mix
  if (stage !== 'bench' && stage !== 'ended') moveMix(oneCase, mix, 'bench')
  const given = mix.gives.find(({ doughId }) => doughId === batch.doughId)?.pieceMilligrams ?? 0
  const milligrams = batch.pieces * (given > 0 ? given : pieceMilligrams(shop, batch.doughId))
  // What a mix that is only now begun holds is known from its sheet.
  const left = leftOf({ ...mix, mixedAtMs: mix.mixedAtMs ?? atMs })
  const after = Math.max(0, left - milligrams)
  const from = { mixId: id, milligrams, unexplainedMilligrams: left - milligrams - after }
  happen(oneCase, atMs, { type: 'piecesShaped', batch, from })
  if (command.isLast !== true || stage === 'ended') return
  happen(oneCase, atMs, { type: 'mixEnded', mixId: id, lostMilligrams: after, spoiltMilligrams: 0 })
}
