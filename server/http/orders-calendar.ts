import type { Express, Request, Response } from 'express'
import type { CalendarLink } from '../../shared-core/live/orders-import.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Door } from '../devices/door.ts'
import { TOO_MANY_DEVICES } from '../devices/membership.ts'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import { shopClock } from '../live/shop-clock.ts'
import { ordersCalendar } from '../orders/calendar.ts'
import { CalendarRevisions } from '../orders/calendar-revisions.ts'
import { deviceOf } from './device-headers.ts'
import { ORDERS_CALENDAR } from './entrance.ts'
import { calendarAskedSchema } from './orders-calendar-schema.ts'
import { sendProblem } from './problem.ts'
import { withRead } from './sales-files.ts'
import { NO_SET_UP } from './set-up.ts'

export interface OrdersCalendarParts {
  readonly door: Door
  readonly room: Room
  readonly journal: Pick<Journal, 'journalId'>
  readonly localDate: () => string
  readonly now: () => EpochMs
}

/** Orders as a calendar to subscribe to, and the links to it. */
export function ordersCalendarRoutes(app: Express, parts: OrdersCalendarParts): void {
  const revisions = new CalendarRevisions()
  app.get('/api/v1/orders.ics', (request, response) => getCalendar(request, response, { ...parts, revisions }))
  app.post('/api/v1/orders/calendar', (request, response) =>
    withRead(request, response, calendarAskedSchema, async ({ name }) =>
      postLink(request, response, { ...parts, name }),
    ),
  )
}

async function getCalendar(
  request: Request,
  response: Response,
  { room, journal, localDate, now, revisions, door }: OrdersCalendarParts & { readonly revisions: CalendarRevisions },
): Promise<void> {
  // Of an open shop the door has asked nobody; a screen that says who it is may not be the wall's or the bench's.
  if (door.membership === null) {
    const device = deviceOf(request, response)
    if (device === null) return
    if (device.role !== 'desk' && device.role !== 'counter') {
      const detail = `This is for: counter, desk.`
      return sendProblem(response, { status: 403, title: 'Not for this role', detail })
    }
  }
  const nowMs = now()
  const text = await room.read((state) => {
    const { shop, seq } = state
    if (shop === null) return null
    const clock = shopClock(shop.profile.zone, nowMs)
    const revision = (uid: string, content: string) => revisions.of(uid, content, { seq, nowMs })
    return ordersCalendar({ state, shop, nowMs, today: localDate(), clock, journalId: journal.journalId, revision })
  })
  if (text === null) return sendProblem(response, NO_SET_UP)
  response.set('content-disposition', 'inline; filename="orders.ics"').type('text/calendar').send(text)
}

async function postLink(
  _request: Request,
  response: Response,
  { door, name }: OrdersCalendarParts & { readonly name: string },
): Promise<void> {
  if (door.membership === null) {
    response.json({ path: ORDERS_CALENDAR, deviceId: null } satisfies CalendarLink)
    return
  }
  const made = door.membership.makeCalendarToken(name)
  if (made === null) return sendProblem(response, { status: 409, title: 'Too many devices', detail: TOO_MANY_DEVICES })
  const path = `${ORDERS_CALENDAR}?key=${made.token}`
  response.json({ path, deviceId: made.device.id } satisfies CalendarLink)
}
