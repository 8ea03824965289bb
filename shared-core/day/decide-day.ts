import { plannedId } from '../ids.ts'
import { lineRefusal, piecesOf } from '../line/lines.ts'
import { applySetUp, isWholeSetUp } from '../shop/set-up-apply.ts'
import { shopMisfits } from '../shop/set-up-rules.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { Ask } from './answers.ts'
import type { Command, DayCommand } from './commands.ts'
import type { Case, Context, Decision } from './decision.ts'
import { askFor, happen, happenedAt, refuse, take } from './decision.ts'
import type { Fact } from './events.ts'
import { labelOf } from './label.ts'
import type { Day, PlannedLoad, State } from './state.ts'
import { straysOf } from './strays.ts'

type Of<Type extends DayCommand['type']> = Case<Extract<DayCommand, { type: Type }>>

export function decideOpenDay(oneCase: Of<'openDay'>): Decision {
  const { state, context } = oneCase
  if (state.day !== null) return refuse('already-open', { label: state.day.label })
  const label = labelOf(context.localDate, state.lastDay?.closedOn ?? null)
  happen(oneCase, happenedAt(oneCase), { type: 'dayOpened', label })
  return take(oneCase)
}

/** Ends the day's account. What is left for sale becomes day-old; what is in the cooler goes on. */
export function decideCloseDay(oneCase: Of<'closeDay'>): Decision {
  const { command, state } = oneCase
  if (state.day === null || (command.label ?? state.day.label) !== state.day.label) return refuse('day-not-open')
  const onTheLine = [...state.batches.values()].filter(
    ({ stage }) => stage === 'kettle' || stage === 'boards' || stage === 'oven',
  )
  const pieces = piecesOf(onTheLine)
  const asked = askFor(command, pieces > 0 ? [{ code: 'line-not-empty', params: { pieces } }] : [])
  if (asked !== null) return asked
  const atMs = happenedAt(oneCase, state.day.openedAtMs)
  happen(oneCase, atMs, dayClosed(state, state.day, { atMs, closedOn: oneCase.context.localDate, isForgotten: false }))
  return take(oneCase)
}

/** The fact that a day is closed: what is left, what is written off, which loads of the list were its own. */
export function dayClosed(
  state: State,
  day: Day,
  { atMs, closedOn, isForgotten }: { atMs: EpochMs; closedOn: string; isForgotten: boolean },
): Fact {
  const left = [...state.stock.values()]
    .map(({ varietyId, lots }) => ({ varietyId, pieces: piecesOf(lots) }))
    .filter((line) => line.pieces > 0)
    .sort((one, other) => (one.varietyId < other.varietyId ? -1 : 1))
  // A list for tomorrow may have been typed before the close, by its times; one without times, only if nobody closed.
  const isOver = ({ done, inAtMs }: PlannedLoad) => done || (inAtMs === null ? !isForgotten : inAtMs <= atMs)
  const plannedIds = [...state.planned.values()].filter(isOver).map(({ id }) => id)
  return { type: 'dayClosed', closedOn, left, plannedIds, ...straysOf(state, day, atMs) }
}

/** Replaces the loads that are still to come; those that are done stay. */
export function decideSetLoadList(oneCase: Of<'setLoadList'>): Decision {
  const { command, shop } = oneCase
  for (const { shelfId, lines } of command.loads) {
    if (shelfId !== null && !shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
    const refusal = lineRefusal(shop, lines)
    if (refusal !== null) return refusal
  }
  const loads = command.loads.map(
    (load, order): PlannedLoad => ({ id: plannedId(oneCase.newId()), order, ...load, done: false }),
  )
  happen(oneCase, happenedAt(oneCase), { type: 'loadListSet', loads })
  return take(oneCase, { pieces: loads.length })
}

export function decideSkipPlanned(oneCase: Of<'skipPlanned'>): Decision {
  const { command, state } = oneCase
  const planned = state.planned.get(command.plannedId)
  if (planned === undefined) return refuse('unknown-planned')
  if (planned.done) return refuse('already-loaded', { shelfId: planned.shelfId, atMs: null })
  happen(oneCase, happenedAt(oneCase), { type: 'plannedDone', planned: { ...planned, done: true } })
  return take(oneCase, { lines: planned.lines })
}

/** The only command that an empty shop takes. What is running keeps the targets it began with. */
export function decideChangeSetUp(
  state: State,
  command: Extract<Command, { type: 'changeSetUp' }>,
  context: Context,
): Decision {
  if (state.shop === null && !isWholeSetUp(command.changes)) return refuse('set-up-mismatch', { id: null })
  const shop = applySetUp(state.shop, command.changes)
  const [misfit] = [...doughMoved(state.shop, shop), ...shopMisfits(shop)]
  if (misfit !== undefined) return refuse('set-up-mismatch', { id: misfit.id })
  const asked = askFor(command, retiredInUse(state, shop))
  if (asked !== null) return asked
  const atMs = context.nowMs
  const events = [{ v: 1, atMs, type: 'setUpChanged', changes: command.changes } as const]
  return { kind: 'taken', events, told: { type: 'changeSetUp', pieces: command.changes.length } }
}

/**
 * Varieties that would be of another dough. Their pieces are booked by dough, today's and all before: a variety of
 * another dough is a new one.
 */
function doughMoved(before: Shop | null, after: Shop): readonly { readonly id: string }[] {
  const known = [...(before?.varieties.values() ?? [])]
  return known.filter(({ id, doughId }) => after.varieties.get(id)?.doughId !== doughId)
}

function retiredInUse(state: State, shop: Shop): readonly Ask[] {
  const inUse = new Map<string, number>()
  const count = (id: string, pieces: number) => inUse.set(id, (inUse.get(id) ?? 0) + pieces)
  for (const batch of state.batches.values()) {
    count(batch.doughId, batch.pieces)
    const shelfId = batch.loadId === null ? undefined : state.loads.get(batch.loadId)?.shelfId
    if (shelfId !== undefined) count(shelfId, batch.pieces)
  }
  for (const stock of state.stock.values()) count(stock.varietyId, piecesOf(stock.lots) + stock.kept)
  const before = state.shop
  const newlyRetired = [...shop.doughs.values(), ...shop.varieties.values(), ...shop.shelves.values()].filter(
    (entity) => entity.retired && !wasRetired(before, entity.id),
  )
  return newlyRetired
    .filter(({ id }) => (inUse.get(id) ?? 0) > 0)
    .map(({ id, name }) => ({ code: 'retires-in-use', params: { id, name, pieces: inUse.get(id) ?? 0 } }))
}

function wasRetired(shop: Shop | null, id: string): boolean {
  if (shop === null) return false
  const all = [...shop.doughs.values(), ...shop.varieties.values(), ...shop.shelves.values()]
  return all.some((entity) => entity.id === id && entity.retired)
}
