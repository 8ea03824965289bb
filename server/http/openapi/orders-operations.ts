import * as z from 'zod'
import type { Operation, Parameter } from './operation.ts'

const instant = () => z.int().min(0).meta({ description: 'Milliseconds since 1970-01-01T00:00:00Z.' })
const pieces = () => z.int().min(0)

const orderLine = z.object({
  varietyId: z.string().nullable().meta({ description: 'Null: mixed.' }),
  without: z.array(z.string()),
  pieces: pieces().meta({ description: 'All of them, dozens counted as the shop does.' }),
  dozens: z.int().min(0).meta({ description: 'How many dozens were said.' }),
  sliced: z.boolean(),
  bagged: z.boolean(),
})
const itemStep = z.looseObject({
  stationId: z.string(),
  takesMs: z.int().min(0),
  begunAtMs: instant().nullable(),
  madeAtMs: instant().nullable(),
})
const orderItem = z.object({
  no: z.int().min(1),
  itemId: z.string(),
  varietyId: z.string().nullable().meta({ description: 'The bagel that it is made on.' }),
  toasted: z.boolean(),
  without: z.array(z.string()),
  more: z.array(z.string()),
  allergies: z.array(z.string()).meta({ description: 'What the guest must not get.' }),
  steps: z.array(itemStep),
})
const order = z.object({
  id: z.string(),
  mark: z.string().meta({ description: 'What it is called across the room.' }),
  takenAtMs: instant(),
  dueAtMs: instant(),
  way: z.enum(['here', 'pickUp', 'delivery']),
  runId: z.string().nullable(),
  stop: z.int().min(0),
  lines: z.array(orderLine),
  items: z.array(orderItem),
  isPaid: z.boolean(),
  details: z.int().min(0).meta({ description: 'How often it was written whom it is for; 0: never.' }),
  standing: z.object({ standingId: z.string(), date: z.iso.date() }).nullable(),
  ref: z.string().nullable(),
  isRisk: z.boolean().meta({ description: 'It was taken though the board could not promise it.' }),
})
const openOrder = order.extend({
  kept: z.array(z.object({ varietyId: z.string(), pieces: pieces() })),
  isMade: z.boolean().meta({ description: 'All that is made to order is made.' }),
  isToCome: z.boolean().meta({ description: 'Of a standing order, and not made for its day yet.' }),
})

const promise = z
  .object({
    isPromised: z.boolean(),
    pieces: z
      .object({
        atMs: instant().nullable().meta({ description: 'The earliest time; null: not today.' }),
        why: z.looseObject({ code: z.string() }).meta({ description: 'What decides it.' }),
        split: z
          .object({ nowLines: z.array(z.object({ varietyId: z.string(), pieces: pieces() })), restAtMs: instant() })
          .nullable(),
        nextDayAtMs: instant().nullable().meta({ description: 'The opening from which orders are still taken.' }),
      })
      .nullable(),
    wait: z
      .union([z.object({ medianMs: z.int(), carefulMs: z.int() }), z.object({ cannot: z.string() })])
      .nullable()
      .meta({ description: 'For what is made to order; "cannot" says why nobody can tell.' }),
  })
  .nullable()
  .meta({ description: 'Whether it could be promised when it was taken; null for a repeat.' })

export const ORDERS_ANSWERS = {
  OrderTaken: z.object({
    commandId: z.string().nullable(),
    seq: z.int(),
    isRepeat: z.boolean().meta({ description: 'It was taken before; this is the first answer.' }),
    ignored: z.int().min(0).meta({ description: 'Lines of what is none of the shop’s pieces.' }),
    promise,
    order,
  }),
  Orders: z.object({ date: z.iso.date(), orders: z.array(openOrder) }),
  OpenOrder: openOrder,
} as const

const byId: Parameter = {
  name: 'id',
  in: 'path',
  description: 'The id of an open order.',
  schema: z.string(),
  example: 'order00000001.1',
}
const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })

export const ORDERS_OPERATIONS: readonly Operation[] = [
  {
    id: 'postOrder',
    method: 'post',
    path: '/api/v1/orders',
    summary: 'An order of a till, with names and local times',
    description:
      'Taken whole or not at all. With a "ref" it is taken once, however often it is sent. Name, phone number and note are kept beside the journal.',
    bodies: [
      {
        type: 'application/json',
        schema: 'Order',
        example: {
          ref: 'receipt 1041',
          due: '23:59',
          lines: [
            { variety: 'Sesame', pieces: 6 },
            { variety: null, without: ['Poppy'], dozens: 1, sliced: true },
          ],
          paid: true,
          name: 'A. Guest',
          note: 'rings at the back door',
        },
      },
    ],
    answer: json('OrderTaken', 'The order as it was taken.'),
    problems: [404, 409, 413, 422],
    isAct: true,
  },
  {
    id: 'orders',
    method: 'get',
    path: '/api/v1/orders',
    summary: 'Orders that are due on a day and not handed over yet, soonest first',
    parameters: [
      {
        name: 'date',
        in: 'query',
        description: 'The shop’s date; left out, today.',
        schema: z.iso.date(),
        example: '2026-11-26',
        isLeftOut: true,
      },
    ],
    answer: json('Orders', 'With those that standing orders will bring.'),
    problems: [404],
  },
  {
    id: 'order',
    method: 'get',
    path: '/api/v1/orders/{id}',
    summary: 'An open order as it stands',
    parameters: [byId],
    answer: json('OpenOrder', 'With what is kept for it.'),
    problems: [404],
  },
  {
    id: 'cancelOrder',
    method: 'delete',
    path: '/api/v1/orders/{id}',
    summary: 'Cancels an order; what was kept for it goes back for sale',
    parameters: [byId],
    answer: json('CommandAnswer', 'Taken.'),
    problems: [404, 409],
    isAct: true,
  },
  {
    id: 'handOverOrder',
    method: 'post',
    path: '/api/v1/orders/{id}/handed-over',
    summary: 'The order is in somebody’s hands',
    description: 'Kept pieces first, the rest as it lies there. What is missing then is on record.',
    parameters: [byId],
    bodies: [
      { type: 'application/json', schema: 'HandedOver', example: { lines: [{ variety: 'Sesame', pieces: 2 }] } },
    ],
    answer: json('CommandAnswer', 'Taken.'),
    problems: [404, 409, 413, 422],
    isAct: true,
  },
]
