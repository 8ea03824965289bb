import { z } from 'zod'
import { bakingFile } from './baking-schema.ts'
import { counterFile, hoursFile, personFile, stepFile, weekdaysFile } from './day-schema.ts'
import { demandFile, specialDayFile } from './demand-schema.ts'
import { boardsFile, coolerFile, kettleFile, mixerFile, ovenFile, retired } from './equipment-schema.ts'
import { contains, doughRoomFile, formulaFile, ingredientFile, madeOf, preparationFile } from './formula-schema.ts'
import { kitchenStationFile, menuItemFile, portionFile } from './kitchen-schema.ts'
import { weight } from './measure-fields.ts'
import { ordersFile, runFile } from './order-schema.ts'
import { flag, id, list, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { BATCH_STAGES, LINE_ACTS } from './stages.ts'
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

export const windowsFile = shopWindowsFile.prefault({})

export const doughFile = record({
  id: id(),
  name: name(limits.NAME_MAX.dough),
  route: list(oneOf(BATCH_STAGES), 'stages', 1, BATCH_STAGES.length).meta({
    description: 'What it goes through once shaped: proof, chill and rack as they come, then kettle, boards, oven.',
    examples: [['proof', 'chill', 'rack', 'kettle', 'boards', 'oven']],
  }),
  trayPieces: whole(1, limits.TRAY_PIECES_MAX).default(24).meta({ description: 'Pieces on a tray.' }),
  contains: contains(),
  formula: id().optional().meta({ description: 'Id of the formula that it is mixed by; left out: nobody has said.' }),
  pieceWeight: weight().nullable().default(null).meta({ description: 'Of one piece as it is shaped.' }),
  shapedBy: oneOf(['divider', 'hand']).default('hand'),
  labelWeight: weight()
    .nullable()
    .default(null)
    .meta({ description: 'What is on the label of a baked piece, where the shop sells by weight.' }),
  windows: ownWindowsFile.default({}),
  retired: retired(),
})

export const toppingFile = record({
  id: id(),
  name: name(limits.NAME_MAX.topping),
  contains: contains(),
  madeOf: madeOf(),
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
  topping: oneOf(['none', 'before-flip', 'after-flip'])
    .default('none')
    .meta({ description: 'When the topping goes on.' }),
  toppedWith: id().optional().meta({ description: 'Id of the topping; left out: nobody has said which.' }),
  bakedOn: oneOf(['board', 'pan']).default('board').meta({ description: 'What its first side lies on.' }),
  flip: flag().default(true),
  windows: ownWindowsFile.default({}),
  priceCents: whole(0, limits.CENTS_MAX).default(0).meta({ description: 'Price of a piece; 0 when not known.' }),
  costCents: whole(0, limits.CENTS_MAX).default(0).meta({ description: 'What goes into a piece; 0 when not known.' }),
  kitchenCents: whole(0, limits.CENTS_MAX)
    .nullable()
    .default(null)
    .meta({ description: 'What a piece brings when the kitchen uses it; null: it is not used so.' }),
  showLeast: whole(0, limits.SHOW_LEAST_MAX)
    .default(0)
    .meta({ description: 'Pieces that should be on show from the opening on; 0: no such wish.' }),
  avoids: contains().meta({
    description: 'Allergens that it should not meet in water, on boards, trays, peel or stone.',
  }),
  usual: whole(0, limits.USUAL_MAX)
    .nullable()
    .default(null)
    .meta({ description: 'Pieces on a usual day, guessed; null: nobody has said.' }),
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
  weekdays: weekdaysFile,
  kettle: kettleFile,
  boards: boardsFile,
  oven: ovenFile,
  mixer: mixerFile,
  cooler: coolerFile,
  doughRoom: doughRoomFile,
  counter: counterFile,
  demand: demandFile,
  baking: bakingFile,
  orders: ordersFile,
  windows: windowsFile,
  ingredients: list(ingredientFile, 'ingredients', 0, limits.KEPT_MAX).default([]),
  preparations: list(preparationFile, 'preparations', 0, limits.KEPT_MAX).default([]),
  formulas: list(formulaFile, 'formulas', 0, limits.KEPT_MAX).default([]),
  doughs: list(doughFile, 'doughs', 1, limits.KEPT_MAX),
  toppings: list(toppingFile, 'toppings', 0, limits.KEPT_MAX).default([]),
  varieties: list(varietyFile, 'varieties', 1, limits.KEPT_MAX),
  stations: list(stationFile, 'stations', 1, limits.KEPT_MAX),
  people: list(personFile, 'people', 0, limits.KEPT_MAX).default([]),
  steps: list(stepFile, 'steps', 0, limits.KEPT_MAX).default([]),
  specialDays: list(specialDayFile, 'special days', 0, limits.KEPT_MAX).default([]),
  kitchenStations: list(kitchenStationFile, 'kitchen stations', 0, limits.KEPT_MAX).default([]),
  portions: list(portionFile, 'portions', 0, limits.KEPT_MAX).default([]),
  menu: list(menuItemFile, 'items', 0, limits.KEPT_MAX).default([]),
  runs: list(runFile, 'runs', 0, limits.KEPT_MAX).default([]),
}).meta({
  title: 'Set-up of a shop',
  description: 'Equipment, hours, doughs and varieties of one shop. Entities keep their id for good.',
})

/** A set-up file as people write it, with what they may leave out. */
export type SetUpFile = z.input<typeof setUpFile>
/** The same with every default filled in. */
export type FullSetUpFile = z.output<typeof setUpFile>
