import * as z from 'zod'
import { decimal, list, whole } from '../../shared-core/shop/set-up-fields.ts'

/**
 * A planning problem as JSON: the scored core, and what a shop may add to it (`BakeOff` says what each is). Keys that
 * nobody knows are passed over, so that a problem may carry notes of its own.
 */

export const VARIETIES_MAX = 60
export const SHELVES_MAX = 20
const ORDERS_MAX = 200
const LINES_MAX = 60
const LOADS_MAX = 200
const POINTS_MAX = 1_000
const FORBIDDEN_MAX = 200
const ALLERGENS_MAX = 30
const PIECES_MAX = 100_000
/** A week before or after that midnight, in minutes: far beyond any day. */
const MINUTE_MAX = 7 * 1_440
const MONEY_MAX = 1_000_000
const MEAN_MAX = 100_000
const DISPERSION_MAX = 1e12
const NAME_MAX = 200

const minute = () => decimal(-MINUTE_MAX, MINUTE_MAX)
const span = () => decimal(0, MINUTE_MAX)
const money = () => decimal(-MONEY_MAX, MONEY_MAX)
const pieces = (least = 0) => whole(least, PIECES_MAX)
const above = (most: number) => {
  const right = `A number above 0, ${most} at most.`
  return z.number(right).gt(0, { error: right, abort: true }).max(most, { error: right, abort: true })
}
const text = () => {
  const right = `A name of 1 to ${NAME_MAX} characters.`
  return z.string(right).min(1, right).max(NAME_MAX, right)
}
const allergens = () => list(text(), 'allergens', 0, ALLERGENS_MAX)

/** An object with these keys; others are left alone. */
function having<Shape extends z.ZodRawShape>(shape: Shape) {
  const keys = Object.keys(shape).map((key) => `"${key}"`)
  return z.object(shape, `An object with ${keys.join(', ')}.`)
}

const line = z.tuple([text(), pieces(1)], 'A pair: the name of a variety and its pieces, e.g. ["Sesame", 36].')
const lines = () => list(line, 'lines', 1, LINES_MAX)

const load = having({
  shelf: text(),
  kettleStart: minute(),
  in: minute(),
  flip: minute(),
  out: minute(),
  lines: lines(),
})

const shelf = having({
  name: text(),
  pieces: pieces(),
  emptyByMin: minute().optional(),
  readyMin: minute().optional(),
})

const oven = having({
  readyMin: minute(),
  mustBeEmptyMin: minute(),
  firstSideMin: span(),
  handlingMin: span(),
  shelves: list(shelf, 'shelves', 1, SHELVES_MAX),
  turnMin: span().optional(),
})

const point = z.tuple(
  [minute(), decimal(0, 1)],
  'A pair: a minute, and the part of the day’s demand that has come by then, 0 to 1.',
)

const variety = having({
  name: text(),
  dough: text(),
  bakeMin: above(MINUTE_MAX),
  onShelf: pieces(),
  price: money(),
  cost: money(),
  salvage: money(),
  lostSale: money(),
  stalePerHour: money(),
  demand: having({
    mean: decimal(0, MEAN_MAX),
    dispersion: above(DISPERSION_MAX),
    profile: list(point, 'points', 1, POINTS_MAX),
  }),
  coolMin: span().optional(),
  show: having({ atOpen: pieces(), least: pieces(), untilMin: minute() }).optional(),
  brings: allergens().optional(),
  avoids: allergens().optional(),
})

const order = having({
  due: minute(),
  lines: lines(),
  leadMin: span().optional(),
  coolMin: span().optional(),
})

const dough = having({
  pieces: pieces(),
  notBeforeMin: minute().optional(),
  carryValue: money().optional(),
})

const hands = having({
  loadMin: span(),
  flipMin: span(),
  outMin: span(),
  people: list(
    z.tuple([minute(), whole(0, 99)], 'A pair: a minute, and how many people are there from then on.'),
    'entries',
    1,
    POINTS_MAX,
  ),
})

const forbidden = having({
  shelf: text().optional(),
  variety: text().optional(),
  fromMin: minute(),
  toMin: minute(),
})

export const bakeOffSchema = having({
  unit: pieces(1),
  kettle: having({
    pieces: pieces(1),
    cycleMin: above(MINUTE_MAX),
    readyMin: minute().optional(),
    recoveryMin: span().optional(),
  }),
  boards: having({ count: pieces(), pieces: pieces(1), maxWaitMin: span(), rewetMin: span().optional() }),
  oven,
  coolMin: span(),
  bakeToleranceMin: span(),
  open: minute(),
  close: minute(),
  doughs: z.record(z.string(), dough, 'An object: of each dough, by its name, { "pieces": … }.'),
  varieties: list(variety, 'varieties', 1, VARIETIES_MAX),
  orders: list(order, 'orders', 0, ORDERS_MAX),
  now: minute().optional(),
  running: list(load, 'loads', 0, LOADS_MAX).optional(),
  hands: hands.optional(),
  pinned: list(load, 'loads', 0, LOADS_MAX).optional(),
  forbidden: list(forbidden, 'entries', 0, FORBIDDEN_MAX).optional(),
  washes: list(minute(), 'times', 0, FORBIDDEN_MAX).optional(),
  contactNow: allergens().optional(),
  contactCost: money().optional(),
})

export const bakePlanSchema = having({
  loads: z.array(load),
  planMs: z.number().min(0).meta({ description: 'Milliseconds of processor time that planning took.' }),
})

export type BakeOffJson = z.infer<typeof bakeOffSchema>
