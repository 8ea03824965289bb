import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localDate, localInstant } from '../live/shop-clock.ts'
import type { Crowd } from './crowd.ts'
import { crowdOn } from './crowd.ts'
import type { DemoAt } from './demo-at.ts'
import { usualBusy } from './demo-demand.ts'
import { demoShop } from './demo-shop.ts'
import { doughForDay } from './dough-for-day.ts'
import { pastCounter } from './past-counter.ts'
import { pastBake, pastClose, pastCrew } from './past-crew.ts'
import { pastFollowing } from './past-dough.ts'
import { pastOrders } from './past-orders.ts'
import type { PlayedDays } from './played.ts'
import { Played } from './played.ts'
import type { Move } from './scene.ts'

/**
 * The demo's days before today, each opened, baked, sold and closed through the same rules as any tap, so that history,
 * figures and learnt habits have something true to show. Its people are simpler than those of the living morning: they
 * tap the three touches of a load and leave the rest presumed, as that shop well might; it is a hundred times as fast.
 */
export type PastDays = PlayedDays

/** A week and a day: the same weekday is among them. */
export const PAST_DAYS = 8
/** The board came into the shop so long before the first day's oven was hot. */
const BEGINS_BEFORE_OVEN_MINUTES = 80

/** Something that comes up at a time; what it is depends on how the day has gone until then. */
export interface Errand {
  readonly atMs: number
  readonly key: string
  readonly who: Move['who']
  readonly act: (state: State, atMs: EpochMs) => Move['act'] | null
  readonly confirmed?: Move['confirmed']
}

/** A day of the past while it is played. */
export interface PastDay {
  readonly shop: Shop
  readonly seed: number
  readonly date: string
  readonly dayStartMs: number
  readonly crowd: Crowd
  /** What customers took untapped since a rod was last counted; changes as the day goes. */
  readonly untapped: Map<VarietyId, number>
}

export interface BeforeDay {
  readonly nowMs: EpochMs
  readonly seed: number
  readonly days?: number | undefined
  readonly at?: DemoAt
}

/** @param nowMs of the day after the last one; the same seed and day make the same past */
export function pastDays({ nowMs, seed, days = PAST_DAYS, at = 'morning' }: BeforeDay): PastDays {
  const shop = demoShop(nowMs, at)
  const { zone } = shop.profile
  const todayMs = localInstant(zone, localDate(zone, nowMs), 0)
  const played = new Played({ shop, idPrefix: `days${todayMs.toString(36)}` })
  for (let back = days; back >= 1; back -= 1) {
    // The demo's own zones never change their clocks.
    const dayStartMs = todayMs - back * 24 * 3_600_000
    const date = localDate(zone, epochMs(dayStartMs))
    const day: PastDay = { shop, seed, date, dayStartMs, crowd: crowdOn(shop, seed, date), untapped: new Map() }
    if (back === days) moveIn(played, day)
    playDay(played, day)
  }
  return { entries: played.entries, state: played.state, details: [...played.details.values()] }
}

function playDay(played: Played, day: PastDay): void {
  const due = [...pastCrew(day), ...pastCounter(day), ...pastOrders(day), ...pastClose(day)].sort(byTime)
  for (let errand = due.shift(); errand !== undefined; errand = due.shift()) {
    const atMs = epochMs(Math.max(errand.atMs, played.state.recordedAtMs))
    const act = errand.act(played.state, atMs)
    if (act === null) continue
    const { key, who, confirmed } = errand
    const decision = played.take({ key, who, atMs, act, ...(confirmed === undefined ? {} : { confirmed }) })
    // A load goes on to its flip and its out, a mix to its next step.
    if (decision.kind !== 'taken') continue
    for (const event of decision.events) {
      if (event.type === 'loaded') insert(due, pastBake(day, event.load))
      else insert(due, pastFollowing(day, played.state, event))
    }
  }
}

function insert(due: Errand[], more: readonly Errand[]): void {
  for (const errand of more) {
    const index = due.findIndex((one) => one.atMs > errand.atMs)
    due.splice(index < 0 ? due.length : index, 0, errand)
  }
}

function byTime(one: Errand, other: Errand): number {
  return one.atMs - other.atMs || (one.key < other.key ? -1 : 1)
}

/** The set-up, and the trays that stand in the cooler since the day before. */
function moveIn(played: Played, { shop, date, dayStartMs }: PastDay): void {
  const beginMs = dayStartMs + (shop.hours.ovenReadyMinute - BEGINS_BEFORE_OVEN_MINUTES) * 60_000
  const changes = setUpChanges(null, shop)
  played.take({ key: 'set-up', who: 'desk', atMs: epochMs(beginMs), act: { type: 'changeSetUp', changes } })
  const sinceMs = epochMs(beginMs - 13 * 3_600_000)
  doughForDay(shop, usualBusy(date)).forEach(({ doughId, varietyId, pieces }, index) => {
    const act = { type: 'carryIn', doughId, varietyId, pieces, stage: 'chill', sinceMs } as const
    played.take({ key: `chilled:${index}`, who: 'desk', atMs: epochMs(beginMs + (index + 1) * 4_000), act })
  })
}
