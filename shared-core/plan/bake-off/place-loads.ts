import type { BakeLine, BakeLoad, BakeOff, ShelfGiven } from './bake-off.ts'
import { doorIsFree } from './door.ts'
import { bakeMinOf, boardsOf, dipsOf, doughOf, piecesIn } from './load-parts.ts'

/** A load to be put onto the line. */
export interface Wished {
  /** Null: whichever is free soonest. */
  readonly shelf: string | null
  readonly lines: readonly BakeLine[]
  /** Not into the oven before it. */
  readonly inMin: number
  /** Out by then; left out: as the oven has it. */
  readonly outByMin?: number
}

/** Comparisons of times. */
const SAME_MIN = 1e-6
const KETTLE_BEFORE_OVEN_MIN = 20
/** A load finds its place long before, or there is none. */
const TRIES_MAX = 600
/** Where the door is taken, it is tried again so much later. */
const DOOR_STEP_MIN = 0.5

/**
 * The line being filled load by load: each as soon as kettle, boards, shelf, oven and hands allow, beside what is on it
 * already. Where a plan must be carried over to another moment it keeps its order, and only waits where it must.
 */
export class PlacedLoads {
  readonly #given: BakeOff
  readonly #fixed: BakeLoad[]
  readonly #placed: BakeLoad[] = []

  /** Running and pinned loads are on the line to begin with. */
  constructor(given: BakeOff) {
    this.#given = given
    this.#fixed = [...(given.running ?? []), ...(given.pinned ?? [])]
  }

