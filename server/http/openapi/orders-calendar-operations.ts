import * as z from 'zod'
import type { CalendarLink } from '../../../shared-core/live/orders-import.ts'
import type { Operation } from './operation.ts'

const link: z.ZodType<CalendarLink> = z.object({
  path: z.string().meta({ description: 'With its secret where the shop is closed; told this once.' }),
  deviceId: z.string().nullable().meta({ description: 'By which it is ended; null in an open shop.' }),
})

export const ORDERS_CALENDAR_ANSWERS: Readonly<Record<string, z.ZodType>> = { CalendarLink: link }

export const ORDERS_CALENDAR_OPERATIONS: readonly Operation[] = [
  {
    id: 'ordersCalendar',
    method: 'get',
    path: '/api/v1/orders.ics',
    summary: 'When orders are due, as a calendar to subscribe to',
    description:
      'iCalendar (RFC 5545): open orders by mark and pieces, standing ones as recurring events in the shop’s zone; nobody’s name. A link made at the desk lets in by its "key"; it opens nothing else.',
    parameters: [
      {
        name: 'key',
        in: 'query',
        description: 'The secret of a link; left out where a token is shown otherwise.',
        schema: z.string(),
        example: 'none',
        isLeftOut: true,
      },
    ],
    answer: { type: 'text/calendar', schema: null, description: 'To be asked for again every quarter of an hour.' },
    problems: [404],
  },
  {
    id: 'postOrdersCalendar',
    method: 'post',
    path: '/api/v1/orders/calendar',
    summary: 'A link to the calendar of orders, with a secret of its own',
    description: 'It holds until the desk ends it: DELETE /api/v1/devices/{id}.',
    bodies: [{ type: 'application/json', schema: 'CalendarAsked', example: { name: 'Calendar on the phone' } }],
    answer: { type: 'application/json', schema: 'CalendarLink', description: 'To be put behind the server’s address.' },
    problems: [409, 422],
  },
]
