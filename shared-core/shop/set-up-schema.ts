import { z } from 'zod'
import { clock, flag, id, list, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { BATCH_STAGES, LINE_ACTS } from './stages.ts'
import { span } from './time-fields.ts'
import { ownWindowsFile, shopWindowsFile } from './windows-schema.ts'

/** The form that this version reads and writes. */
export const SET_UP_FORMAT = 'boilboard set-up 1'

/** The set-up file, part by part. `set-up-file.ts` reads it; which parts fit each other is said in `set-up-rules.ts`. */
export const profileFile = record({
  name: name(limits.NAME_MAX.shop).meta({ examples: ['Ninth and Nowhere'] }),
  zone: z
    .string('The name of a time zone, e.g. "America/Chicago".')
    .max(64, 'The name of a time zone, e.g. "America/Chicago".')
    .meta({ description: 'Time zone by its name in the IANA database.', examples: ['America/Chicago'] }),
  language: oneOf(['en', 'es']).default('en').meta({ description: 'Language of screens that have not chosen one.' }),
  units: record({
    temperature: oneOf(['C', 'F']).default('F'),
    weight: oneOf(['g', 'lb-oz']).default('lb-oz'),
  }).default({
    temperature: 'F',
    weight: 'lb-oz',
  }),
  clock: oneOf([12, 24]).default(12).meta({ description: 'Hours shown from 1 to 12 or from 0 to 23.' }),
})

export const hoursFile = record({
  ovenReady: clock().meta({ description: 'When the first load can go in.' }),
  open: clock(),
  changeover: record({ from: clock(), to: clock() })
    .optional()
    .meta({ description: 'When the oven is emptied and changed over; left out: the oven bakes until close.' }),
  close: clock(),
  secondMenu: name(limits.NAME_MAX.secondMenu)
    .optional()
    .meta({ description: 'What the oven is for after the changeover.', examples: ['Flatbreads'] }),
})

export const kettleFile = record({
  pieces: whole(1, limits.KETTLE_PIECES_MAX).meta({ description: 'Pieces of one dip, a kettle-full.' }),
  cycle: span('From one dip to the next', limits.CYCLE_MS_MIN / 1_000, limits.CYCLE_MS_MAX / 1_000),
})

export const boardsFile = record({
  count: whole(0, limits.BOARDS_MAX).meta({ description: 'All wet boards of the shop.' }),
  pieces: whole(1, limits.BOARD_PIECES_MAX).meta({ description: 'Pieces that fit on one.' }),
  rewet: span('How long a board takes to get wet again', 0, limits.REWET_MS_MAX / 1_000).default({ minutes: 5 }),
})

const retired = () => flag().default(false).meta({ description: 'No longer used; kept because old records name it.' })

const floorBoards = () => whole(1, limits.FLOOR_BOARDS_MAX).meta({ description: 'Boards that fit on the floor.' })
const shelfPieces = () => whole(1, limits.SHELF_PIECES_MAX)

export const shelfFile = record({
  id: id(),
  name: name(limits.NAME_MAX.shelf),
  pieces: shelfPieces().optional().meta({ description: 'Pieces that fit on it.' }),
  boards: floorBoards().optional().meta({ description: 'Only for the floor of an earlier hearth, retired.' }),
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
})

const handling = () => span('Hands at the door for one load', 0, limits.HANDLING_MS_MAX / 1_000).default({ minutes: 1 })
const shelfList = (from: number) => list(shelfFile, 'shelves', from, limits.KEPT_MAX)

export const ovenFile = z.discriminatedUnion(
  'kind',
  [
    record({ kind: oneOf(['shelves', 'rotating']), handling: handling(), shelves: shelfList(1) }),
    record({ kind: oneOf(['hearth']), handling: handling(), floor: floorFile, shelves: shelfList(0).default([]) }),
  ],
  '"shelves", "rotating" or "hearth".',
)

export const windowsFile = shopWindowsFile.prefault({})

export const doughFile = record({
  id: id(),
  name: name(limits.NAME_MAX.dough),
  route: list(oneOf(BATCH_STAGES), 'stages', 1, BATCH_STAGES.length).meta({
    description: 'What it goes through once shaped: proof, chill and rack as they come, then kettle, boards, oven.',
    examples: [['proof', 'chill', 'rack', 'kettle', 'boards', 'oven']],
  }),
  trayPieces: whole(1, limits.TRAY_PIECES_MAX).default(24).meta({ description: 'Pieces on a tray.' }),
  windows: ownWindowsFile.default({}),
  retired: retired(),
})

export const varietyFile = record({
  id: id(),
  name: name(limits.NAME_MAX.variety),
  dough: id().meta({ description: 'Id of the dough that it is made of.' }),
  size: oneOf(['mini', 'regular', 'large', 'stick']).default('regular'),
  decidedAt: oneOf(['mixer', 'line'])
    .default('line')
    .meta({ description: 'Made in the dough (raisins) or on the line (seeds on the boards).' }),
  topping: oneOf(['none', 'before-flip', 'after-flip']).default('none'),
  bakedOn: oneOf(['board', 'pan']).default('board').meta({ description: 'What its first side lies on.' }),
  flip: flag().default(true),
  windows: ownWindowsFile.default({}),
  priceCents: whole(0, limits.CENTS_MAX).default(0).meta({ description: 'Price of a piece; 0 when not known.' }),
  costCents: whole(0, limits.CENTS_MAX).default(0).meta({ description: 'What goes into a piece; 0 when not known.' }),
  retired: retired(),
})

export const stationFile = record({
  id: id(),
  name: name(limits.NAME_MAX.station),
  acts: list(oneOf(LINE_ACTS), 'acts', 0, LINE_ACTS.length).meta({
    description: 'What this station taps. What no station taps is presumed from the next act that one does.',
    examples: [['dip', 'lift']],
  }),
  retired: retired(),
})

export const setUpFile = record({
  $schema: z.string('Where the JSON Schema of this file is.').optional(),
  format: oneOf([SET_UP_FORMAT]),
  shop: profileFile,
  hours: hoursFile,
  kettle: kettleFile,
  boards: boardsFile,
  oven: ovenFile,
  windows: windowsFile,
  doughs: list(doughFile, 'doughs', 1, limits.KEPT_MAX),
  varieties: list(varietyFile, 'varieties', 1, limits.KEPT_MAX),
  stations: list(stationFile, 'stations', 1, limits.KEPT_MAX),
}).meta({
  title: 'Set-up of a shop',
  description: 'Equipment, hours, doughs and varieties of one shop. Entities keep their id for good.',
})

/** A set-up file as people write it, with what they may leave out. */
export type SetUpFile = z.input<typeof setUpFile>
/** The same with every default filled in. */
export type FullSetUpFile = z.output<typeof setUpFile>
