import type { LineCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, raise, refuse, take } from '../day/decision.ts'
import type { Line, Load } from '../day/state.ts'
import type { LoadId, ShelfId } from '../ids.ts'
import { batchId, loadId } from '../ids.ts'
import { isAdvised } from '../live/plan.ts'
import { keepForOrders } from '../orders/keep-for-orders.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { clampMs, later } from '../units.ts'
import { bookFound, gather, raisePresumed } from './gather.ts'
import { lineRefusal, piecesOf, wantOf } from './lines.ts'
import {
  batchesOf,
  coolMsOf,
  inOven,
  overLimits,
  putBack,
  raiseOverShelf,
  reopenShelf,
  takeFromPool,
  takeLines,
  takenRefusal,
  timesOf,
  varietyOf,
  wholly,
} from './load-parts.ts'
import { outOfTime } from './route.ts'

type Of<Type extends LineCommand['type']> = Case<Extract<LineCommand, { type: Type }>>

/**
 * The first of a load's three touches. All that must have come before it is presumed: pieces are taken from wherever
 * on the line they stand, and what nobody knew of is found.
 */
export function decideLoad(oneCase: Of<'load'>): Decision {
  const { command, shop, state } = oneCase
  const shelf = shop.shelves.get(command.shelfId)
  if (shelf === undefined) return refuse('unknown-shelf', { shelfId: command.shelfId })
  if (shelf.retired) return refuse('retired', { shelfId: shelf.id })
  const refusal = lineRefusal(shop, command.lines) ?? takenRefusal(oneCase, shelf.id) ?? plannedRefusal(oneCase)
  if (refusal !== null) return refusal

  const wants = command.lines.map((line) => wantOf(shop, line))
  const gathered = gather(oneCase, wants, 'oven')
  const atMs = happenedAt(oneCase, ...gathered.sinceMs)
  const takes = bookFound(oneCase, wants, gathered, atMs)
  const load = newLoad(oneCase, { shelfId: shelf.id, lines: command.lines, atMs })
  const filling = { shelf, lines: command.lines, atMs }
  const over = overLimits(oneCase, { ...filling, replaces: null })
  const puts = wants.map((want) => inOven(oneCase, want, load.id, atMs))
  happen(oneCase, atMs, {
    type: 'loaded',
    load,
    takes: takes.flat(),
    puts,
    presumed: gathered.presumed,
    over: [...over, ...gathered.over(atMs)],
  })
  const planned = command.plannedId === null ? undefined : state.planned.get(command.plannedId)
  if (planned !== undefined) happen(oneCase, atMs, { type: 'plannedDone', planned: { ...planned, done: true } })
  reopenShelf(oneCase, shelf.id, atMs)
  raisePresumed(oneCase, gathered.presumed, atMs)
  raiseOverShelf(oneCase, { ...filling, over })
  return take(oneCase, { shelfId: shelf.id, lines: command.lines })
}

/** "Differs", said after the load tap: the contents are put right while they bake. */
export function decideChangeLoad(oneCase: Of<'changeLoad'>): Decision {
  const { command, shop, state } = oneCase
  const load = state.loads.get(command.loadId)
  if (load === undefined) return goneRefusal(oneCase, command.loadId)
  const refusal = lineRefusal(shop, command.lines)
  if (refusal !== null) return refusal

  const atMs = happenedAt(oneCase, load.flippedAtMs ?? load.loadedAtMs)
  const filling = { shelf: must(shop.shelves, load.shelfId), lines: command.lines, atMs }
  const over = overLimits(oneCase, { ...filling, replaces: load })
  const inside = batchesOf(state, load.id)
  const wants = command.lines.map((line) => wantOf(shop, line))
  const pool = new Map(inside.map((batch) => [batch.id, batch.pieces]))
  const covered = wants.map((want) => takeFromPool(pool, inside, want.doughId, want.pieces))
  const more = wants.map((want, index) => ({ ...want, pieces: want.pieces - (covered[index] ?? 0) }))
  const gathered = gather(oneCase, more, 'oven')
  const outside = bookFound(oneCase, more, gathered, atMs).flat()
  const back = inside.flatMap((batch) => putBack(oneCase, batch, pool.get(batch.id) ?? 0, atMs))
  const puts = [...wants.map((want) => inOven(oneCase, want, load.id, load.loadedAtMs)), ...back]
  const changed = { ...load, ...timesOf(oneCase, command.lines, load.loadedAtMs) }
  happen(oneCase, atMs, {
    type: 'loadChanged',
    load: changed,
    takes: [...inside.map(wholly), ...outside],
    puts,
    presumed: gathered.presumed,
    over,
  })
  raisePresumed(oneCase, gathered.presumed, atMs)
  raiseOverShelf(oneCase, { ...filling, over })
  return take(oneCase, { shelfId: load.shelfId, lines: command.lines })
}

