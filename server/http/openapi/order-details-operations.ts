import * as z from 'zod'
import type { Operation } from './operation.ts'

const told = z.object({
  id: z.string(),
  version: z
    .int()
    .min(0)
    .meta({ description: 'The order’s "details": another number there, and it was written anew.' }),
  name: z.string().meta({ description: 'Empty for the bench, as is the phone number.' }),
  phone: z.string(),
  note: z.string(),
})

const known = z.object({
  id: z.string(),
  mark: z.string().nullable().meta({ description: 'What the order is called; null: it has ended.' }),
  day: z.string().nullable().meta({ description: 'The order’s day; null: it stands.' }),
  name: z.string(),
  phone: z.string(),
  note: z.string(),
})

export const ORDER_DETAILS_ANSWERS = {
  OrderDetails: z.object({ details: z.array(told) }),
  KnownNames: z.object({ names: z.array(known), found: z.int().min(0) }),
  OrderDetailsDeleted: z.object({ deleted: z.int().min(0) }),
} as const

export const ORDER_DETAILS_OPERATIONS: readonly Operation[] = [
  {
    id: 'orderDetails',
    method: 'get',
    path: '/api/v1/orders/details',
    summary: 'Whom orders are for: name, phone number and note',
    description:
      'They lie beside the journal and in no entry. Of what nothing was written, or of what was deleted, nothing is listed. The bench gets the note alone.',
    parameters: [
      {
        name: 'ids',
        in: 'query',
        description: 'Ids of orders or standing orders, separated by commas.',
        schema: z.string(),
        example: 'order00000001.1',
      },
    ],
    answer: { type: 'application/json', schema: 'OrderDetails', description: 'By order, in the order asked for.' },
    isAct: true,
  },
  {
    id: 'orderNames',
    method: 'get',
    path: '/api/v1/orders/names',
    summary: 'Of whom something is known, so that it can be deleted',
    description: 'Also beside orders that were handed over, until they are forgotten by themselves.',
    parameters: [
      {
        name: 'text',
        in: 'query',
        description: 'A part of a name, phone number, note or mark; left out: all.',
        schema: z.string(),
        example: 'mill',
      },
    ],
    answer: { type: 'application/json', schema: 'KnownNames', description: 'By name, 200 at most.' },
    isAct: true,
  },
  {
    id: 'deleteOrderDetails',
    method: 'delete',
    path: '/api/v1/orders/details/{id}',
    summary: 'Deletes for good whom an order is for',
    description:
      'With the order of a standing one goes what was written of that, and of all its dates. The order itself stays; screens hear of it as a change.',
    parameters: [
      {
        name: 'id',
        in: 'path',
        description: 'The id of an order or a standing order.',
        schema: z.string(),
        example: 'order00000001.1',
      },
    ],
    answer: {
      type: 'application/json',
      schema: 'OrderDetailsDeleted',
      description: 'Of how many of these there was something.',
    },
    isAct: true,
  },
]
