import type { SlotsProblem, SlotUnit } from './slots-units.ts'

/**
 * Puts units into the oven in a given order, each as soon as it can go in. Every schedule in which nothing could begin
 * sooner is reached by some order: that of its starts.
 */
export class SlotsDecoder {
  readonly problem: SlotsProblem
  readonly #places: number
  /** By position in the order: when each place is free before its unit goes in. */
  readonly #before: Float64Array
  readonly #free: Float64Array
  /** By unit; NaN: it would come out too late and is left out. */
  readonly startMs: Float64Array
  readonly #completeMs: Float64Array
  readonly #kth: Float64Array
  /** Of the order that was put in last. */
  lateMs = 0
  sumMs = 0
  tooLate = 0

  constructor(problem: SlotsProblem) {
    this.problem = problem
    this.#places = problem.freeMs.length
    this.#before = new Float64Array((problem.units.length + 1) * this.#places)
    this.#before.set(problem.freeMs)
    this.#free = new Float64Array(this.#places)
    this.startMs = new Float64Array(problem.units.length).fill(Number.NaN)
    this.#completeMs = new Float64Array(problem.orders.length)
    this.#kth = new Float64Array(this.#places)
  }

  /**
   * Puts in what comes from a position on; what is before it stays as it was `keep`-ed.
   * @param onPlaces called for each part with the places that it takes
   */
  put(
    order: Int32Array,
    from: number,
    keep: boolean,
    onPlaces?: (unit: number, part: number, places: number[]) => void,
  ) {
    const { units } = this.problem
    const places = this.#places
    this.#free.set(this.#before.subarray(from * places, (from + 1) * places))
    for (let at = from; at < order.length; at += 1) {
      if (keep) this.#before.set(this.#free, at * places)
      const index = order[at] ?? 0
      const unit = units[index]
      if (unit === undefined) continue
      this.startMs[index] = this.#putUnit(unit, index, onPlaces)
    }
    this.#sum()
  }

  #putUnit(unit: SlotUnit, index: number, onPlaces?: (unit: number, part: number, places: number[]) => void): number {
    const first = unit.parts[0]
    if (unit.parts.length === 1 && first !== undefined && first.slots === 1 && onPlaces === undefined) {
      const place = this.#placeFor(unit.readyMs)
      const atMs = Math.max(unit.readyMs, this.#free[place] ?? 0)
      if (atMs + first.bakeMs > this.problem.stopMs) return Number.NaN
      this.#free[place] = atMs + first.bakeMs + this.problem.given.handlingMs
      return atMs
    }
    return this.#putTogether(unit, index, onPlaces)
  }

  /** The place that is free last among those free in time; else the one that is free first. */
  #placeFor(readyMs: number): number {
    const free = this.#free
    let best = 0
    let bestMs = free[0] ?? 0
    for (let place = 1; place < free.length; place += 1) {
      const atMs = free[place] ?? 0
      const isBetter = bestMs <= readyMs ? atMs <= readyMs && atMs > bestMs : atMs < bestMs
      if (isBetter) {
        best = place
        bestMs = atMs
      }
    }
    return best
  }

  /** Several parts, or a wide one: they begin when the last of them finds its places. */
  #putTogether(
    unit: SlotUnit,
    index: number,
    onPlaces?: (unit: number, part: number, places: number[]) => void,
  ): number {
    const before = Float64Array.from(this.#free)
    const { stopMs, given } = this.problem
    let atMs = unit.readyMs
    for (;;) {
      this.#free.set(before)
      let lastMs = atMs
      const taken = unit.parts.map(({ slots, bakeMs }) => {
        const { places, freeMs } = this.#placesFor(slots, atMs)
        lastMs = Math.max(lastMs, freeMs)
        for (const place of places) this.#free[place] = atMs + bakeMs + given.handlingMs
        return places
      })
      if (lastMs <= atMs) {
        if (unit.parts.some(({ bakeMs }) => atMs + bakeMs > stopMs)) break
        for (const [part, places] of taken.entries()) onPlaces?.(index, part, places)
        return atMs
      }
      atMs = lastMs
      if (atMs > stopMs) break
    }
    this.#free.set(before)
    return Number.NaN
  }

  /** So many places of one shelf that are free together soonest; of shelves that are free in time, that which is last. */
  #placesFor(slots: number, readyMs: number): { places: number[]; freeMs: number } {
    const { firstPlace } = this.problem
    let places: number[] = []
    let bestMs = Number.POSITIVE_INFINITY
    for (let shelf = 0; shelf + 1 < firstPlace.length; shelf += 1) {
      const [from, to] = [firstPlace[shelf] ?? 0, firstPlace[shelf + 1] ?? 0]
      if (to - from < slots) continue
      const some = this.#latestInTime(from, to, slots, readyMs)
      const freeMs = some.reduce((at, place) => Math.max(at, this.#free[place] ?? 0), 0)
      const isBetter = bestMs <= readyMs ? freeMs <= readyMs && freeMs > bestMs : freeMs < bestMs
      if (places.length === 0 || isBetter) {
        places = some
        bestMs = freeMs
      }
    }
    return { places, freeMs: bestMs }
  }

  /** Those free in time first, the last free of them first; then the soonest. */
  #latestInTime(from: number, to: number, slots: number, readyMs: number): number[] {
    const rank = (place: number) => {
      const atMs = this.#free[place] ?? 0
      return atMs <= readyMs ? -1 / (1 + readyMs - atMs) : atMs - readyMs
    }
    const all = Array.from({ length: to - from }, (_, at) => from + at)
    for (const place of all) this.#kth[place] = rank(place)
    return all
      .sort((one, other) => (this.#kth[one] ?? 0) - (this.#kth[other] ?? 0) || one - other)
      .slice(0, slots)
      .sort((one, other) => one - other)
  }

  #sum(): void {
    const { units, orders } = this.problem
    const complete = this.#completeMs
    for (let order = 0; order < orders.length; order += 1) complete[order] = orders[order]?.otherMs ?? 0
    this.tooLate = 0
    for (let index = 0; index < units.length; index += 1) {
      const unit = units[index]
      if (unit === undefined) continue
      const atMs = this.startMs[index] ?? Number.NaN
      for (let part = 0; part < unit.parts.length; part += 1) {
        const order = unit.orders[part] ?? 0
        const { bakeMs = 0, afterMs = 0 } = unit.parts[part] ?? {}
        if (Number.isNaN(atMs)) {
          this.tooLate += 1
          complete[order] = Number.NaN
        } else complete[order] = Math.max(complete[order] ?? 0, atMs + bakeMs + afterMs)
      }
    }
    this.lateMs = 0
    this.sumMs = 0
    for (let order = 0; order < orders.length; order += 1) {
      const atMs = complete[order] ?? Number.NaN
      if (Number.isNaN(atMs)) continue
      this.lateMs += Math.max(0, atMs - (orders[order]?.dueMs ?? 0))
      this.sumMs += atMs
    }
  }

  /** When an order is complete; NaN: a part of it is left out. */
  completeMs(order: number): number {
    return this.#completeMs[order] ?? Number.NaN
  }
}
