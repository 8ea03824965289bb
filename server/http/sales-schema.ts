import * as z from 'zod'
import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import { WITHIN_MAX } from '../../shared-core/day/command-schema.ts'
import { THOUSANDTHS_MAX, THOUSANDTHS_MIN } from '../../shared-core/day/dough-limits.ts'
import { decimal, list, oneOf, record, whole } from '../../shared-core/shop/set-up-fields.ts'
import { DEGREES_MAX, DEGREES_MIN } from '../../shared-core/shop/set-up-limits.ts'
import { INSTANT_RIGHT } from './instant.ts'

/** What tills, scales and scripts may post. The same schemas read it and describe it (`/api/openapi.json`). */

export const SALES_MAX = 500
export const COUNTS_MAX = 40
export const READINGS_MAX = 50
const ID_RIGHT = 'A text of 1 to 80 characters that the same row always has, and no other.'
const NAME_RIGHT = 'The name or id of a variety, as in the set-up; null when nobody knows which.'
/** Tills have longer names than the set-up. */
const TILL_NAME_MAX = 200
const TILL_NAME_RIGHT =
  'The name or id of a variety, what the till calls it where the desk has said what that is, or null when nobody knows which.'

const SHELF_RIGHT = 'The name or id of a shelf; null or left out for the oven as a whole.'

const at = () =>
  z
    .string(INSTANT_RIGHT)
    .max(40, INSTANT_RIGHT)
    .meta({ description: `When it was. ${INSTANT_RIGHT}` })
const rowId = () =>
  z
    .string(ID_RIGHT)
    .min(1, ID_RIGHT)
    .max(80, ID_RIGHT)
    .meta({ description: `${ID_RIGHT} Sent again, it counts once.` })
const varietyName = () => z.string(NAME_RIGHT).min(1, NAME_RIGHT).max(64, NAME_RIGHT)

export const saleSchema = record({
  at: at().nullish(),
  variety: z
    .string(TILL_NAME_RIGHT)
    .min(1, TILL_NAME_RIGHT)
    .max(TILL_NAME_MAX, TILL_NAME_RIGHT)
    .nullable()
    .meta({ description: TILL_NAME_RIGHT }),
  pieces: whole(1, PIECES_MAX),
  id: rowId().nullish(),
})
export const salesSchema = record({ sales: list(saleSchema, 'sales', 1, SALES_MAX) })
/** Read row by row, so that the good ones can be taken. */
export const salesEnvelope = record({ sales: list(z.unknown(), 'sales', 1, SALES_MAX) })

const countSchema = record({
  variety: varietyName(),
  pieces: whole(0, PIECES_MAX),
  within: whole(0, WITHIN_MAX).nullish().meta({ description: 'Right to within so many pieces; 0 when left out.' }),
})
export const countsSchema = record({
  at: at().nullish(),
  id: rowId().nullish(),
  counts: list(countSchema, 'counts', 1, COUNTS_MAX),
})

const ovenReadingSchema = record({
  at: at().nullish(),
  shelf: z
    .string(SHELF_RIGHT)
    .max(64, SHELF_RIGHT)
    .nullish()
    .meta({ description: 'The name or id of a shelf; left out: the oven as a whole.' }),
  degrees: whole(DEGREES_MIN, DEGREES_MAX),
  unit: oneOf(['C', 'F']).nullish().meta({ description: 'The shop\u2019s own when left out.' }),
  id: rowId().nullish(),
})
export const ovenReadingsSchema = record({ readings: list(ovenReadingSchema, 'readings', 1, READINGS_MAX) })

const readingSchema = record({
  at: at().nullish(),
  place: oneOf(['room', 'cooler', 'flour', 'tap']),
  degrees: decimal(THOUSANDTHS_MIN / 1_000, THOUSANDTHS_MAX / 1_000),
  unit: oneOf(['C', 'F']).nullish().meta({ description: 'The shop\u2019s own when left out.' }),
  id: rowId().nullish(),
})
export const readingsSchema = record({ readings: list(readingSchema, 'readings', 1, READINGS_MAX) })
