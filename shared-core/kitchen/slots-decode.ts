import type { SlotsProblem } from './slots-units.ts'

/** Told of each part that is put in, with the places that it takes. */
export type OnPlaces = (unit: number, part: number, places: readonly number[]) => void

/**
 * Puts units into the oven in a given order (of codes, see `unitOf`), each as soon as it can go in. Every schedule in which nothing could begin
 * sooner is reached by some order: that of its starts. Thousands of orders are tried while somebody waits, so that
 * everything lies in flat arrays and only what comes after a change is put in anew.
 */
export class SlotsDecoder {
  readonly problem: SlotsProblem
  /** By unit; NaN: it would come out too late and is left out. Of the order that was put in last, where it was put in whole. */
  readonly startMs: Float64Array
  /** Of the order that was put in last: lateness of all orders, the sum of when they are complete, units left out. */
  lateMs = 0
  sumMs = 0
  leftOut = 0
  readonly #flat: Flat
  /** When each place is free, and from there on when each order is complete as far as it was put in. */
  readonly #now: Float64Array
  readonly #places: number
  /** By position in the kept order: `#now`, lateness and units left out before its unit goes in. */
  readonly #before: Float64Array
  readonly #lateBefore: Float64Array
  readonly #leftBefore: Int32Array
  readonly #found: Int32Array
  readonly #looked: Int32Array
  /** Shelves that are looked at, from and before. */
  #shelfFrom = 0
  #shelfTo = 0

  constructor(problem: SlotsProblem) {
    const { units, orders, freeMs } = problem
    this.problem = problem
    this.#flat = flatOf(problem)
    this.#places = freeMs.length
    this.#now = new Float64Array(freeMs.length + orders.length)
    this.#before = new Float64Array((units.length + 1) * this.#now.length)
    this.#before.set(freeMs)
    this.#before.set(this.#flat.otherMs, freeMs.length)
    this.#lateBefore = new Float64Array(units.length + 1)
    this.#lateBefore[0] = orders.reduce((sum, { dueMs, otherMs }) => sum + Math.max(0, otherMs - dueMs), 0)
    this.#leftBefore = new Int32Array(units.length + 1)
    this.startMs = new Float64Array(units.length).fill(Number.NaN)
    this.#found = new Int32Array(freeMs.length)
    this.#looked = new Int32Array(freeMs.length)
  }

  /**
   * Puts in what comes from a position on; what is before it is as in the order that was kept last.
   * @param limitMs as soon as the lateness is beyond it, the rest is not put in any more
   * @returns false: it was beyond it
   */
  put(order: Int32Array, from: number, limitMs: number): boolean {
    this.#restore(from)
    for (let at = from; at < order.length; at += 1) {
      this.#putCode(order[at] ?? 0)
      if (this.lateMs > limitMs) return false
    }
    this.#sum()
    return true
  }

  /** The same, and from now on this is the order that is kept. */
  keep(order: Int32Array, from: number): void {
    this.#restore(from)
    for (let at = from; at < order.length; at += 1) {
      this.#note(at)
      this.#putCode(order[at] ?? 0)
    }
    this.#note(order.length)
    this.#sum()
  }

  /** The whole order once more, telling the places. */
  tell(order: Int32Array, onPlaces: OnPlaces): void {
    this.#restore(0)
    for (const code of order) {
      const unit = unitOf(code, this.problem)
      this.#look(code)
      this.#book(unit, this.#putTogether(unit, onPlaces))
    }
    this.#sum()
  }

  /** When an order is complete; with parts left out it never is, see `startMs`. */
  completeMs(order: number): number {
    return this.#now[this.#places + order] ?? 0
  }

