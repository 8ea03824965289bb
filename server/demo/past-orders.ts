import type { State } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { demoStanding, placedOn } from './demo-orders.ts'
import { dueAt, fetchedAt, handedOver, nextStanding } from './order-moves.ts'
import type { Errand, PastDay } from './past-days.ts'

const STANDING_MINUTE = 13 * 60 + 12
const FETCHED_EVERY_MINUTES = 4

/** Standing orders typed on the first day, what people ring up for, and what they fetch on a past day. */
export function pastOrders(day: PastDay): readonly Errand[] {
  return [...standing(day), ...placing(day), ...fetching(day)]
}

const at = ({ dayStartMs }: PastDay, minute: number) => dayStartMs + minute * 60_000

function standing(day: PastDay): readonly Errand[] {
  return demoStanding(day.shop, day.date).map((_, n) => ({
    atMs: at(day, STANDING_MINUTE + n),
    key: `standing:${day.date}:${n}`,
    who: 'desk',
    act: (state) => nextStanding(state, day.shop, day.date),
  }))
}

function placing(day: PastDay): readonly Errand[] {
  return placedOn(day.shop, day.seed, day.date).map(({ key, minute, order, dueDate, dueMinute }) => ({
    atMs: at(day, minute),
    key,
    who: 'counter',
    act: () => ({ ...order, dueAtMs: dueAt(day, dueDate, dueMinute) }),
  }))
}

function fetching(day: PastDay): readonly Errand[] {
  const { closeMinute, ovenReadyMinute } = day.shop.hours
  const errands: Errand[] = []
  for (let minute = ovenReadyMinute; minute < closeMinute; minute += FETCHED_EVERY_MINUTES)
    errands.push({
      atMs: at(day, minute),
      key: `fetch:${day.date}:${minute}`,
      who: 'counter',
      act: (state, nowMs) => fetched(state, day, nowMs),
    })
  return errands
}

function fetched(state: State, { seed }: PastDay, nowMs: EpochMs) {
  const order = [...state.orders.values()].find((one) => (fetchedAt(one, seed) ?? Number.POSITIVE_INFINITY) <= nowMs)
  return order === undefined ? null : handedOver(state, order, nowMs)
}
