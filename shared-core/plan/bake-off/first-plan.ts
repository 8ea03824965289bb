import type { OrderGiven } from './bake-off.ts'
import type { Bid } from './bid-heap.ts'
import { BidHeap } from './bid-heap.ts'
import { Draft } from './draft.ts'
import type { Line, LineLoad, LineTimes } from './line.ts'
import { newTimes } from './line.ts'
import type { Load } from './load.ts'
import { newLoad } from './load.ts'
import { dueOf } from './load-parts.ts'
import type { Shop } from './shop.ts'

const SLOTS_MAX = 120
const HELD_BEFORE_DUE_MIN = 120
const EXTRA_BOARDS = 3

/** A place on the line for a load of up to so many pieces. */
export interface Slot {
  readonly wanted: number
  readonly out: number
  readonly piecesMax: number
  readonly boardsMax: number
}

/**
 * Loads of up to so many pieces for one shelf after the other, as close together as asked for and as the line can, spread
 * so that the last one is out when the oven must be empty.
 */
export function evenSlots({ line, bakeMin, given }: Shop, most: number, gapMin: number): Slot[] {
  const { unit, boards } = given
  // Lines that do not fill their last board need more of them.
  const spare = unit % boards.pieces === 0 ? 0 : EXTRA_BOARDS
  const kinds = Array.from(line.shelfPieces, (room) => {
    const pieces = Math.floor(Math.min(most, room) / unit) * unit
    const boardsMax = Math.min(boards.count, line.boardsFor(pieces) + spare)
    const dips = line.dipsFor(pieces)
    return { pieces, boards: boardsMax, dips, bakeMin: Math.max(...bakeMin), notBeforeMin: Number.NEGATIVE_INFINITY }
  }).filter(({ pieces }) => pieces > 0)
  const times = newTimes()
  const loads: LineLoad[] = []
  for (let kind = kinds[0]; kind !== undefined && loads.length < SLOTS_MAX; kind = kinds[loads.length % kinds.length]) {
    loads.push({ ...kind, wanted: line.earliestIn + gapMin * loads.length })
  }
  // Fewer loads leave the others more room on the boards, so that this ends.
  while (!line.time(loads, times)) loads.length = times.timed
  spread(line, loads, times)
  return loads.map(({ pieces, boards: boardsMax }, index) => ({
    wanted: times.ins[index] as number,
    out: times.outs[index] as number,
    piecesMax: pieces,
    boardsMax,
  }))
}

/** Gives out what is left before the oven must be empty, the later loads more of it. Leaves the loads timed. */
function spread(line: Line, loads: readonly LineLoad[], times: LineTimes): void {
  if (loads.length === 0 || !line.time(loads, times)) return
  const ins = Array.from(loads, (_, index) => times.ins[index] as number)
  const slack = line.emptyMin - (times.outs[loads.length - 1] as number)
  for (const share of [slack, 0]) {
    for (const [index, load] of loads.entries()) {
      load.wanted = (ins[index] as number) + (share * index) / Math.max(1, loads.length - 1)
    }
    if (line.time(loads, times)) return
  }
}

/** Fills slots with the units that are worth most there, one step after the other; what stays empty is left out. */
export function filled(shop: Shop, slots: readonly Slot[], steps: number): Draft {
  return new Filling(shop, slots, steps).draft()
}

class Filling {
  readonly #shop: Shop
  readonly #slots: readonly Slot[]
  readonly #units: Int16Array[]
  readonly #loads: Load[]
  readonly #doughLeft: Int32Array
  readonly #rounds: Int32Array
  readonly #values: Float64Array
  readonly #steps: Int32Array
  /** Pieces that orders so far lack; below zero, what is over. */
  readonly #lacking: Float64Array
  readonly #readyAt = new Float64Array(SLOTS_MAX)
  readonly #pieces = new Float64Array(SLOTS_MAX)

