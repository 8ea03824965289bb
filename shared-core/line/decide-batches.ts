import type { LineCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { Batch, Line } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { BatchStage } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { boardsNeeded, boardsNow } from './boards.ts'
import { carriedOn, taken } from './carried-on.ts'
import type { Want } from './gather.ts'
import { bookFound, gather, raisePresumed } from './gather.ts'
import { doughRefusal, lineRefusal, wantOf } from './lines.ts'
import { byId } from './load-parts.ts'
import { outOfTime } from './route.ts'
import { standing } from './standing.ts'

type Of<Type extends LineCommand['type']> = Case<Extract<LineCommand, { type: Type }>>

/** Pieces that were there before the board was: trays found in the cooler on the first morning. */
export function decideCarryIn(oneCase: Of<'carryIn'>): Decision {
  const { command, context } = oneCase
  const refusal = doughRefusal(oneCase.shop, command.doughId, command.varietyId)
  if (refusal !== null) return refusal
  const atMs = happenedAt(oneCase)
  const sinceMs = command.sinceMs !== null && command.sinceMs < context.nowMs ? command.sinceMs : atMs
  happen(oneCase, atMs, { type: 'piecesCarriedIn', batch: standing(oneCase, command, command.stage, sinceMs) })
  return take(oneCase, { doughId: command.doughId, pieces: command.pieces })
}

/** Out of the cooler, onto the rack: the oldest window first. */
export function decidePull(oneCase: Of<'pull'>): Decision {
  const { command, shop } = oneCase
  const refusal = doughRefusal(oneCase.shop, command.doughId, command.varietyId)
  if (refusal !== null) return refusal
  if (shop.doughs.get(command.doughId)?.route.includes('rack') !== true) {
    return refuse('not-on-route', { doughId: command.doughId, stage: 'rack' })
  }
  moveTo(oneCase, command, 'rack')
  return take(oneCase, { doughId: command.doughId, pieces: command.pieces })
}

/** Into the kettle. What is still in it must have been lifted: the next dip says so. */
export function decideDip(oneCase: Of<'dip'>): Decision {
  const { command, shop, state } = oneCase
  const refusal = doughRefusal(oneCase.shop, command.doughId, command.varietyId)
  if (refusal !== null) return refusal
  if (shop.doughs.get(command.doughId)?.route.includes('kettle') !== true) {
    return refuse('not-on-route', { doughId: command.doughId, stage: 'kettle' })
  }
  for (const batch of [...state.batches.values()].sort(byId)) {
    if (batch.stage !== 'kettle') continue
    const atMs = happenedAt(oneCase, batch.sinceMs)
    const presumed = [{ act: 'lift', doughId: batch.doughId, pieces: batch.pieces }] as const
    const on = carriedOn(state, [batch], 'boards', atMs)
    const put = { ...standing(oneCase, batch, 'boards', atMs), ...on, presumed: true }
    happen(oneCase, atMs, {
      type: 'batchMoved',
      takes: [{ batchId: batch.id, pieces: batch.pieces }],
      put,
      presumed,
      over: [],
    })
    raisePresumed(oneCase, presumed, atMs)
  }
  moveTo(oneCase, command, 'kettle')
  return take(oneCase, { doughId: command.doughId, pieces: command.pieces })
}

export function decideLift(oneCase: Of<'lift'>): Decision {
  const { command, state } = oneCase
  const batch = state.batches.get(command.batchId)
  if (batch === undefined || batch.stage !== 'kettle') return refuse('already-moved', { stage: batch?.stage ?? null })
  moveBatch(oneCase, batch, batch.pieces, 'boards')
  return take(oneCase, { doughId: batch.doughId, pieces: batch.pieces })
}

/** Says what the pieces on the boards become: here plain dough turns into Sesame and Poppy. */
export function decideBoard(oneCase: Of<'board'>): Decision {
  const { command, shop } = oneCase
  const refusal = lineRefusal(shop, command.lines)
  if (refusal !== null) return refusal
  const wants = command.lines.map((line) => wantOf(shop, line))
  const gathered = gather(oneCase, wants, 'boards')
  const atMs = happenedAt(oneCase, ...gathered.sinceMs)
  const takes = bookFound(oneCase, wants, gathered, atMs)
  wants.forEach((want, index) => {
    happen(oneCase, atMs, {
      type: 'batchMoved',
      takes: takes[index] ?? [],
      put: {
        ...standing(oneCase, want, 'boards', atMs),
        ...carriedOn(oneCase.state, taken(oneCase.state, takes[index] ?? []), 'boards', atMs),
      },
      presumed: index === 0 ? gathered.presumed : [],
      over: overBoards(oneCase, command.lines, atMs, gathered.over(atMs)),
    })
  })
  raisePresumed(oneCase, gathered.presumed, atMs)
  return take(oneCase, { lines: command.lines })
}

/** One stage to another by hand: on, back, or past one. A part of the pieces splits the batch. */
export function decideMoveBatch(oneCase: Of<'moveBatch'>): Decision {
  const { command, state, shop } = oneCase
  const batch = state.batches.get(command.batchId)
  if (batch === undefined) return refuse('unknown-batch')
  if (batch.stage !== command.from) return refuse('already-moved', { stage: batch.stage })
  if (batch.stage === 'oven') return refuse('not-on-route', { doughId: batch.doughId, stage: command.to })
  if (command.to === batch.stage) return refuse('same-place', { stage: batch.stage })
  if (command.pieces > batch.pieces) return refuse('too-few', { pieces: batch.pieces })
  if (shop.doughs.get(batch.doughId)?.route.includes(command.to) !== true) {
    return refuse('not-on-route', { doughId: batch.doughId, stage: command.to })
  }
  moveBatch(oneCase, batch, command.pieces, command.to)
  return take(oneCase, { doughId: batch.doughId, pieces: command.pieces })
}

/** Dropped or spoiled, at any stage before sale. A load of which nothing is left is gone too. */
export function decideWasteBatch(oneCase: Of<'wasteBatch'>): Decision {
  const { command, state } = oneCase
  const batch = state.batches.get(command.batchId)
  if (batch === undefined) return refuse('unknown-batch')
  if (batch.stage !== command.from) return refuse('already-moved', { stage: batch.stage })
  if (command.pieces > batch.pieces) return refuse('too-few', { pieces: batch.pieces })
  const atMs = happenedAt(oneCase, batch.sinceMs)
  const waste = { batchId: batch.id, pieces: command.pieces }
  happen(oneCase, atMs, { type: 'batchWasted', take: waste, doughId: batch.doughId })
  const rest = [...state.batches.values()].filter((other) => other.loadId === batch.loadId && other.id !== batch.id)
  if (batch.loadId !== null && rest.length === 0 && command.pieces === batch.pieces) {
    happen(oneCase, atMs, { type: 'loadUndone', loadId: batch.loadId, takes: [], puts: [] })
  }
  return take(oneCase, { doughId: batch.doughId, pieces: command.pieces })
}

export function decideConfirmPresumed(oneCase: Of<'confirmPresumed'>): Decision {
  const { command, state } = oneCase
  const known = command.unsureIds.filter((id) => state.unsure.has(id))
  if (known.length === 0) return refuse('already-confirmed')
  happen(oneCase, happenedAt(oneCase), { type: 'unsureSettled', unsureIds: known })
  return take(oneCase)
}

function moveTo(oneCase: Of<'pull' | 'dip'>, want: Want, to: 'rack' | 'kettle'): void {
  const gathered = gather(oneCase, [want], to)
  const atMs = happenedAt(oneCase, ...gathered.sinceMs)
  const [takes = []] = bookFound(oneCase, [want], gathered, atMs)
  const tooMany = to === 'kettle' && want.pieces > oneCase.shop.kettle.pieces
  happen(oneCase, atMs, {
    type: 'batchMoved',
    takes,
    put: {
      ...standing(oneCase, want, to, atMs),
      ...carriedOn(oneCase.state, taken(oneCase.state, takes), to, atMs),
    },
    presumed: gathered.presumed,
    over: tooMany ? ['kettle', ...gathered.over(atMs)] : gathered.over(atMs),
  })
  raisePresumed(oneCase, gathered.presumed, atMs)
}

function moveBatch(oneCase: Case, batch: Batch, pieces: number, to: Exclude<BatchStage, 'oven'>): void {
  const atMs = happenedAt(oneCase, batch.sinceMs)
  happen(oneCase, atMs, {
    type: 'batchMoved',
    takes: [{ batchId: batch.id, pieces }],
    put: { ...standing(oneCase, { ...batch, pieces }, to, atMs), ...carriedOn(oneCase.state, [batch], to, atMs) },
    presumed: [],
    over: outOfTime(untilOf(oneCase.state, batch), atMs),
  })
}

function overBoards<Over extends string>(
  oneCase: Case,
  lines: readonly Line[],
  atMs: EpochMs,
  over: readonly Over[],
): readonly (Over | 'boards')[] {
  const { free } = boardsNow(oneCase.state, atMs)
  return boardsNeeded(oneCase.shop, lines) > free ? ['boards', ...over] : over
}
