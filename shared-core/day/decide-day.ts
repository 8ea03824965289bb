import { roomAtClose } from '../dough/decide-close.ts'
import type { KeepId, OrderId } from '../ids.ts'
import { plannedId } from '../ids.ts'
import { lineRefusal, piecesOf } from '../line/lines.ts'
import { isOnTheLine } from '../line/route.ts'
import { ordersOver } from '../orders/orders-over.ts'
import { takeUpStanding } from '../orders/take-up.ts'
import type { EpochMs } from '../units.ts'
import type { DayCommand } from './commands.ts'
import type { Case, Decision } from './decision.ts'
import { askFor, happen, happenedAt, refuse, take } from './decision.ts'
import type { Fact } from './events.ts'
import { sameForbids } from './forbids.ts'
import { dateUsedUp, labelOf } from './label.ts'
import { endedBeforeNight } from './night.ts'
import type { Day, PlannedLoad, State } from './state.ts'
import { straysOf } from './strays.ts'

type Of<Type extends DayCommand['type']> = Case<Extract<DayCommand, { type: Type }>>

export function decideOpenDay(oneCase: Of<'openDay'>): Decision {
  const { state, context } = oneCase
  if (state.day !== null) return refuse('already-open', { label: state.day.label })
  const label = labelOf(context.localDate, state.lastDay?.closedOn ?? null)
  const noonMs = context.noonOf?.(label) ?? null
  const atMs = happenedAt(oneCase)
  happen(oneCase, atMs, { type: 'dayOpened', label, noonMs })
  if (noonMs !== null) takeUpStanding(oneCase, label, noonMs, atMs)
  return take(oneCase)
}

/**
 * Ends the day's account. What is left for sale becomes day-old; what is in the cooler goes on. Closed the morning after,
 * it counts from the last thing that was done the day before, as it does when nobody closes: a night is no trade, and
 * the list that was typed for today stays.
 */
export function decideCloseDay(oneCase: Of<'closeDay'>): Decision {
  const { command, state, context } = oneCase
  if (state.day === null || (command.label ?? state.day.label) !== state.day.label) return refuse('day-not-open')
  const onTheLine = [...state.batches.values()].filter(({ stage }) => isOnTheLine(stage))
  const pieces = piecesOf(onTheLine)
  const endedAtMs = endedBeforeNight(state, context)
  const atMs = endedAtMs ?? happenedAt(oneCase, state.day.openedAtMs)
  const orders = ordersOver(state, state.day, atMs).length
  const asked = askFor(command, [
    ...(pieces > 0 ? [{ code: 'line-not-empty', params: { pieces } } as const] : []),
    ...(orders > 0 ? [{ code: 'orders-open', params: { orders } } as const] : []),
  ])
  if (asked !== null) return asked
  const { crewMinutes = null } = command
  const closedOn = dateUsedUp(state.day.label, context.localDate)
  for (const fact of closing(state, state.day, { atMs, closedOn, crewMinutes, isLate: endedAtMs !== null }))
    happen(oneCase, atMs, fact)
  return take(oneCase)
}

/** The day closed last goes on, as long as nothing of the next one has begun. */
export function decideReopenDay(oneCase: Of<'reopenDay'>): Decision {
  const { command, state } = oneCase
  if (state.day !== null) return refuse('already-open', { label: state.day.label })
  const { lastDay } = state
  if (lastDay?.before == null || lastDay.label !== command.label) return refuse('cannot-reopen')
  happen(oneCase, happenedAt(oneCase, lastDay.closedAtMs), { type: 'dayReopened', label: lastDay.label })
  return take(oneCase)
}

interface Closing {
  readonly atMs: EpochMs
  /** The date, YYYY-MM-DD, of which no other day is opened. */
  readonly closedOn: string
  readonly crewMinutes: number | null
  /** A night has passed since: what is on the list without a time is for today. */
  readonly isLate: boolean
}

/**
 * The facts of a close: orders of the day that nobody fetched end, then the day does. What was kept for them is
 * day-old, as all that is left.
 */
export function closing(state: State, day: Day, how: Closing): readonly Fact[] {
  const over = ordersOver(state, day, how.atMs)
  const ended = over.map(({ id }): Fact => ({ type: 'orderEnded', orderId: id, how: 'noShow' }))
  const orderIds = new Set<OrderId | undefined>(over.map(({ id }) => id))
  const keepIds = [...state.keeps.values()].filter((keep) => orderIds.has(keep.orderId)).map(({ id }) => id)
  return [...ended, dayClosed(state, day, how, keepIds)]
}

/** What is left, what is written off, which loads of the list were the day's own. */
function dayClosed(
  state: State,
  day: Day,
  { atMs, closedOn, crewMinutes, isLate }: Closing,
  keepIds: readonly KeepId[],
): Fact {
  const left = [...state.stock.values()]
    .map(({ varietyId, lots, dayOld }) => ({ varietyId, pieces: piecesOf(lots) + dayOld }))
    .filter((line) => line.pieces > 0)
    .sort((one, other) => (one.varietyId < other.varietyId ? -1 : 1))
  // A list for tomorrow may have been typed before the close, by its times; one without times, only if nobody closed.
  const isOver = ({ done, inAtMs }: PlannedLoad) => done || (inAtMs === null ? !isLate : inAtMs <= atMs)
  const over = [...state.planned.values()].filter(isOver)
  const strays = straysOf(state, day, atMs)
  const plannedIds = over.map(({ id }) => id).sort()
  return {
    type: 'dayClosed',
    closedOn,
    left,
    plannedIds,
    crewMinutes,
    ...strays,
    keepIds: [...new Set([...strays.keepIds, ...keepIds])].sort(),
    ...roomAtClose(state, { day, atMs, closedOn }),
  }
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

/** What advised loads must leave out from now on, all of it; said again in the same words, it stands as it was. */
export function decideForbidLoads(oneCase: Of<'forbidLoads'>): Decision {
  const { command, shop, state } = oneCase
  const { forbids } = command
  for (const { shelfId, varietyId } of forbids) {
    if (shelfId !== null && !shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
    if (varietyId !== null && !shop.varieties.has(varietyId)) return refuse('unknown-variety', { varietyId })
  }
  if (sameForbids(state.forbids, forbids)) return refuse('already-moved', { stage: null })
  happen(oneCase, happenedAt(oneCase), { type: 'loadsForbidden', forbids })
  return take(oneCase, { pieces: forbids.length })
}

export function decideSkipPlanned(oneCase: Of<'skipPlanned'>): Decision {
  const { command, state } = oneCase
  const planned = state.planned.get(command.plannedId)
  if (planned === undefined) return refuse('unknown-planned')
  if (planned.done) return refuse('already-loaded', { shelfId: planned.shelfId, atMs: null })
  happen(oneCase, happenedAt(oneCase), { type: 'plannedDone', planned: { ...planned, done: true } })
  return take(oneCase, { lines: planned.lines })
}