  constructor(shop: Shop, slots: readonly Slot[], steps: number) {
    const { varieties, unit } = shop.given
    this.#shop = shop
    this.#slots = slots
    this.#units = slots.map(() => new Int16Array(varieties.length))
    this.#loads = slots.map(({ wanted }, slot) => newLoad(shop, this.#units[slot] as Int16Array, wanted))
    this.#doughLeft = shop.doughUnits.slice()
    this.#rounds = new Int32Array(varieties.length)
    this.#values = Float64Array.from(varieties, (_, variety) => this.#value(variety, -1, 0))
    this.#steps = Int32Array.from(varieties, ({ demand }) => Math.max(1, Math.round(demand.mean / unit / steps)))
    const running = (shop.given.running ?? []).flatMap(({ lines }) => lines)
    this.#lacking = Float64Array.from(varieties, ({ name, onShelf }) =>
      running.reduce((lack, [variety, pieces]) => (variety === name ? lack - pieces : lack), -onShelf),
    )
  }

  draft(): Draft {
    for (const order of [...this.#shop.given.orders].sort((a, b) => a.due - b.due)) this.#seed(order)
    const bids = new BidHeap()
    for (let variety = 0; variety < this.#values.length; variety++) {
      for (let slot = 0; slot < this.#slots.length; slot++) bids.push(this.#bid(variety, slot))
    }
    for (let bid = bids.pop(); bid !== undefined && bid.gain > 0; bid = bids.pop()) {
      const { variety, slot } = bid
      const room = this.#roomFor(variety, slot, bid.units)
      if (room === bid.units && bid.round === this.#rounds[variety]) this.#give(bid)
      if (room > 0) bids.push(this.#bid(variety, slot))
    }
    const draft = new Draft(this.#shop)
    const loads = this.#loads.filter(({ pieces }) => pieces > 0)
    const all = Array.from(this.#values, (_, variety) => variety)
    // Other contents may go onto other shelves than the slots did, and then not all of them go.
    while (draft.gainOf(loads, all) === Number.NEGATIVE_INFINITY) loads.pop()
    draft.take()
    return draft
  }

  /**
   * Pieces for an order first, ready when they begin to be held. Until they are there, every other piece of the variety
   * is held in their place and looks worthless.
   */
  #seed(order: OrderGiven): void {
    const { given, coolMin } = this.#shop
    const due = dueOf(given, order)
    const from = Math.max(due - HELD_BEFORE_DUE_MIN, given.now ?? given.open, given.open)
    for (const [name, pieces] of order.lines) {
      const variety = given.varieties.findIndex((one) => one.name === name)
      if (variety < 0) continue
      const lacking = (this.#lacking[variety] as number) + pieces
      this.#lacking[variety] = lacking
      for (let units = Math.ceil(lacking / given.unit); units > 0; units--) {
        const bid = { variety, units: 1, gain: 0, round: 0 }
        const slots = this.#slots.map(({ out }, slot) => ({ slot, ready: out + (coolMin[variety] as number) }))
        const early = slots.filter(({ ready }) => ready <= from).reverse()
        const late = slots.filter(({ ready }) => ready > from && ready <= due)
        const found = [...early, ...late].find(({ slot }) => this.#roomFor(variety, slot, 1) > 0)
        if (found === undefined) break
        this.#give({ ...bid, slot: found.slot })
        this.#lacking[variety] = (this.#lacking[variety] as number) - given.unit
      }
    }
    for (let variety = 0; variety < this.#values.length; variety++) {
      this.#values[variety] = this.#value(variety, -1, 0)
    }
  }

  #bid(variety: number, slot: number): Bid {
    const units = Math.max(1, this.#roomFor(variety, slot, this.#steps[variety] as number))
    return { variety, slot, units, gain: this.#gainOf(variety, slot, units), round: this.#rounds[variety] as number }
  }

  #gainOf(variety: number, slot: number, units: number): number {
    return (this.#value(variety, slot, units) - (this.#values[variety] as number)) / units
  }

  /** How many units of so many a slot and the dough can take. */
  #roomFor(variety: number, slot: number, most: number): number {
    const { doughOf, bakeMin: bakes, given, line } = this.#shop
    const { pieces, boards, bakeMin, leastBakeMin, units } = this.#loads[slot] as Load
    const { piecesMax, boardsMax } = this.#slots[slot] as Slot
    const bake = bakes[variety] as number
    if (pieces > 0 && Math.max(bakeMin, bake) - Math.min(leastBakeMin, bake) > given.bakeToleranceMin + 1e-9) return 0
    const dough = this.#doughLeft[doughOf[variety] as number] as number
    const had = (units[variety] as number) * given.unit
    const boardsOfOthers = boards - line.boardsFor(had)
    let room = Math.min(most, dough, Math.floor((piecesMax - pieces) / given.unit + 1e-9))
    while (room > 0 && boardsOfOthers + line.boardsFor(had + room * given.unit) > boardsMax) room--
    return room
  }

  #give({ variety, slot, gain, units: more }: Bid): void {
    const units = this.#units[slot] as Int16Array
    units[variety] = (units[variety] as number) + more
    this.#loads[slot] = newLoad(this.#shop, units, (this.#slots[slot] as Slot).wanted)
    const dough = this.#shop.doughOf[variety] as number
    this.#doughLeft[dough] = (this.#doughLeft[dough] as number) - more
    this.#rounds[variety] = (this.#rounds[variety] as number) + 1
    this.#values[variety] = (this.#values[variety] as number) + gain * more
  }

  /** Value of a variety with some units more in a slot; −1 for none. */
  #value(variety: number, slotMore: number, more: number): number {
    const { given, roughValues, work, coolMin } = this.#shop
    let count = 0
    for (let slot = 0; slot < this.#slots.length; slot++) {
      const units = ((this.#units[slot] as Int16Array)[variety] as number) + (slot === slotMore ? more : 0)
      if (units === 0) continue
      this.#readyAt[count] = (this.#slots[slot] as Slot).out + (coolMin[variety] as number)
      this.#pieces[count++] = units * given.unit
    }
    const value = roughValues[variety]
    if (value === undefined) return 0
    work.done += value.points * (count + 2)
    return value.of(this.#readyAt, this.#pieces, count)
  }
}
