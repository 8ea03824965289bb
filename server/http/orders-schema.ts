import * as z from 'zod'
import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import { askedItem } from '../../shared-core/orders/order-command-schema.ts'
import {
  DETAIL_CHARACTERS_MAX,
  MARK_CHARACTERS_MAX,
  ORDER_ITEMS_MAX,
  ORDER_LINES_MAX,
  STOPS_MAX,
  TIMES_MAX,
} from '../../shared-core/orders/order-limits.ts'
import { flag, list, oneOf, record, whole } from '../../shared-core/shop/set-up-fields.ts'
import { INSTANT_RIGHT } from './instant.ts'

/** What a till may post of orders. The same schemas read it and describe it (`/api/openapi.json`). */

const text = (most: number, right: string) => z.string(right).trim().min(1, right).max(most, right)
const TILL_NAME_MAX = 200
const DOZENS_MAX = 400
const WITHOUT_MAX = 20

const NAME_RIGHT =
  'The name or id of a variety, what the till calls it where the desk has said what that is, or null for mixed.'
const REF_RIGHT = 'A text of 1 to 64 characters that the till has for this order, and for no other.'
const MARK_RIGHT = `What it is called across the room, 1 to ${MARK_CHARACTERS_MAX} characters: a number or initials, never a name.`
const ITEM_RIGHT = 'The name or id of something on the menu.'
const PORTION_RIGHT = 'The name or id of something that is prepared in portions.'

const orderLine = record({
  variety: text(TILL_NAME_MAX, NAME_RIGHT).nullable().meta({ description: NAME_RIGHT }),
  without: list(text(TILL_NAME_MAX, NAME_RIGHT), 'varieties', 0, ORDER_LINES_MAX)
    .nullish()
    .meta({ description: 'What mixed pieces must not be.' }),
  dozens: whole(0, DOZENS_MAX).nullish().meta({ description: 'Of so many pieces as the shop gives for a dozen.' }),
  pieces: whole(0, PIECES_MAX).nullish().meta({ description: 'Besides the dozens.' }),
  sliced: flag().nullish(),
  bagged: flag().nullish(),
})

const orderItem = record({
  item: text(TILL_NAME_MAX, ITEM_RIGHT).meta({ description: ITEM_RIGHT }),
  bagel: text(TILL_NAME_MAX, NAME_RIGHT).nullish().meta({ description: 'The variety that it is made on.' }),
  toasted: flag().nullish(),
  without: list(text(TILL_NAME_MAX, PORTION_RIGHT), 'portions', 0, WITHOUT_MAX).nullish(),
  more: list(text(TILL_NAME_MAX, PORTION_RIGHT), 'portions', 0, WITHOUT_MAX).nullish(),
  allergies: askedItem.shape.allergies.nullish().meta({ description: 'What the guest must not get.' }),
  times: whole(1, TIMES_MAX).nullish().meta({ description: 'So many of the same; 1 when left out.' }),
})

const detail = (most: number) => text(most, `Text of 1 to ${most} characters.`).nullish()

export const orderSchema = record({
  ref: text(64, REF_RIGHT)
    .nullish()
    .meta({ description: `${REF_RIGHT} Sent again, the first answer stands.` }),
  mark: text(MARK_CHARACTERS_MAX, MARK_RIGHT)
    .nullish()
    .meta({ description: `${MARK_RIGHT} Left out, the next slip’s number.` }),
  due: text(40, INSTANT_RIGHT)
    .nullish()
    .meta({ description: `When it must be ready; left out, somebody waits. ${INSTANT_RIGHT}` }),
  way: oneOf(['here', 'pickUp', 'delivery'])
    .nullish()
    .meta({ description: 'Left out: "here" where nothing says when it is due, else "pickUp".' }),
  run: text(64, 'The name or id of a run.').nullish().meta({ description: 'The van’s round, for a delivery.' }),
  stop: whole(1, STOPS_MAX).nullish(),
  lines: list(orderLine, 'lines', 0, ORDER_LINES_MAX).nullish(),
  items: list(orderItem, 'items', 0, ORDER_ITEMS_MAX).nullish(),
  paid: flag().nullish(),
  name: detail(DETAIL_CHARACTERS_MAX.name).meta({ description: 'Kept beside the journal, forgotten in its time.' }),
  phone: detail(DETAIL_CHARACTERS_MAX.phone),
  note: detail(DETAIL_CHARACTERS_MAX.note),
})
export type PostedOrder = z.output<typeof orderSchema>

const handedLine = record({
  variety: text(TILL_NAME_MAX, 'The name or id of a variety.'),
  pieces: whole(1, PIECES_MAX),
})
export const handedOverSchema = record({
  lines: list(handedLine, 'lines', 0, ORDER_LINES_MAX)
    .nullish()
    .meta({ description: 'What really went into the bag; left out, what was ordered.' }),
})