  /** In the order of their kettle starts. */
  get loads(): readonly BakeLoad[] {
    return [...this.#placed].sort((one, other) => one.kettleStart - other.kettleStart || one.in - other.in)
  }

  /** Takes a load just as it is. @returns false where it does not fit so */
  takes(load: BakeLoad): boolean {
    const shelf = this.#given.oven.shelves.find(({ name }) => name === load.shelf)
    if (shelf === undefined || !this.#fits(load, shelf)) return false
    this.#add(load)
    return true
  }

  /** Puts it where it can be soonest, not before its time. @returns null where there is no place in time */
  put(wished: Wished): BakeLoad | null {
    const shelves = this.#given.oven.shelves.filter(({ name }) => wished.shelf === null || name === wished.shelf)
    let best: BakeLoad | null = null
    for (const shelf of shelves) {
      const load = this.#soonest(wished, shelf)
      if (load !== null && (best === null || load.in < best.in - SAME_MIN)) best = load
    }
    if (best !== null) this.#add(best)
    return best
  }

  #add(load: BakeLoad): void {
    this.#fixed.push(load)
    this.#placed.push(load)
  }

  #soonest({ lines, inMin, outByMin }: Wished, shelf: ShelfGiven): BakeLoad | null {
    const { oven } = this.#given
    const pieces = piecesIn(lines)
    if (pieces === 0 || pieces > shelf.pieces || boardsOf(this.#given, lines) > this.#given.boards.count) return null
    const bakeMin = bakeMinOf(this.#given, lines)
    const outBy = Math.min(oven.mustBeEmptyMin, shelf.emptyByMin ?? Infinity, outByMin ?? Infinity)
    let into = Math.max(inMin, oven.readyMin, shelf.readyMin ?? 0)
    let kettleFrom = this.#kettleFrom(lines)
    for (let tries = 0; tries < TRIES_MAX; tries += 1) {
      if (into + bakeMin > outBy + SAME_MIN) return null
      const later = this.#laterForShelf(into, bakeMin, shelf, lines)
      if (later !== null) {
        into = later
        continue
      }
      const kettleStart = this.#kettleFor(lines, into, kettleFrom)
      if (typeof kettleStart !== 'number') {
        into = Math.max(into + SAME_MIN, kettleStart.inMin)
        continue
      }
      const load = {
        shelf: shelf.name,
        kettleStart,
        in: into,
        flip: into + oven.firstSideMin,
        out: into + bakeMin,
        lines,
      }
      const boardsFrom = this.#boardsFrom(load)
      if (boardsFrom !== null) {
        kettleFrom = Math.max(kettleFrom, boardsFrom - this.#given.kettle.cycleMin)
        into = Math.max(into, kettleFrom + this.#kettleMin(lines) + (this.#given.hands?.loadMin ?? 0))
        continue
      }
      if (doorIsFree(this.#given, load, this.#fixed)) return load
      into += DOOR_STEP_MIN
    }
    return null
  }

  #kettleMin(lines: readonly BakeLine[]): number {
    const { cycleMin, recoveryMin = 0 } = this.#given.kettle
    const dips = dipsOf(this.#given, lines)
    return dips * cycleMin + Math.max(0, dips - 1) * recoveryMin
  }

  /** No dip of these lines before it. */
  #kettleFrom(lines: readonly BakeLine[]): number {
    const { now, oven, kettle, doughs } = this.#given
    const ready = lines.map(([variety]) => doughs[doughOf(this.#given, variety)]?.notBeforeMin ?? 0)
    return Math.max(now ?? -Infinity, oven.readyMin - KETTLE_BEFORE_OVEN_MIN, kettle.readyMin ?? -Infinity, ...ready)
  }

  /** @returns a later time to try, where the shelf is taken then or somebody does not want it; null where it may go in */
  #laterForShelf(into: number, bakeMin: number, shelf: ShelfGiven, lines: readonly BakeLine[]): number | null {
    const { handlingMin } = this.#given.oven
    for (const { shelf: name, in: from, out } of this.#fixed)
      if (name === shelf.name && from < into + bakeMin + handlingMin - SAME_MIN && into < out + handlingMin - SAME_MIN)
        return out + handlingMin
    const varieties = lines.map(([variety]) => variety)
    for (const { shelf: name, variety, fromMin, toMin } of this.#given.forbidden ?? []) {
      const isMeant = (name ?? shelf.name) === shelf.name && (variety === undefined || varieties.includes(variety))
      if (isMeant && into >= fromMin - SAME_MIN && into < toMin - SAME_MIN) return toMin
    }
    return null
  }

  /** The latest start of the kettle for a load that goes in then; or when it could go in at the soonest. */
  #kettleFor(lines: readonly BakeLine[], into: number, from: number): number | { readonly inMin: number } {
    const { cycleMin } = this.#given.kettle
    const lasts = this.#kettleMin(lines)
    // Who loads has boarded the last dip before.
    const loadMin = this.#given.hands?.loadMin ?? 0
    const least = Math.max(from, into - cycleMin - this.#given.boards.maxWaitMin)
    const busy = this.#fixed.map(
      ({ kettleStart, lines: its }) => [kettleStart, kettleStart + this.#kettleMin(its)] as const,
    )
    const inTheWay = (start: number) =>
      busy.find(([begin, end]) => begin < start + lasts - SAME_MIN && start < end - SAME_MIN)
    for (let start = into - loadMin - lasts; start >= least - SAME_MIN; ) {
      const other = inTheWay(start)
      if (other === undefined) return Math.max(start, least)
      start = other[0] - lasts
    }
    let start = least
    for (let other = inTheWay(start); other !== undefined; other = inTheWay(start)) start = other[1]
    return { inMin: start + lasts + loadMin }
  }

  /** When enough boards are there for a load whose first boards are asked for sooner; null where there are enough. */
  #boardsFrom({ kettleStart, flip, lines }: BakeLoad): number | null {
    const { boards, kettle } = this.#given
    const from = kettleStart + kettle.cycleMin
    const until = flip + (boards.rewetMin ?? 0)
    const most = boards.count - boardsOf(this.#given, lines)
    const held = this.#fixed.map((load) => ({
      from: load.kettleStart + kettle.cycleMin,
      until: load.flip + (boards.rewetMin ?? 0),
      count: boardsOf(this.#given, load.lines),
    }))
    const moments = [from, ...held.map((one) => one.from).filter((at) => at > from && at < until - SAME_MIN)]
    for (const at of moments) {
      const then = held.filter((one) => one.from <= at + SAME_MIN && one.until > at + SAME_MIN)
      if (then.reduce((sum, { count }) => sum + count, 0) <= most) continue
      return Math.max(from + SAME_MIN, Math.min(...then.map((one) => one.until)))
    }
    return null
  }

  #fits(load: BakeLoad, shelf: ShelfGiven): boolean {
    const { oven, kettle, boards } = this.#given
    const lasts = this.#kettleMin(load.lines)
    const bakeMin = bakeMinOf(this.#given, load.lines)
    const waits = load.in - load.kettleStart - kettle.cycleMin
    const isItself =
      Math.abs(load.out - load.in - bakeMin) <= SAME_MIN &&
      load.in >= load.kettleStart + lasts - SAME_MIN &&
      waits <= boards.maxWaitMin + SAME_MIN
    const isInTime =
      load.in >= Math.max(oven.readyMin, shelf.readyMin ?? 0) - SAME_MIN &&
      load.out <= Math.min(oven.mustBeEmptyMin, shelf.emptyByMin ?? Infinity) + SAME_MIN &&
      load.kettleStart >= this.#kettleFrom(load.lines) - SAME_MIN
    const isDipped = this.#fixed.every(({ kettleStart, lines }) => {
      const end = kettleStart + this.#kettleMin(lines)
      return kettleStart >= load.kettleStart + lasts - SAME_MIN || load.kettleStart >= end - SAME_MIN
    })
    return (
      isItself &&
      isInTime &&
      isDipped &&
      piecesIn(load.lines) <= shelf.pieces &&
      this.#laterForShelf(load.in, bakeMin, shelf, load.lines) === null &&
      this.#boardsFrom(load) === null &&
      doorIsFree(this.#given, load, this.#fixed)
    )
  }
}