export function decideFlip(oneCase: Of<'flip'>): Decision {
  const { command, state } = oneCase
  const load = state.loads.get(command.loadId)
  if (load === undefined) return goneRefusal(oneCase, command.loadId)
  if (load.phase === 'second-side') return refuse('already-flipped', { shelfId: load.shelfId })
  if (load.flip === null) return refuse('nothing-to-flip', { shelfId: load.shelfId })
  flip(oneCase, load, { presumed: false, atMs: happenedAt(oneCase, load.loadedAtMs) })
  return take(oneCase, { shelfId: load.shelfId })
}

/** All of a load, or some of it by colour. A flip that nobody tapped is presumed at the time it was due. */
export function decideOut(oneCase: Of<'out'>): Decision {
  const { command, shop, state } = oneCase
  const load = state.loads.get(command.loadId)
  if (load === undefined) return goneRefusal(oneCase, command.loadId)
  if (load.phase !== command.from) return refuse('already-flipped', { shelfId: load.shelfId })
  const inside = batchesOf(state, load.id)
  const takes = command.lines === null ? inside.map(wholly) : takeLines(inside, command.lines)
  if (takes === null) return refuse('too-few', { pieces: piecesOf(inside) })

  const atMs = happenedAt(oneCase, load.flippedAtMs ?? load.loadedAtMs)
  const isUnflipped = load.phase === 'first-side' && load.flip !== null
  const flippedAtMs = isUnflipped ? clampMs(load.flip.targetAtMs, load.loadedAtMs, atMs) : load.flippedAtMs
  if (isUnflipped) flip(oneCase, load, { presumed: true, atMs: flippedAtMs ?? atMs })
  const lots = takes.map(({ batchId: id, pieces }) => {
    const batch = must(state.batches, id)
    const readyAtMs = later(atMs, coolMsOf(oneCase, batch))
    const lot = { id: batchId(oneCase.newId()), pieces, outAtMs: atMs, readyAtMs }
    return { varietyId: varietyOf(batch), doughId: batch.doughId, lot }
  })
  const last = piecesOf(takes) === piecesOf(inside)
  const wetAtMs = load.boardsWetAtMs ?? later(flippedAtMs ?? atMs, shop.boards.rewetMs)
  happen(oneCase, atMs, {
    type: 'out',
    loadId: load.id,
    takes,
    lots,
    boardsWetAtMs: wetAtMs,
    last,
    over: outOfTime(load.out, atMs),
  })
  keepForOrders(oneCase, lots, atMs)
  return take(oneCase, { shelfId: load.shelfId, pieces: piecesOf(takes) })
}

