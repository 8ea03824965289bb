import { DEFAULT_WINDOWS } from './default-windows.ts'
import { dwellObject } from './human-time.ts'
import { record } from './set-up-fields.ts'
import { dwellField } from './time-fields.ts'

const proof = () => dwellField('From shaping to proofed.')
const chill = () => dwellField('In the cooler.')
const rack = () => dwellField('Out of the cooler, before the kettle.')
const kettle = () => dwellField('In the water.')
const boards = () => dwellField('From the lift to the oven.')
const firstSide = () => dwellField('In the oven until the flip.')
const bake = () => dwellField('In the oven in all, first side included.')
const cool = () => dwellField('From the oven until for sale.')

/** The shop's own windows. Flip and out have one always: keys and the wall count down to them. */
export const shopWindowsFile = record({
  proof: proof().nullable().default(dwellObject(DEFAULT_WINDOWS.proof)),
  chill: chill().nullable().default(dwellObject(DEFAULT_WINDOWS.chill)),
  rack: rack().nullable().default(dwellObject(DEFAULT_WINDOWS.rack)),
  kettle: kettle().nullable().default(dwellObject(DEFAULT_WINDOWS.kettle)),
  boards: boards().nullable().default(dwellObject(DEFAULT_WINDOWS.boards)),
  firstSide: firstSide().default(dwellObject(DEFAULT_WINDOWS.firstSide)),
  bake: bake().default(dwellObject(DEFAULT_WINDOWS.bake)),
  cool: cool().nullable().default(dwellObject(DEFAULT_WINDOWS.cool)),
}).meta({ description: 'How long each stage should take; null: no window. Left out: common practice.' })

/** What a dough or a variety says differently. */
export const ownWindowsFile = record({
  proof: proof().optional(),
  chill: chill().optional(),
  rack: rack().optional(),
  kettle: kettle().optional(),
  boards: boards().optional(),
  firstSide: firstSide().optional(),
  bake: bake().optional(),
  cool: cool().optional(),
}).meta({ description: 'Windows that differ from those of the dough or the shop.' })
