import type { BakeOff } from './bake-off.ts'

/** Minutes that two times may differ by rounding. */
const ROUNDING_MIN = 1e-9
const KETTLE_BEFORE_OVEN_MIN = 20
const LOADS_MAX = 400

/** What the line needs to know of a load. */
export interface LineLoad {
  readonly pieces: number
  readonly dips: number
  readonly boards: number
  readonly bakeMin: number
  /** Its dough is not into the kettle before it. */
  readonly notBeforeMin: number
  /** Not into the oven before it. */
  wanted: number
}

/** Where one call of `Line.time` leaves the times of the loads, in their order. */
export interface LineTimes {
  readonly kettleStarts: Float64Array
  readonly ins: Float64Array
  readonly outs: Float64Array
  readonly shelves: Int32Array
  /** Loads that were in time. */
  timed: number
}

export function newTimes(): LineTimes {
  return {
    kettleStarts: new Float64Array(LOADS_MAX),
    ins: new Float64Array(LOADS_MAX),
    outs: new Float64Array(LOADS_MAX),
    shelves: new Int32Array(LOADS_MAX),
    timed: 0,
  }
}

/** Kettle, boards and oven: the times at which a row of loads can go through them. */
export class Line {
  readonly dipsMax: number
  readonly boardsMax: number
  readonly shelfPieces: Float64Array
  readonly shelfPiecesMax: number
  readonly earliestIn: number
  readonly emptyMin: number
  readonly #given: BakeOff
  /** From one dip to the next. */
  readonly #dipGap: number
  readonly #emptyBy: Float64Array
  readonly #kettleFree: number
  readonly #shelfFree: Float64Array
  readonly #runningFlips: readonly number[]
  readonly #runningBoards: readonly number[]
  readonly #free: Float64Array
  readonly #flips = new Float64Array(LOADS_MAX * 2)
  readonly #boards = new Float64Array(LOADS_MAX * 2)
  readonly #latestEnds = new Float64Array(LOADS_MAX)

