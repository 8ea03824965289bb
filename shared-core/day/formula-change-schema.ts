import { formulaId, ingredientId, preparationId } from '../ids.ts'
import { flag, id, list, name, oneOf, record, whole } from '../shop/set-up-fields.ts'
import * as limits from '../shop/set-up-limits.ts'
import { ALLERGENS, INGREDIENT_KINDS } from '../shop/stages.ts'
import { minute, span, weight, window } from './change-fields.ts'

/** What doughs are made of and the dough room, as a command carries them. */

const degrees = () =>
  record({
    thousandths: whole(limits.ROOM_DEGREES_MIN * 1_000, limits.ROOM_DEGREES_MAX * 1_000),
    unit: oneOf(['C', 'F']),
  })
const difference = () => record({ thousandths: whole(0, limits.FRICTION_DEGREES_MAX * 1_000), unit: oneOf(['C', 'F']) })

const percent = (from: number, to: number) => whole(from, to * 1_000)
const share = () => percent(1, limits.PERCENT_MAX)
const order = () => whole(0, limits.ORDER_MAX)

export const contains = () => list(oneOf(ALLERGENS), 'allergens', 0, ALLERGENS.length)

export const madeOf = () =>
  list(record({ ingredientId: id().transform(ingredientId), weight: weight() }), 'ingredients', 0, limits.MADE_OF_MAX)

export const ingredient = record({
  id: id().transform(ingredientId),
  name: name(limits.NAME_MAX.ingredient),
  order: order(),
  kind: oneOf(INGREDIENT_KINDS),
  contains: contains(),
  price: record({ cents: whole(0, limits.PRICE_CENTS_MAX), per: weight() }).nullable(),
  bag: weight().nullable(),
  retired: flag(),
})

export const preparation = record({
  id: id().transform(preparationId),
  name: name(limits.NAME_MAX.preparation),
  order: order(),
  kind: oneOf(['preferment', 'soaker']),
  lines: list(record({ ingredientId: id().transform(ingredientId), percent: share() }), 'lines', 1, limits.LINES_MAX),
  seedPercent: percent(0, limits.PERCENT_MAX),
  fedWith: weight().nullable(),
  ready: window(),
  retired: flag(),
})

const formulaLine = record({
  ingredientId: id().transform(ingredientId),
  percent: share(),
  at: oneOf(['start', 'mixIn']),
})

export const formula = record({
  id: id().transform(formulaId),
  name: name(limits.NAME_MAX.formula),
  order: order(),
  lines: list(formulaLine, 'lines', 1, limits.LINES_MAX),
  preparations: list(
    record({ preparationId: id().transform(preparationId), percent: share() }),
    'preparations',
    0,
    limits.PREPARATIONS_OF_MAX,
  ),
  lossPercent: percent(0, limits.LOSS_PERCENT_MAX),
  bakeLossPercent: percent(0, limits.LOSS_PERCENT_MAX),
  doughAt: degrees(),
  friction: difference(),
  mixMs: span(1_000, limits.MIX_MS_MAX),
  mixInMs: span(0, limits.MIX_MS_MAX).nullable(),
  restMs: span(0, limits.REST_MS_MAX),
  bulk: record({
    window: window(),
    foldsMs: list(span(0, limits.WINDOW_MS_MAX), 'folds', 0, limits.FOLDS_MAX),
    chill: window().nullable(),
  }).nullable(),
  strength: whole(0, limits.STRENGTH_MAX),
  daysAhead: whole(1, limits.DAYS_AHEAD_MAX),
  decideByMinute: minute(),
  retired: flag(),
})

export const doughRoom = record({
  fromMinute: minute(),
  coolerByMinute: minute(),
  scaleStep: weight(),
  flourIn: oneOf(['none', 'halfBags', 'bags']),
  surplusTo: id().transform(formulaId).nullable(),
  dividerPiecesPerHour: whole(1, limits.DIVIDER_PIECES_MAX).nullable(),
  handPiecesPerHour: whole(1, limits.HAND_PIECES_MAX),
  rollers: whole(1, limits.ROLLERS_MAX),
  proofTrays: whole(1, limits.COOLER_TRAYS_MAX).nullable(),
  roomAt: degrees(),
  flourAt: degrees(),
  tapAt: degrees(),
  hotTapAt: degrees(),
  hasIce: flag(),
  provesAt: degrees(),
  coolsIn: span(60_000, limits.COOLS_IN_MS_MAX),
})
