import { orderMarks } from '../../shared-core/day/order-marks.ts'
import type { Ruler } from '../../shared-core/day/ruler.ts'
import { rulerDate, rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { OrderId } from '../../shared-core/ids.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import { dueOn } from '../../shared-core/orders/due-on.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import { hoursOn } from '../../shared-core/shop/hours.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { instantOfMinute, localDate } from '../live/clock-text.ts'
import type { RulerDay, RulerOrder } from './ruler-view.ts'

const MINUTE_MS = 60_000

/** What a screen writes on the ruler. */
export interface RulerOfDayWords {
  lastLoad(atMs: EpochMs): string
  readonly lastLoadGone: string
  /** Of a weekday on which the shop is closed. */
  readonly closedToday: string
  readonly changeover: string
  /** A planned load that would not be out by the changeover. */
  tooLate(atMs: EpochMs): string
}

/**
 * The ruler of the day that a screen shows: today's, by its weekday's hours, or the next day's once that is open. It
 * stands at the instant given.
 * @returns null without a set-up, and when the shop is closed that day
 */
export function rulerNow(state: State, nowMs: EpochMs, clock: ShopClock): Ruler | null {
  const date = rulerDate(state, localDate(clock, nowMs))
  const noonMs = noonOf(clock, date)
  return rulerOf(state, nowMs, (minute) => instantOfMinute(clock, minute, noonMs), date)
}

/** Whether the set-up says that the shop is closed on the day that a screen shows. */
export function isClosedDay(state: State, nowMs: EpochMs, clock: ShopClock): boolean {
  return state.shop !== null && hoursOn(state.shop, rulerDate(state, localDate(clock, nowMs))) === null
}

/**
 * The ruler of a weekday on which the shop is closed: the usual hours, so that dough may still be timed by them, with
 * nothing on it but that. Null when the shop is not closed, or has no set-up.
 */
function closedDay(state: State, nowMs: EpochMs, clock: ShopClock, text: string): RulerDay | null {
  if (state.shop === null || !isClosedDay(state, nowMs, clock)) return null
  const { openMinute, closeMinute } = state.shop.hours
  const noonMs = noonOf(clock, rulerDate(state, localDate(clock, nowMs)))
  const [fromMs, toMs] = [instantOfMinute(clock, openMinute, noonMs), instantOfMinute(clock, closeMinute, noonMs)]
  const middleMs = Math.round((fromMs + toMs) / 2)
  return { fromMs, toMs, nowMs, orders: [{ key: 'closed', atMs: middleMs, text }] }
}

/**
 * The shop's day as a ruler, as it stands at a whole minute: it need not be painted more often.
 * @param lastDip the latest first dip of the plan; null: none, or loads are not advised
 * @param atRisk orders that will be short as things stand: their marks are in trouble
 * @returns null without a set-up, and where the hours make no day
 */
export function rulerOfDay(
  state: State,
  nowMs: EpochMs,
  clock: ShopClock,
  words: RulerOfDayWords,
  lastDip: { readonly atMs: EpochMs; readonly text: string } | null = null,
  atRisk: ReadonlySet<OrderId> = NONE_AT_RISK,
): RulerDay | null {
  const minuteMs = epochMs(nowMs - (nowMs % MINUTE_MS))
  const ruler = rulerNow(state, minuteMs, clock)
  if (ruler === null) return closedDay(state, minuteMs, clock, words.closedToday)
  if (ruler.toMs <= ruler.fromMs) return null
  const { fromMs, toMs, changeover, secondMenu, lastLoadInByMs: lastMs, marks } = ruler
  const lastText = lastMs === null || nowMs > lastMs ? words.lastLoadGone : words.lastLoad(lastMs)
  const hasSecond = changeover !== null && secondMenu !== null && changeover.toMs < toMs
  return {
    fromMs,
    toMs,
    nowMs: minuteMs,
    lastDip: lastDip ?? undefined,
    lastLoad: lastMs === null ? undefined : { atMs: lastMs, text: lastText },
    changeover: changeover === null ? undefined : { ...changeover, text: words.changeover },
    secondMenu: hasSecond ? { fromMs: changeover.toMs, toMs, text: secondMenu } : undefined,
    orders: [
      ...marks
        .filter((mark) => mark.tooLate)
        .map(({ plannedId, atMs }) => ({ key: plannedId, atMs, text: words.tooLate(atMs), trouble: true })),
      ...orderLabels(ordersToday(state, minuteMs, clock), { fromMs, toMs }, atRisk),
    ],
  }
}

const NONE_AT_RISK: ReadonlySet<OrderId> = new Set()

/** Standing ones too, also before the day opens. */
function ordersToday(state: State, nowMs: EpochMs, clock: ShopClock): readonly Order[] {
  if (state.orders.size === 0 && state.standing.size === 0) return []
  const date = rulerDate(state, localDate(clock, nowMs))
  return dueOn(state, { date, noonMs: noonOf(clock, date) })
}

/** Each order by its mark and pieces; of several that stand in one place the first, and how many others. */
function orderLabels(
  due: readonly Order[],
  span: { readonly fromMs: EpochMs; readonly toMs: EpochMs },
  atRisk: ReadonlySet<OrderId>,
): readonly RulerOrder[] {
  return orderMarks(due, span).map(({ key, atMs, orders, pieces }) => {
    const risky = orders.find(({ id }) => atRisk.has(id))
    const mark = (risky ?? orders[0])?.mark ?? ''
    const more = orders.length > 1 ? `+${orders.length - 1}` : pieces > 0 ? String(pieces) : ''
    return {
      key,
      atMs: risky?.dueAtMs ?? atMs,
      text: more === '' ? mark : `${mark} ${more}`,
      trouble: risky !== undefined,
    }
  })
}

/** The shop's offset from UTC at an instant, in ms: what the ruler numbers its hours by. */
export function offsetMsAt({ offsets }: ShopClock, atMs: number): number {
  let offsetMinutes = offsets[0]?.offsetMinutes ?? 0
  for (const offset of offsets) if (offset.fromMs <= atMs) offsetMinutes = offset.offsetMinutes
  return offsetMinutes * MINUTE_MS
}
