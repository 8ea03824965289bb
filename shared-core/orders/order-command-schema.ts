import { z } from 'zod'
import { command, date, ids, instant, PIECES_MAX, pieces } from '../day/command-fields.ts'
import { flag, list, oneOf, record, whole } from '../shop/set-up-fields.ts'
import {
  DETAIL_CHARACTERS_MAX,
  MARK_CHARACTERS_MAX,
  ORDER_ITEMS_MAX,
  ORDER_LINES_MAX,
  ORDER_THINGS_MAX,
  STOPS_MAX,
  TIMES_MAX,
} from './order-limits.ts'

/** What comes in from outside of orders: form and bounds only. */

const PARTS_MAX = 100
const DATES_MAX = 200
const ALLERGENS = ['milk', 'egg', 'fish', 'shellfish', 'treeNuts', 'peanuts', 'wheat', 'soy', 'sesame'] as const

const text = (most: number) => {
  const right = `Text of at most ${most} characters.`
  return z.string(right).trim().max(most, right)
}
const markText = `What it is called across the room: 1 to ${MARK_CHARACTERS_MAX} characters, a number or initials.`
const mark = z.string(markText).trim().min(1, markText).max(MARK_CHARACTERS_MAX, markText)

export const orderDetails = record({
  name: text(DETAIL_CHARACTERS_MAX.name),
  phone: text(DETAIL_CHARACTERS_MAX.phone),
  note: text(DETAIL_CHARACTERS_MAX.note),
})

export const askedLine = record({
  varietyId: ids.variety.nullable(),
  without: list(ids.variety, 'varieties', 0, ORDER_LINES_MAX),
  dozens: whole(0, 400),
  pieces: whole(0, PIECES_MAX),
  sliced: flag(),
  bagged: flag(),
})

export const askedItem = record({
  itemId: ids.menuItem,
  varietyId: ids.variety.nullable(),
  toasted: flag(),
  without: list(ids.portion, 'portions', 0, 20),
  more: list(ids.portion, 'portions', 0, 20),
  allergies: list(oneOf(ALLERGENS), 'allergens', 0, ALLERGENS.length),
  times: whole(1, TIMES_MAX),
})

function notTooMany(items: readonly { readonly times: number }[], ctx: z.RefinementCtx): void {
  const things = items.reduce((sum, { times }) => sum + times, 0)
  if (things <= ORDER_THINGS_MAX) return
  const params = { wrong: `They are ${things} things made to order.` }
  ctx.addIssue({ code: 'custom', message: `At most ${ORDER_THINGS_MAX} in one order; more as another.`, params })
}

const way = oneOf(['here', 'pickUp', 'delivery'])
const asked = {
  mark: mark.nullable(),
  dueAtMs: instant().nullable(),
  way,
  runId: ids.run.nullable(),
  stop: whole(0, STOPS_MAX),
  lines: list(askedLine, 'lines', 0, ORDER_LINES_MAX),
  items: list(askedItem, 'items', 0, ORDER_ITEMS_MAX).superRefine(notTooMany),
  isPaid: flag(),
  details: orderDetails.exactOptional(),
}

const weekday = whole(1, 7)
export const recurrence = record({
  freq: oneOf(['daily', 'weekly', 'monthly']),
  interval: whole(1, 52),
  from: date(),
  until: date().nullable(),
  weekdays: list(weekday, 'weekdays', 0, 7),
  nth: whole(-1, 5).nullable(),
  except: list(date(), 'dates', 0, DATES_MAX),
  also: list(date(), 'dates', 0, DATES_MAX),
}).superRefine(({ from, until, nth, weekdays }, ctx) => {
  const problem = (field: string, wrong: string, message: string) =>
    ctx.addIssue({ code: 'custom', path: [field], message, params: { wrong } })
  if (until !== null && until < from)
    problem('until', `It ends on ${until}, before it begins.`, `A date from ${from} on.`)
  if (nth === 0) problem('nth', 'There is no weekday number 0 of a month.', '1 to 5, or -1 for the last one.')
  if (nth !== null && weekdays.length === 0)
    problem('weekdays', 'It does not say which weekday.', 'At least one weekday.')
})

const handed = list(record({ varietyId: ids.variety, pieces: pieces() }), 'lines', 0, ORDER_LINES_MAX)
const refText = 'What the till calls the order, 1 to 64 characters.'

export const orderCommands = [
  command('takeOrder', {
    ...asked,
    isRisk: flag().exactOptional(),
    ref: z.string(refText).trim().min(1, refText).max(64, refText).exactOptional(),
  }),
  command('changeOrder', { ...asked, orderId: ids.order, keepsItems: flag().exactOptional() }),
  command('cancelOrder', { orderId: ids.order }),
  command('missOrder', { orderId: ids.order }),
  command('handOverOrder', { orderId: ids.order, lines: handed.nullable() }),
  command('setStanding', {
    standingId: ids.standing.nullable(),
    mark,
    way,
    runId: ids.run.nullable(),
    stop: whole(0, STOPS_MAX),
    dueMinute: whole(0, 24 * 60 - 1),
    lines: list(askedLine, 'lines', 1, ORDER_LINES_MAX),
    isPaid: flag(),
    recurrence,
    onHolidays: flag(),
    details: orderDetails.exactOptional(),
  }),
  command('endStanding', { standingId: ids.standing }),
  command('moveItems', {
    parts: list(record({ orderId: ids.order, no: whole(1, 10_000), step: whole(0, 9) }), 'parts', 1, PARTS_MAX),
    to: oneOf(['begun', 'turned', 'made', 'waiting']),
    shelfId: ids.shelf.nullable(),
  }),
  command('countPortions', { portionId: ids.portion, portions: whole(0, PIECES_MAX) }),
  command('takeUpOrders', {}),
] as const
