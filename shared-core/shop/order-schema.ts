import { DEFAULT_ORDERS } from './default-rules.ts'
import { retired } from './equipment-schema.ts'
import { spanObject } from './human-time.ts'
import { clock, flag, id, name, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { span } from './time-fields.ts'

/** How orders are taken and kept, and the van's rounds, as the set-up file says it. */

export const ordersFile = record({
  dozenPieces: whole(limits.DOZEN_PIECES_MIN, limits.DOZEN_PIECES_MAX)
    .default(DEFAULT_ORDERS.dozenPieces)
    .meta({ description: 'Pieces of a dozen; 13 where the shop gives a baker’s dozen.' }),
  cutOff: clock()
    .nullable()
    .default(null)
    .meta({ description: 'Orders for the next day are taken until then; null: until the shop opens.' }),
  walkInPercent: whole(0, 100)
    .default(DEFAULT_ORDERS.walkInPercent)
    .meta({ description: 'How much of what walk-ins are expected to ask for is left to them, in %.' }),
  walkInLeast: whole(0, limits.WALK_IN_LEAST_MAX)
    .default(DEFAULT_ORDERS.walkInLeast)
    .meta({ description: 'Pieces of each variety that stay out for walk-ins whatever is expected.' }),
  keepsAsTheyCome: flag()
    .default(DEFAULT_ORDERS.keepsAsTheyCome)
    .meta({ description: 'Pieces are kept for orders as they come out of the oven, the oldest due first.' }),
  noShow: span(
    'How long after it was due an order that nobody fetched is ended',
    limits.NO_SHOW_MS_MIN / 1_000,
    limits.NO_SHOW_MS_MAX / 1_000,
  )
    .nullable()
    .default(null)
    .meta({ description: 'So long after it was due an order that nobody fetched is ended; null: at the close.' }),
  forgetDays: whole(1, limits.FORGET_DAYS_MAX)
    .default(DEFAULT_ORDERS.forgetDays)
    .meta({ description: 'Names, phone numbers and notes are deleted so many days after the order’s day.' }),
  madeIn: span(
    'What the counter tells those who wait for something made to order',
    limits.MADE_IN_MS_MIN / 1_000,
    limits.MADE_IN_MS_MAX / 1_000,
  ).default(spanObject(DEFAULT_ORDERS.madeInMs)),
  sliceCool: span('How long pieces cool before they are sliced or bagged', 0, limits.SLICE_COOL_MS_MAX / 1_000).default(
    spanObject(DEFAULT_ORDERS.sliceCoolMs),
  ),
  pack: span('Slicing, bagging and boxing a dozen', 0, limits.PACK_MS_MAX / 1_000).default(
    spanObject(DEFAULT_ORDERS.packMs),
  ),
  boxPieces: whole(1, limits.BOX_PIECES_MAX)
    .default(DEFAULT_ORDERS.boxPieces)
    .meta({ description: 'Pieces of one box.' }),
}).prefault({})

export const runFile = record({
  id: id(),
  name: name(limits.NAME_MAX.run),
  leaves: clock().meta({ description: 'When the van leaves.' }),
  stop: span('To the first stop, and from each to the next', 0, limits.STOP_MS_MAX / 1_000).default({ minutes: 10 }),
  load: span('From the last box packed to leaving', 0, limits.LOAD_MS_MAX / 1_000).default({ minutes: 10 }),
  retired: retired(),
})
