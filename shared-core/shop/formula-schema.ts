import { retired } from './equipment-schema.ts'
import { degrees, difference, percent, weight } from './measure-fields.ts'
import { clock, flag, id, list, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { ALLERGENS, INGREDIENT_KINDS } from './stages.ts'
import { dwellField, span } from './time-fields.ts'

/** What doughs are made of and how the dough room works, as the set-up file says it. */

export const contains = () =>
  list(oneOf(ALLERGENS), 'allergens', 0, ALLERGENS.length)
    .default([])
    .meta({ description: 'Allergens in it, as far as the shop has said.' })

export const madeOf = () =>
  list(record({ ingredient: id(), weight: weight() }), 'ingredients', 0, limits.MADE_OF_MAX)
    .default([])
    .meta({ description: 'What goes onto one piece.' })

export const ingredientFile = record({
  id: id(),
  name: name(limits.NAME_MAX.ingredient),
  kind: oneOf(INGREDIENT_KINDS),
  contains: contains(),
  price: record({ cents: whole(0, limits.PRICE_CENTS_MAX), per: weight() })
    .nullable()
    .default(null)
    .meta({ description: 'What so much of it costs; null: nobody has said.' }),
  bag: weight().nullable().default(null).meta({ description: 'How it is bought: a bag, a case; null: loose.' }),
  retired: retired(),
})

const PERCENT_LEAST = 0.001
const share = () => percent(PERCENT_LEAST, limits.PERCENT_MAX)

export const preparationFile = record({
  id: id(),
  name: name(limits.NAME_MAX.preparation),
  kind: oneOf(['preferment', 'soaker']),
  lines: list(record({ ingredient: id(), percent: share() }), 'lines', 1, limits.LINES_MAX).meta({
    description: 'In percent of a pre-ferment’s flour; of a soaker, in percent of all but its water.',
  }),
  seedPercent: percent(0, limits.PERCENT_MAX)
    .default(0)
    .meta({ description: 'Ripe pre-ferment that it is built from, in percent of its flour; 0: begun with yeast.' }),
  fedWith: weight()
    .nullable()
    .default(null)
    .meta({ description: 'Flour that a culture is fed with on days when no dough asks for it; null: not fed.' }),
  ready: dwellField('From its beginning until it may, should and must be used.'),
  retired: retired(),
})

const bulkFile = record({
  window: dwellField('Before it is shaped.'),
  folds: list(
    span('From the beginning of the bulk ferment', 0, limits.WINDOW_MS_MAX / 1_000),
    'folds',
    0,
    limits.FOLDS_MAX,
  )
    .default([])
    .meta({ description: 'When it is folded.' }),
  chill: dwellField('Chilled in bulk, before it is shaped.').nullable().default(null),
})

export const formulaFile = record({
  id: id(),
  name: name(limits.NAME_MAX.formula),
  lines: list(
    record({ ingredient: id(), percent: share(), at: oneOf(['start', 'mixIn']).default('start') }),
    'lines',
    1,
    limits.LINES_MAX,
  ).meta({
    description: 'Baker’s percentages of all flour, what the preparations hold included. The flours sum to 100.',
  }),
  preparations: list(record({ preparation: id(), percent: share() }), 'preparations', 0, limits.PREPARATIONS_OF_MAX)
    .default([])
    .meta({ description: 'What is made ahead: its base (100 %) in percent of all flour.' }),
  lossPercent: percent(0, limits.LOSS_PERCENT_MAX).default(0).meta({ description: 'Dough left in bowl and divider.' }),
  bakeLossPercent: percent(0, limits.LOSS_PERCENT_MAX)
    .default(0)
    .meta({ description: 'What a piece loses in kettle and oven.' }),
  doughAt: degrees().meta({ description: 'The temperature wished for the mixed dough.' }),
  friction: difference().meta({ description: 'The friction factor to begin with, a difference.' }),
  mix: span('From the first turn to the end of mixing', 1, limits.MIX_MS_MAX / 1_000),
  mixInsAfter: span('From the first turn to the mix-ins', 0, limits.MIX_MS_MAX / 1_000)
    .nullable()
    .default(null),
  rest: span('From the end of mixing to the bench', 0, limits.REST_MS_MAX / 1_000).default({ minutes: 0 }),
  bulk: bulkFile.nullable().default(null).meta({ description: 'Bulk ferment; null: shaped after the rest.' }),
  strength: whole(0, limits.STRENGTH_MAX).default(0).meta({ description: 'How strong its flavour is: mixed last.' }),
  daysAhead: whole(1, limits.DAYS_AHEAD_MAX).default(1).meta({ description: 'Days from mixing to boiling.' }),
  decideBy: clock().default('12:00').meta({ description: 'By when it must be decided on its day.' }),
  retired: retired(),
})

export const doughRoomFile = record({
  from: clock().meta({ description: 'When work can begin there.' }),
  coolerBy: clock().meta({ description: 'By when the last tray should be in the cooler.' }),
  scaleStep: weight().meta({ description: 'What the scale shows at the finest.' }),
  flourIn: oneOf(['none', 'halfBags', 'bags'])
    .default('none')
    .meta({ description: 'Flour of a day in whole or half bags.' }),
  surplusTo: id().optional().meta({ description: 'Id of the formula that gets what is over of a bag.' }),
  dividerPiecesPerHour: whole(1, limits.DIVIDER_PIECES_MAX)
    .nullable()
    .default(null)
    .meta({ description: 'Null: shaped by hand only.' }),
  handPiecesPerHour: whole(1, limits.HAND_PIECES_MAX).meta({
    description: 'Pieces that one roller shapes in an hour.',
  }),
  rollers: whole(1, limits.ROLLERS_MAX).default(1).meta({ description: 'People who shape by hand at once.' }),
  proofTrays: whole(1, limits.COOLER_TRAYS_MAX)
    .nullable()
    .default(null)
    .meta({ description: 'Trays that may proof at once; null: no limit.' }),
  roomAt: degrees().meta({ description: 'Assumed where nobody has read any; so are the next three.' }),
  flourAt: degrees(),
  tapAt: degrees(),
  hotTapAt: degrees(),
  hasIce: flag().default(false),
  provesAt: degrees().meta({ description: 'The room at which the doughs’ proof windows hold.' }),
  coolsIn: span('Time constant of a tray of pieces in the cooler', 60, limits.COOLS_IN_MS_MAX / 1_000),
})
  .nullable()
  .default(null)
  .meta({ description: 'How the dough room works; null: nobody has said.' })