  constructor(given: BakeOff) {
    const { kettle, boards, oven, now, running = [] } = given
    this.#given = given
    this.#dipGap = kettle.cycleMin + (kettle.recoveryMin ?? 0)
    this.dipsMax = 1 + Math.floor(boards.maxWaitMin / this.#dipGap + ROUNDING_MIN)
    this.boardsMax = boards.count
    this.shelfPieces = Float64Array.from(oven.shelves, ({ pieces }) => pieces)
    this.shelfPiecesMax = Math.max(0, ...this.shelfPieces)
    this.emptyMin = oven.mustBeEmptyMin
    const start = Math.max(oven.readyMin - KETTLE_BEFORE_OVEN_MIN, now ?? -Infinity, kettle.readyMin ?? -Infinity)
    this.#emptyBy = Float64Array.from(oven.shelves, ({ emptyByMin }) => Math.min(this.emptyMin, emptyByMin ?? Infinity))
    const dipEnds = running.map((load) => load.kettleStart + this.dipsFor(piecesIn(load)) * this.#dipGap)
    this.#kettleFree = Math.max(start, ...dipEnds)
    this.earliestIn = Math.max(oven.readyMin, this.#kettleFree + kettle.cycleMin)
    this.#shelfFree = Float64Array.from(oven.shelves, ({ name, readyMin }) =>
      Math.max(
        oven.readyMin,
        readyMin ?? -Infinity,
        ...running.filter(({ shelf }) => shelf === name).map(({ out }) => out + oven.handlingMin),
      ),
    )
    this.#free = new Float64Array(oven.shelves.length)
    this.#runningFlips = running.map(({ flip }) => flip + (boards.rewetMin ?? 0))
    this.#runningBoards = running.map(({ lines }) => lines.reduce((sum, [, pieces]) => sum + this.boardsFor(pieces), 0))
  }

  dipsFor(pieces: number): number {
    return Math.ceil(pieces / this.#given.kettle.pieces - ROUNDING_MIN)
  }

  boardsFor(pieces: number): number {
    return Math.ceil(pieces / this.#given.boards.pieces - ROUNDING_MIN)
  }

  /**
   * Times the loads in the order of their kettle starts, each as soon as it can be and not before it is wanted.
   * @returns false if one of them is not out when the oven must be empty
   */
  time(loads: readonly LineLoad[], times: LineTimes): boolean {
    const { cycleMin, recoveryMin = 0 } = this.#given.kettle
    const { maxWaitMin, count, rewetMin = 0 } = this.#given.boards
    const dipGap = this.#dipGap
    const { firstSideMin, handlingMin } = this.#given.oven
    this.#setLatestEnds(loads)
    this.#free.set(this.#shelfFree)
    let tail = this.#startBoards()
    let head = 0
    let kettleFree = this.#kettleFree
    for (let index = 0; index < loads.length; index++) {
      const { wanted, pieces, dips, boards, bakeMin, notBeforeMin } = loads[index] as LineLoad
      const dipMin = dips * dipGap - recoveryMin
      const soonest = Math.max(wanted, Math.max(kettleFree, notBeforeMin) + dipMin)
      const shelf = this.#shelfFor(pieces, soonest, bakeMin)
      times.timed = index
      if (shelf < 0) return false
      let into = Math.max(soonest, this.#free[shelf] as number)
      const earliestStart = Math.max(kettleFree, notBeforeMin, into - cycleMin - maxWaitMin)
      let start = Math.max(earliestStart, Math.min(into, this.#latestEnds[index] as number) - dipMin)
      // The first dip has to find boards: those of the loads before that are flipped by then.
      while (head < tail && (this.#flips[head] as number) <= start + cycleMin + ROUNDING_MIN) head++
      const boardsAt = this.#boardsFreeAt(head, tail, count - boards, start + cycleMin)
      if (boardsAt > start + cycleMin) {
        start = boardsAt - cycleMin
        into = Math.max(into, start + dipMin)
      }
      const out = into + bakeMin
      if (out > (this.#emptyBy[shelf] as number) + ROUNDING_MIN) return false
      this.#flips[tail] = into + firstSideMin + rewetMin
      this.#boards[tail++] = boards
      this.#free[shelf] = out + handlingMin
      kettleFree = start + dipMin + recoveryMin
      times.kettleStarts[index] = start
      times.ins[index] = into
      times.outs[index] = out
      times.shelves[index] = shelf
    }
    times.timed = loads.length
    return true
  }

  /** By when the kettle should be done with each load, so that the next ones need not wait for it. */
  #setLatestEnds(loads: readonly LineLoad[]): void {
    let latest = Number.POSITIVE_INFINITY
    for (let index = loads.length - 1; index >= 0; index--) {
      const { wanted, dips } = loads[index] as LineLoad
      latest = Math.min(latest, wanted)
      this.#latestEnds[index] = latest
      latest -= dips * this.#dipGap
    }
  }

  #startBoards(): number {
    for (let load = 0; load < this.#runningFlips.length; load++) {
      this.#flips[load] = this.#runningFlips[load] as number
      this.#boards[load] = this.#runningBoards[load] as number
    }
    return this.#runningFlips.length
  }

  /** Of the shelves that are large enough: the smallest, then the latest free one that is free; else the first to be. */
  #shelfFor(pieces: number, minute: number, bakeMin: number): number {
    let best = -1
    let bestRoom = 0
    let bestFree = 0
    for (let shelf = 0; shelf < this.#free.length; shelf++) {
      const room = this.shelfPieces[shelf] as number
      if (room < pieces) continue
      const free = this.#free[shelf] as number
      if (Math.max(free, minute) + bakeMin > (this.#emptyBy[shelf] as number) + ROUNDING_MIN) continue
      const isFree = free <= minute
      const isBetter =
        best < 0 ||
        (bestFree > minute
          ? isFree || free < bestFree
          : isFree && (room < bestRoom || (room === bestRoom && free > bestFree)))
      if (!isBetter) continue
      best = shelf
      bestRoom = room
      bestFree = free
    }
    return best
  }

  /** The first minute from `from` on at which no more than `most` boards are in use by the loads so far. */
  #boardsFreeAt(head: number, tail: number, most: number, from: number): number {
    let minute = from
    for (;;) {
      let used = 0
      let nextFlip = Number.POSITIVE_INFINITY
      for (let load = head; load < tail; load++) {
        const flip = this.#flips[load] as number
        if (flip <= minute + ROUNDING_MIN) continue
        used += this.#boards[load] as number
        if (flip < nextFlip) nextFlip = flip
      }
      if (used <= most || nextFlip === Number.POSITIVE_INFINITY) return minute
      minute = nextFlip
    }
  }
}

function piecesIn({ lines }: { readonly lines: readonly (readonly [string, number])[] }): number {
  return lines.reduce((sum, [, pieces]) => sum + pieces, 0)
}
