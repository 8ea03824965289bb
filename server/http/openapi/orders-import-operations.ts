import * as z from 'zod'
import type { OrderMapping, OrdersRead, RememberedMapping } from '../../../shared-core/live/orders-import.ts'
import { ORDER_COLUMNS, ORDER_DOUBTS, ORDER_FAULTS } from '../../../shared-core/live/orders-import.ts'
import { DATE_FORMS, DELIMITERS } from '../../../shared-core/live/sales-import.ts'
import type { Operation } from './operation.ts'

const count = z.int().min(0)
const params = z.record(z.string(), z.union([z.string(), z.number()]))
const said = <Code extends string>(codes: readonly Code[]) =>
  z.object({ code: z.enum(codes), params, text: z.string() })
/** Types with brands are plain texts and numbers on the wire. */
type Wire<T> = z.ZodType<{ [K in keyof T]: unknown }>

const column = count.nullable().meta({ description: 'Counted from 0; null: no column has it.' })
const mapping = z.object({
  skip: count,
  hasHeader: z.boolean(),
  delimiter: z.enum(DELIMITERS),
  quote: z.enum(['"', "'"]),
  decimal: z.enum(['.', ',']),
  dateForm: z.enum(DATE_FORMS),
  columns: z.object(Object.fromEntries(ORDER_COLUMNS.map((name) => [name, column]))),
  isAfternoonMeant: z
    .boolean()
    .meta({ description: 'A time without am or pm before the oven is ready is one of the afternoon.' }),
}) satisfies Wire<OrderMapping>

const line = z.object({
  varietyId: z.string().nullable().meta({ description: 'Null: mixed, of any but those in "without".' }),
  without: z.array(z.string()),
  dozens: count,
  pieces: count,
  sliced: z.boolean(),
  bagged: z.boolean(),
})
const item = z.object({
  itemId: z.string(),
  varietyId: z.string().nullable(),
  toasted: z.boolean(),
  without: z.array(z.string()),
  more: z.array(z.string()),
  allergies: z.array(z.string()),
  times: count,
})
const order = z.object({
  rows: z.array(count),
  ref: z.string().nullable(),
  mark: z.string().nullable(),
  name: z.string(),
  phone: z.string(),
  note: z.string(),
  dueAtMs: count,
  way: z.enum(['here', 'pickUp', 'delivery']),
  lines: z.array(line),
  items: z.array(item),
  isPaid: z.boolean(),
  guessed: z.array(z.object({ text: z.string(), meant: z.string() })),
  state: z.enum(['new', 'known', 'taken']),
})
const read = z.object({
  encoding: z.enum(['utf-8', 'utf-16le', 'windows-1252']),
  mapping,
  isRemembered: z.boolean(),
  columns: z.array(z.object({ name: z.string(), samples: z.array(z.string()) })),
  rows: count,
  orders: z.array(order),
  faults: z.array(z.object({ line: count, cells: z.array(z.string()), fault: said(ORDER_FAULTS) })),
  doubts: z.array(said(ORDER_DOUBTS)),
}) satisfies Wire<OrdersRead>
const remembered = z.object({ header: z.array(z.string()), mapping }) satisfies Wire<RememberedMapping>

/** What these routes answer with, by the names of the document. */
export const ORDERS_IMPORT_ANSWERS: Readonly<Record<string, z.ZodType>> = {
  OrdersRead: read,
  OrderMappings: z.array(remembered),
}

const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })
const CSV =
  'Order,Name,Phone,Date,Time,Variety,Dozens,Note\nPO-1041,Oak Street School,555 0142,2030-11-26,7:30,Sesame,2,at the side door\n'
const HEADER = ['Order', 'Name', 'Phone', 'Date', 'Time', 'Variety', 'Dozens', 'Note']
const MAPPING: OrderMapping = {
  ...{ skip: 0, hasHeader: true, delimiter: ',', quote: '"', decimal: '.', dateForm: 'y-m-d' },
  columns: {
    ...{ ref: 0, mark: null, name: 1, phone: 2, dueDate: 3, dueTime: 4, way: null, variety: 5, dozens: 6 },
    ...{ pieces: null, item: null, sliced: null, bagged: null, paid: null, note: 7 },
  },
  isAfternoonMeant: false,
}

export const ORDERS_IMPORT_OPERATIONS: readonly Operation[] = [
  {
    id: 'postOrdersFile',
    method: 'post',
    path: '/api/v1/orders/import',
    summary: 'A file of orders: how it would be understood, or taken',
    description:
      'CSV with commas, semicolons, tabs or bars, in UTF-8, UTF-16 with its mark, or Windows-1252, 512 kB and 5,000 rows at most. Rows of one reference are one order, which is taken once, however often it is sent. With take=1 the orders without a fault are taken; where "doubts" has day-or-month or am-or-pm, only with a mapping (409). Nothing of the file is kept but its mapping.',
    parameters: [
      {
        name: 'take',
        in: 'query',
        description: '1: take them; left out, only look.',
        schema: z.enum(['0', '1']),
        example: '0',
      },
      {
        name: 'mapping',
        in: 'query',
        description: 'An OrderMapping as JSON; left out, the one said for this header, else a guess.',
        schema: z.string(),
        example: JSON.stringify(MAPPING),
        isLeftOut: true,
      },
    ],
    bodies: [{ type: 'text/csv', schema: null, example: CSV }],
    answer: json('OrdersRead', 'Each order and each row that cannot be read, with its line.'),
    problems: [404, 409, 413, 415, 422],
    isAct: true,
  },
  {
    id: 'orderMappings',
    method: 'get',
    path: '/api/v1/orders/import/mappings',
    summary: 'Which column holds what, as said for files of orders',
    answer: json('OrderMappings', 'By header.'),
  },
  {
    id: 'putOrderMapping',
    method: 'put',
    path: '/api/v1/orders/import/mappings',
    summary: 'Says which column holds what in files with such a header',
    description: 'A null mapping forgets what was said. A file that is taken says its own.',
    bodies: [{ type: 'application/json', schema: 'OrderMappingSaid', example: { header: HEADER, mapping: MAPPING } }],
    answer: json('OrderMappings', 'All that is known now.'),
    problems: [422],
  },
]
