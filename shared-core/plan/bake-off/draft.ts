import { ContactCourse } from './contact.ts'
import { newTimes } from './line.ts'
import type { Load } from './load.ts'
import type { Shop } from './shop.ts'

const LOADS_OF_VARIETY_MAX = 400
const readyAt = new Float64Array(LOADS_OF_VARIETY_MAX)
const pieces = new Float64Array(LOADS_OF_VARIETY_MAX)

/** A plan in the making: loads in the order of their kettle starts, and what each variety's shelf then earns. */
export class Draft {
  loads: readonly Load[] = []
  worth: number
  readonly doughLeft: Int32Array
  readonly #shop: Shop
  readonly #values: Float64Array
  readonly #times = newTimes()
  readonly #triedValues: Float64Array
  readonly #isTouched: Uint8Array
  #touched: number[] = []
  #tried: readonly Load[] = []
  #contactCost = 0
  #triedContactCost = 0

  constructor(shop: Shop) {
    this.#shop = shop
    this.doughLeft = shop.doughUnits.slice()
    this.#values = Float64Array.from(shop.values, (value) => value.of(readyAt, pieces, 0))
    this.#triedValues = new Float64Array(shop.values.length)
    this.#isTouched = new Uint8Array(shop.values.length)
    this.worth = this.#values.reduce((sum, value) => sum + value, 0)
  }

  /**
   * What other loads would be worth more than these; −∞ if the line cannot do them. Empty loads must not be among them.
   * @param varieties those of which units have been changed or have got another load; others are found by their times
   */
  gainOf(loads: readonly Load[], varieties: readonly number[]): number {
    const { line, work } = this.#shop
    this.#clear()
    for (const variety of varieties) this.#touch(variety)
    work.done += 10 + loads.length
    if (!line.time(loads, this.#times)) return Number.NEGATIVE_INFINITY
    const { outs } = this.#times
    for (let index = 0; index < loads.length; index++) {
      const load = loads[index] as Load
      if (load.out === outs[index]) continue
      for (const variety of load.varieties) this.#touch(variety)
    }
    this.#tried = loads
    this.#triedContactCost = this.#contactCostOf(loads)
    let gain = this.#contactCost - this.#triedContactCost
    for (const variety of this.#touched) {
      const value = this.#valueOf(variety, loads, outs)
      this.#triedValues[variety] = value
      gain += value - (this.#values[variety] as number)
    }
    return gain
  }

  /** Takes the loads of which the gain was asked last. */
  take(): void {
    for (const load of this.loads) this.#addDough(load, 1)
    this.loads = this.#tried
    for (const load of this.loads) this.#addDough(load, -1)
    for (let index = 0; index < this.loads.length; index++) {
      const load = this.loads[index] as Load
      load.kettleStart = this.#times.kettleStarts[index] as number
      load.into = load.wanted = this.#times.ins[index] as number
      load.out = this.#times.outs[index] as number
      load.shelf = this.#times.shelves[index] as number
    }
    this.worth += this.#contactCost - this.#triedContactCost
    this.#contactCost = this.#triedContactCost
    for (const variety of this.#touched) {
      this.worth += (this.#triedValues[variety] as number) - (this.#values[variety] as number)
      this.#values[variety] = this.#triedValues[variety] as number
    }
    this.#clear()
  }

  #contactCostOf(loads: readonly Load[]): number {
    const { contacts, given } = this.#shop
    if (contacts === null) return 0
    const course = new ContactCourse(contacts)
    for (let index = 0; index < loads.length; index++) {
      const { varieties, units } = loads[index] as Load
      course.begin(this.#times.kettleStarts[index] as number)
      for (const variety of varieties) course.meet(variety, (units[variety] as number) * given.unit)
      for (const variety of varieties) course.bring(variety)
    }
    return course.cost
  }

  #addDough({ varieties, units }: Load, sign: number): void {
    for (const variety of varieties) {
      const dough = this.#shop.doughOf[variety] as number
      this.doughLeft[dough] = (this.doughLeft[dough] as number) + sign * (units[variety] as number)
    }
  }

  #valueOf(variety: number, loads: readonly Load[], outs: Float64Array): number {
    const { values, given, work, coolMin } = this.#shop
    let count = 0
    for (let index = 0; index < loads.length; index++) {
      const units = (loads[index] as Load).units[variety] as number
      if (units === 0) continue
      readyAt[count] = (outs[index] as number) + (coolMin[variety] as number)
      pieces[count++] = units * given.unit
    }
    const value = values[variety]
    if (value === undefined) return 0
    work.done += value.points * (count + 2)
    return value.of(readyAt, pieces, count)
  }

  #touch(variety: number): void {
    if (this.#isTouched[variety] === 1) return
    this.#isTouched[variety] = 1
    this.#touched.push(variety)
  }

  #clear(): void {
    for (const variety of this.#touched) this.#isTouched[variety] = 0
    this.#touched = []
  }
}