  #putCode(code: number): void {
    const unit = unitOf(code, this.problem)
    const wide = this.#flat.slots[unit] ?? 0
    this.#look(code)
    this.#book(unit, wide === 1 ? this.#putOne(unit) : wide > 1 ? this.#putWide(unit, wide) : this.#putTogether(unit))
  }

  /** Only on the shelf that the code says; on all of them where it says none. */
  #look(code: number): void {
    const { units, firstPlace } = this.problem
    const shelf = code < units.length ? -1 : Math.floor(code / units.length) - 1
    this.#shelfFrom = shelf === -1 ? 0 : shelf
    this.#shelfTo = shelf === -1 ? firstPlace.length - 1 : shelf + 1
  }

  #note(at: number): void {
    const first = at * this.#now.length
    for (let one = 0; one < this.#now.length; one += 1) this.#before[first + one] = this.#now[one] ?? 0
    this.#lateBefore[at] = this.lateMs
    this.#leftBefore[at] = this.leftOut
  }

  #restore(from: number): void {
    const now = this.#now
    const first = from * now.length
    for (let at = 0; at < now.length; at += 1) now[at] = this.#before[first + at] ?? 0
    this.lateMs = this.#lateBefore[from] ?? 0
    this.leftOut = this.#leftBefore[from] ?? 0
  }

  #book(unit: number, atMs: number): void {
    const { firstPart, partOrder, partMs, dueMs } = this.#flat
    this.startMs[unit] = atMs
    const to = firstPart[unit + 1] ?? 0
    if (Number.isNaN(atMs)) {
      this.leftOut += to - (firstPart[unit] ?? 0)
      return
    }
    for (let part = firstPart[unit] ?? 0; part < to; part += 1) {
      const order = partOrder[part] ?? 0
      const doneMs = atMs + (partMs[part] ?? 0)
      const wasMs = this.#now[this.#places + order] ?? 0
      if (doneMs <= wasMs) continue
      this.#now[this.#places + order] = doneMs
      const byMs = dueMs[order] ?? 0
      if (doneMs > byMs) this.lateMs += doneMs - Math.max(wasMs, byMs)
    }
  }

  #sum(): void {
    let sumMs = 0
    for (let at = this.#places; at < this.#now.length; at += 1) sumMs += this.#now[at] ?? 0
    this.sumMs = sumMs
  }

  /** At the place that is free last among those free in time; else at the one that is free first. */
  #putOne(unit: number): number {
    const free = this.#now
    const readyMs = this.#flat.readyMs[unit] ?? 0
    const { firstPlace } = this.problem
    let best = firstPlace[this.#shelfFrom] ?? 0
    const to = firstPlace[this.#shelfTo] ?? 0
    const from = best
    let bestMs = free[best] ?? 0
    for (let place = from + 1; place < to; place += 1) {
      const atMs = free[place] ?? 0
      if (atMs < bestMs) {
        best = place
        bestMs = atMs
      }
    }
    // In a rush nearly everything waits for its place, and this second look is for nothing.
    for (let place = from; bestMs < readyMs && place < to; place += 1) {
      const atMs = free[place] ?? 0
      if (atMs > bestMs && atMs <= readyMs) {
        best = place
        bestMs = atMs
      }
    }
    const atMs = Math.max(readyMs, bestMs)
    const endMs = atMs + (this.#flat.bakeMs[unit] ?? 0)
    if (endMs > this.problem.stopMs) return Number.NaN
    free[best] = endMs + this.problem.given.handlingMs
    return atMs
  }

  /** A wide one takes its places at once, without a list being made. */
  #putWide(unit: number, slots: number): number {
    const readyMs = this.#flat.readyMs[unit] ?? 0
    const atMs = Math.max(readyMs, this.#findPlaces(slots, readyMs))
    const endMs = atMs + (this.#flat.bakeMs[unit] ?? 0)
    if (endMs > this.problem.stopMs) return Number.NaN
    for (let slot = 0; slot < slots; slot += 1)
      this.#now[this.#found[slot] ?? 0] = endMs + this.problem.given.handlingMs
    return atMs
  }

  /** Several parts begin when the last of them finds its places. */
  #putTogether(index: number, onPlaces?: OnPlaces): number {
    const { stopMs, given, units } = this.problem
    const parts = units[index]?.parts ?? []
    const before = this.#now.slice(0, this.#places)
    let atMs = this.#flat.readyMs[index] ?? 0
    while (parts.every(({ bakeMs }) => atMs + bakeMs <= stopMs)) {
      let lastMs = atMs
      const taken = parts.map(({ slots, bakeMs }) => {
        lastMs = Math.max(lastMs, this.#findPlaces(slots, atMs))
        const places = [...this.#found.subarray(0, slots)].sort((one, other) => one - other)
        for (const place of places) this.#now[place] = atMs + bakeMs + given.handlingMs
        return places
      })
      if (lastMs <= atMs) {
        for (const [part, places] of taken.entries()) onPlaces?.(index, part, places)
        return atMs
      }
      this.#now.set(before)
      atMs = lastMs
    }
    return Number.NaN
  }

  /**
   * So many places of one shelf, into `#found`: of the shelf that is free last among those free in time, else of that
   * which is free first.
   * @returns when they are free; Infinity: no shelf has so many
   */
  #findPlaces(slots: number, readyMs: number): number {
    const { firstPlace } = this.problem
    let bestMs = Number.POSITIVE_INFINITY
    for (let shelf = this.#shelfFrom; shelf < this.#shelfTo; shelf += 1) {
      const from = firstPlace[shelf] ?? 0
      const to = firstPlace[shelf + 1] ?? 0
      if (to - from < slots) continue
      const atMs = this.#lookAt(from, to, slots, readyMs)
      if (bestMs > readyMs ? atMs < bestMs : atMs <= readyMs && atMs > bestMs) {
        for (let slot = 0; slot < slots; slot += 1) this.#found[slot] = this.#looked[slot] ?? 0
        bestMs = atMs
      }
    }
    return bestMs
  }

  /** The best of its places, into `#looked`: free last in time, else first. @returns when all of them are free */
  #lookAt(from: number, to: number, slots: number, readyMs: number): number {
    const looked = this.#looked
    for (let place = from; place < to; place += 1) {
      const rank = this.#rank(place, readyMs)
      let at = Math.min(place - from, slots)
      while (at > 0 && rank < this.#rank(looked[at - 1] ?? 0, readyMs)) {
        if (at < slots) looked[at] = looked[at - 1] ?? 0
        at -= 1
      }
      if (at < slots) looked[at] = place
    }
    let allMs = 0
    for (let slot = 0; slot < slots; slot += 1) allMs = Math.max(allMs, this.#now[looked[slot] ?? 0] ?? 0)
    return allMs
  }

  #rank(place: number, readyMs: number): number {
    const atMs = this.#now[place] ?? 0
    return atMs <= readyMs ? -1 - atMs : atMs
  }
}

/**
 * What stands in an order: a unit, or a unit that goes onto one shelf only (`unit + units * (shelf + 1)`): what needs
 * many places may have to be left room.
 */
export function unitOf(code: number, { units }: Pick<SlotsProblem, 'units'>): number {
  return code < units.length ? code : code % units.length
}

/** The problem's numbers by unit, by part and by order. */
interface Flat {
  readonly readyMs: Float64Array
  readonly bakeMs: Float64Array
  /** Of a unit of one part its places; 0: it has several parts. */
  readonly slots: Int32Array
  /** By unit the first of its parts, and one beyond the last. */
  readonly firstPart: Int32Array
  readonly partOrder: Int32Array
  /** From a part's start to its being all done. */
  readonly partMs: Float64Array
  readonly dueMs: Float64Array
  readonly otherMs: Float64Array
}

function flatOf({ units, orders }: SlotsProblem): Flat {
  const parts = units.flatMap(({ parts: some, orders: of }, unit) =>
    some.map((part, at) => ({ ...part, unit, order: of[at] ?? 0 })),
  )
  return {
    readyMs: Float64Array.from(units, ({ readyMs }) => readyMs),
    bakeMs: Float64Array.from(units, ({ parts: [first] }) => first?.bakeMs ?? 0),
    slots: Int32Array.from(units, ({ parts: [first, second] }) => (second === undefined ? (first?.slots ?? 1) : 0)),
    firstPart: Int32Array.from([...units.map((_, at) => parts.findIndex(({ unit }) => unit === at)), parts.length]),
    partOrder: Int32Array.from(parts, ({ order }) => order),
    partMs: Float64Array.from(parts, ({ bakeMs, afterMs }) => bakeMs + afterMs),
    dueMs: Float64Array.from(orders, ({ dueMs }) => dueMs),
    otherMs: Float64Array.from(orders, ({ otherMs }) => otherMs),
  }
}
