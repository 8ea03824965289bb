import * as z from 'zod'
import { ORDER_COLUMNS } from '../../shared-core/live/orders-import.ts'
import { DATE_FORMS, DELIMITERS } from '../../shared-core/live/sales-import.ts'
import { list, oneOf, record, whole } from '../../shared-core/shop/set-up-fields.ts'

/** What comes in about files of orders. The same schemas read it and describe it. */

const COLUMNS_MAX = 500
const NAME_MAX = 200
const NAME_RIGHT = `A column's name, at most ${NAME_MAX} characters.`

const column = whole(0, COLUMNS_MAX).nullable()
const columns = record(
  Object.fromEntries(ORDER_COLUMNS.map((name) => [name, column])) as Record<
    (typeof ORDER_COLUMNS)[number],
    typeof column
  >,
)

export const orderMappingSchema = record({
  skip: whole(0, 1_000),
  hasHeader: z.boolean('true or false.'),
  delimiter: oneOf(DELIMITERS),
  quote: oneOf(['"', "'"]),
  decimal: oneOf(['.', ',']),
  dateForm: oneOf(DATE_FORMS),
  columns,
  isAfternoonMeant: z.boolean('true or false.'),
})

export const rememberMappingSchema = record({
  header: list(z.string(NAME_RIGHT).max(NAME_MAX, NAME_RIGHT), 'names of columns', 1, COLUMNS_MAX),
  mapping: orderMappingSchema.nullable(),
})
