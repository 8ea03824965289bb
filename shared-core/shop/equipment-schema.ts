import { z } from 'zod'
import { DEFAULT_MIXER } from './default-rules.ts'
import { spanObject } from './human-time.ts'
import { weight } from './measure-fields.ts'
import { clock, flag, id, list, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { span } from './time-fields.ts'

/** What the shop has, as the set-up file says it: kettle, boards, oven, mixer, cooler. */

export const temperature = () =>
  record({
    degrees: whole(limits.DEGREES_MIN, limits.DEGREES_MAX),
    unit: oneOf(['C', 'F']),
  }).nullable()

const careEvery = () => whole(1, limits.CARE_PIECES_MAX).nullable().default(null)

const careFile = record({
  topUp: careEvery().meta({ description: 'Water filled up.' }),
  malt: careEvery().meta({ description: 'Malt or honey put in.' }),
  skim: careEvery(),
  change: careEvery().meta({ description: 'All of the water, with a wash of the kettle.' }),
})
  .prefault({})
  .meta({ description: 'Pieces boiled from one care of the kettle to the next; null: nobody is reminded.' })

export const kettleFile = record({
  pieces: whole(1, limits.KETTLE_PIECES_MAX).meta({ description: 'Pieces of one dip, a kettle-full.' }),
  cycle: span('From one dip to the next', limits.CYCLE_MS_MIN / 1_000, limits.CYCLE_MS_MAX / 1_000),
  recover: span('How long the water takes to boil again after cold water', 0, limits.RECOVER_MS_MAX / 1_000).default({
    minutes: 5,
  }),
  care: careFile,
})

export const boardsFile = record({
  count: whole(0, limits.BOARDS_MAX).meta({ description: 'All wet boards of the shop.' }),
  pieces: whole(1, limits.BOARD_PIECES_MAX).meta({ description: 'Pieces that fit on one.' }),
  rewet: span('How long a board takes to get wet again', 0, limits.REWET_MS_MAX / 1_000).default({ minutes: 5 }),
})

export const retired = () =>
  flag().default(false).meta({ description: 'No longer used; kept because old records name it.' })

const floorBoards = () => whole(1, limits.FLOOR_BOARDS_MAX).meta({ description: 'Boards that fit on the floor.' })
const emptyBy = () =>
  clock().nullable().default(null).meta({
    description: 'Empty of bagels by then, where it changes over before the oven does; null: with the oven.',
  })
const slots = () =>
  whole(0, limits.SLOTS_MAX)
    .default(0)
    .meta({ description: 'Places of the second menu on it, each for one flatbread; 0: it does not use it.' })
const shelfPieces = () => whole(1, limits.SHELF_PIECES_MAX)

export const shelfFile = record({
  id: id(),
  name: name(limits.NAME_MAX.shelf),
  pieces: shelfPieces().optional().meta({ description: 'Pieces that fit on it.' }),
  boards: floorBoards().optional().meta({ description: 'Only for the floor of an earlier hearth, retired.' }),
  emptyBy: emptyBy(),
  slots: slots(),
  retired: retired(),
}).superRefine(({ pieces, boards }, ctx) => {
  if (pieces !== undefined || boards !== undefined) return
  const [message, wrong] = ['The pieces that fit on this shelf.', '"pieces" is missing.']
  ctx.addIssue({ code: 'custom', path: ['pieces'], message, params: { wrong } })
})

export const floorFile = record({
  id: id(),
  name: name(limits.NAME_MAX.shelf),
  boards: floorBoards(),
  pieces: shelfPieces().optional().meta({ description: 'Left out: as many as the boards hold.' }),
  emptyBy: emptyBy(),
  slots: slots(),
})

const heat = () => ({
  handling: span('Hands at the door for one load', 0, limits.HANDLING_MS_MAX / 1_000).default({ minutes: 1 }),
  bakeAt: temperature().default(null).meta({ description: 'What bagels bake at; null: nobody has said.' }),
  secondAt: temperature().default(null).meta({ description: 'What the second menu bakes at.' }),
})
const shelfList = (from: number) => list(shelfFile, 'shelves', from, limits.KEPT_MAX)

export const ovenFile = z.discriminatedUnion(
  'kind',
  [
    record({ kind: oneOf(['shelves', 'rotating']), ...heat(), shelves: shelfList(1) }),
    record({ kind: oneOf(['hearth']), ...heat(), floor: floorFile, shelves: shelfList(0).default([]) }),
  ],
  '"shelves", "rotating" or "hearth".',
)

export const mixerFile = record({
  name: name(limits.NAME_MAX.mixer)
    .default(DEFAULT_MIXER.name)
    .meta({ description: 'Friction is learnt by it: another mixer is another name.' }),
  wash: span('Washing bowl and hook', 0, limits.WASH_MS_MAX / 1_000).default(spanObject(DEFAULT_MIXER.washMs)),
  leastFlour: weight().meta({ description: 'Less than this the hook does not catch.' }),
  mostFlour: weight(),
})
  .nullable()
  .default(null)
  .meta({ description: 'What one mix can be, by its flour; null: nobody has said.' })

export const coolerFile = record({
  trays: whole(1, limits.COOLER_TRAYS_MAX).meta({ description: 'Trays that it holds.' }),
  keepsAt: temperature().default(null),
})
  .nullable()
  .default(null)