/** Another shelf, a side back or on, or all of it back onto boards. */
export function decideMoveLoad(oneCase: Of<'moveLoad'>): Decision {
  const { command, shop, state } = oneCase
  const load = state.loads.get(command.loadId)
  if (load === undefined) return goneRefusal(oneCase, command.loadId)
  if (load.phase !== command.from) return refuse('already-flipped', { shelfId: load.shelfId })
  const shelf = shop.shelves.get(command.shelfId)
  if (shelf === undefined) return refuse('unknown-shelf', { shelfId: command.shelfId })
  const atMs = happenedAt(oneCase, load.flippedAtMs ?? load.loadedAtMs)
  const inside = batchesOf(state, load.id)
  if (command.to === 'boards') {
    const puts = inside.flatMap((batch) => putBack(oneCase, batch, batch.pieces, atMs))
    happen(oneCase, atMs, { type: 'loadUndone', loadId: load.id, takes: inside.map(wholly), puts })
    return take(oneCase, { shelfId: load.shelfId })
  }
  if (command.to === load.phase && shelf.id === load.shelfId) return refuse('same-place', { shelfId: shelf.id })
  if (shelf.id !== load.shelfId) {
    if (shelf.retired) return refuse('retired', { shelfId: shelf.id })
    const refusal = takenRefusal(oneCase, shelf.id)
    if (refusal !== null) return refusal
  }
  const lines = inside.map((batch) => ({ varietyId: varietyOf(batch), pieces: batch.pieces }))
  const over = overLimits(oneCase, { shelf, lines, atMs, replaces: load })
  const moved: Load = { ...load, shelfId: shelf.id, ...phaseFields(oneCase, load, command.to, atMs) }
  happen(oneCase, atMs, { type: 'loadMoved', load: moved, fromShelfId: load.shelfId, over })
  if (shelf.id !== load.shelfId) reopenShelf(oneCase, shelf.id, atMs)
  raiseOverShelf(oneCase, { shelf, lines, atMs, over })
  return take(oneCase, { shelfId: shelf.id })
}

function phaseFields({ shop }: Case, load: Load, to: Load['phase'], atMs: EpochMs): Partial<Load> {
  if (to === load.phase) return {}
  if (to === 'first-side') return { phase: to, flippedAtMs: null, boardsWetAtMs: null }
  return { phase: to, flippedAtMs: atMs, boardsWetAtMs: later(atMs, shop.boards.rewetMs) }
}

function flip(oneCase: Case, load: Load, { presumed, atMs }: { presumed: boolean; atMs: EpochMs }): void {
  const boardsWetAtMs = later(atMs, oneCase.shop.boards.rewetMs)
  const over = presumed ? [] : outOfTime(load.flip, atMs)
  happen(oneCase, atMs, { type: 'flipped', loadId: load.id, presumed, boardsWetAtMs, over })
  if (!presumed) return
  const [first] = batchesOf(oneCase.state, load.id)
  if (first === undefined) return
  const pieces = piecesOf(batchesOf(oneCase.state, load.id))
  if (oneCase.tapped.has('flip'))
    raise(oneCase, atMs, { kind: 'presumed', act: 'flip', doughId: first.doughId, pieces })
}

function newLoad(
  oneCase: Case,
  { shelfId, lines, atMs }: { shelfId: ShelfId; lines: readonly Line[]; atMs: EpochMs },
): Load {
  const { command } = oneCase
  return {
    id: loadId(oneCase.newId()),
    shelfId,
    phase: 'first-side',
    loadedAtMs: atMs,
    flippedAtMs: null,
    boardsWetAtMs: null,
    plannedId: command.type === 'load' ? command.plannedId : null,
    ...timesOf(oneCase, lines, atMs),
  }
}

function plannedRefusal({ state, command }: Of<'load'>): Decision | null {
  if (command.plannedId === null) return null
  const planned = state.planned.get(command.plannedId)
  // An advised load is in no list: its id says which advice was followed.
  if (planned === undefined) return isAdvised(command.plannedId) ? null : refuse('unknown-planned')
  return planned.done ? refuse('already-loaded', { shelfId: command.shelfId, atMs: null }) : null
}

/** A load that is not there came out already, unless nobody remembers one of that name. */
function goneRefusal({ state }: Case, id: LoadId): Decision {
  const trace = state.traces.find(({ touched }) => touched.some((one) => one.table === 'loads' && one.id === id))
  return trace === undefined ? refuse('unknown-load') : refuse('already-out', { shelfId: trace.told.shelfId ?? null })
}
