import type { BakeOff } from './bake-off.ts'
import type { Contacts } from './contact.ts'
import { contactsOf } from './contact.ts'
import { Line } from './line.ts'
import { coolMinOf } from './load-parts.ts'
import { ShelfValue } from './shelf-value.ts'

const ROUGH_POINTS = 5

/** The instance by numbers: varieties and doughs by their place, pieces in units. */
export interface Shop {
  readonly given: BakeOff
  readonly line: Line
  readonly values: readonly ShelfValue[]
  /** The same on fewer points, for the first plan. */
  readonly roughValues: readonly ShelfValue[]
  readonly bakeMin: Float64Array
  readonly coolMin: Float64Array
  readonly doughOf: Int32Array
  /** By dough: not into the kettle before it. */
  readonly notBeforeMin: Float64Array
  /** Units that each dough can give. */
  readonly doughUnits: Int32Array
  /** Null where none costs anything. */
  readonly contacts: Contacts | null
  readonly work: Work
}

/** Computing is budgeted by what was done, never by the clock, so that a plan is the same everywhere. */
export interface Work {
  done: number
  limit: number
}

export function shopOf(given: BakeOff): Shop {
  const doughs = Object.keys(given.doughs)
  return {
    given,
    line: new Line(given),
    values: given.varieties.map((variety) => new ShelfValue(given, variety)),
    roughValues: given.varieties.map((variety) => new ShelfValue(given, variety, ROUGH_POINTS)),
    bakeMin: Float64Array.from(given.varieties, ({ bakeMin }) => bakeMin),
    coolMin: Float64Array.from(given.varieties, (variety) => coolMinOf(given, variety)),
    doughOf: Int32Array.from(given.varieties, ({ dough }) => doughs.indexOf(dough)),
    notBeforeMin: Float64Array.from(doughs, (dough) => given.doughs[dough]?.notBeforeMin ?? Number.NEGATIVE_INFINITY),
    doughUnits: Int32Array.from(doughs, (dough) => Math.floor((given.doughs[dough]?.pieces ?? 0) / given.unit + 1e-9)),
    contacts: contactsOf(given),
    work: { done: 0, limit: Number.POSITIVE_INFINITY },
  }
}
