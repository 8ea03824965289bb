import ICAL from 'ical.js'
import type { State } from '../../shared-core/day/state.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { Order, StandingOrder } from '../../shared-core/orders/order.ts'
import { ruleText } from '../../shared-core/orders/rule-text.ts'
import { standingAsOrder } from '../../shared-core/orders/take-up.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'
import type { Series } from './calendar-series.ts'
import { seriesOf } from './calendar-series.ts'
import type { ToldOrder } from './calendar-words.ts'
import { calendarWords, descriptionOf, summaryOf } from './calendar-words.ts'
import { calendarZone, utcTime, wallTime } from './calendar-zone.ts'

/** A calendar shows an event of no length badly; nothing ends when an order is ready. */
const SHOWN = 'PT15M'
/** How often whoever subscribes should ask again. */
const ASKED_EVERY = 'PT15M'
const MINUTE_MS = 60_000
/** Lines have 75 octets at most (3.1); the library does not count the space that the rest of a folded one begins with. */
ICAL.foldLength = 74

export interface CalendarAsked {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  /** The shop's date, YYYY-MM-DD. */
  readonly today: string
  readonly clock: ShopClock
  /** Of the journal: ids of two shops are never the same. */
  readonly journalId: string
  /** Which revision of an event this is, and since when. */
  readonly revision: (uid: string, content: string) => Revision
}

export interface Revision {
  readonly sequence: number
  readonly atMs: EpochMs
}

/**
 * Orders as a calendar to subscribe to: each open one by mark and pieces when it is due, standing ones as recurring
 * events. Who waits at the counter is none, and nobody's name is in it.
 * Source: RFC 5545; NAME and REFRESH-INTERVAL are RFC 7986's.
 */
export function ordersCalendar(asked: CalendarAsked): string {
  const { state, shop, clock } = asked
  const calendar = new ICAL.Component('vcalendar')
  calendar.addPropertyWithValue('version', '2.0')
  calendar.addPropertyWithValue('prodid', '-//Boilboard//Orders//EN')
  calendar.addPropertyWithValue('name', `${shop.profile.name}: ${calendarWords(shop).orders}`)
  const refresh = new ICAL.Property('refresh-interval')
  refresh.resetType('duration')
  refresh.setValue(ICAL.Duration.fromString(ASKED_EVERY))
  calendar.addProperty(refresh)
  calendar.addSubcomponent(calendarZone(clock))
  const open = [...state.orders.values()].filter(({ way }) => way !== 'here')
  const standing = [...state.standing.values()]
  const events = [
    ...open.map((order) => orderEvent(order, asked)),
    ...standing.flatMap((one) => standingEvents(one, asked)),
  ]
  for (const event of events) calendar.addSubcomponent(event)
  return `${calendar.toString()}\r\n`
}

function orderEvent(order: Pick<Order, 'id' | 'dueAtMs'> & ToldOrder, asked: CalendarAsked): ICAL.Component {
  const event = new ICAL.Component('vevent')
  event.addPropertyWithValue('dtstart', utcTime(order.dueAtMs))
  return told(event, order.id, order, asked)
}

function standingEvents(standing: StandingOrder, asked: CalendarAsked): readonly ICAL.Component[] {
  const { shop, today, clock, nowMs } = asked
  const series = seriesOf(shop, standing, today)
  const single = series.single.map((date) =>
    orderEvent(standingAsOrder(standing, date, localInstant(clock.zone, date, 12 * 60), nowMs), asked),
  )
  if (series.first === null) return single
  return [told(recurring(standing, series, series.first, clock), standing.id, standing, asked), ...single]
}

/** In local time, as half past seven stays half past seven when the clocks change. */
function recurring(standing: StandingOrder, series: Series, first: string, { zone }: ShopClock): ICAL.Component {
  const event = new ICAL.Component('vevent')
  const local = (name: string, dates: readonly string[]) => {
    if (dates.length === 0) return
    const property = new ICAL.Property(name)
    property.setParameter('tzid', zone)
    const times = dates.map((date) => wallTime(Date.parse(`${date}T00:00Z`) + standing.dueMinute * MINUTE_MS))
    if (property.isMultiValue) property.setValues(times)
    else property.setValue(times[0])
    event.addProperty(property)
  }
  local('dtstart', [first])
  const untilOf = (date: string) =>
    new Date(localInstant(zone, date, standing.dueMinute)).toISOString().replaceAll(/[-:]|\.\d+/g, '')
  event.addPropertyWithValue('rrule', ICAL.Recur.fromString(ruleText(standing.recurrence, untilOf)))
  local('exdate', series.except)
  local('rdate', series.besides)
  return event
}

function told(event: ICAL.Component, id: string, order: ToldOrder, asked: CalendarAsked): ICAL.Component {
  const uid = `${id}@${asked.journalId}`
  event.addPropertyWithValue('duration', ICAL.Duration.fromString(SHOWN))
  event.addPropertyWithValue('summary', summaryOf(order, asked.shop))
  event.addPropertyWithValue('description', descriptionOf(order, asked.shop))
  event.addPropertyWithValue('status', 'CONFIRMED')
  // Nobody is busy because an order is due.
  event.addPropertyWithValue('transp', 'TRANSPARENT')
  const { sequence, atMs } = asked.revision(uid, event.toString())
  event.addPropertyWithValue('uid', uid)
  event.addPropertyWithValue('dtstamp', utcTime(atMs))
  event.addPropertyWithValue('last-modified', utcTime(atMs))
  event.addPropertyWithValue('sequence', sequence)
  return event
}
