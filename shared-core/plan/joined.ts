import type { BakeLine, BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { expectedVariety } from './bake-off/expected.ts'
import { bakeMinOf, boardsOf, coolMinOf, dipsOf, piecesIn, varietyOf } from './bake-off/load-parts.ts'
import { fitted } from './solved.ts'

/** A load more is some minutes of somebody's hands: it must gain so many cents. Common practice, no source. */
const LOAD_CENTS = 50
/** Only loads that leave most of their shelf empty are looked at, the smallest first. */
const SMALL_PART = 0.4
/** Tries of a day at most, so that a large shop does not wait. */
const TRIES_MAX = 90

/**
 * Small loads put together with the one before or after them, where that costs less than a load is worth: the planner
 * counts money alone, and a shelf opened for half a dozen pieces earns some cents of freshness.
 */
export function joined(given: BakeOff, loads: readonly BakeLoad[]): readonly BakeLoad[] {
  const plan = new JoinedPlan(given, loads)
  const seen = new Set<BakeLoad>()
  for (let tries = 0; tries < TRIES_MAX; ) {
    const small = plan.smallest(seen)
    if (small === null) break
    seen.add(small)
    const neighbours = plan.besides(small)
    tries += neighbours.length
    plan.joinBest(small, neighbours)
  }
  return plan.loads
}

class JoinedPlan {
  readonly #given: BakeOff
  #loads: readonly BakeLoad[]
  #worth: ReadonlyMap<string, number>

  constructor(given: BakeOff, loads: readonly BakeLoad[]) {
    this.#given = given
    this.#loads = loads
    this.#worth = new Map(given.varieties.map((one) => [one.name, expectedVariety(given, one, loads).profit]))
  }

  get loads(): readonly BakeLoad[] {
    return this.#loads
  }

  smallest(seen: ReadonlySet<BakeLoad>): BakeLoad | null {
    const isSmall = (load: BakeLoad) => piecesIn(load.lines) <= SMALL_PART * this.#roomOf(load.shelf)
    return this.#loads
      .filter((load) => !seen.has(load) && isSmall(load))
      .reduce<BakeLoad | null>((least, load) => {
        return least === null || piecesIn(load.lines) < piecesIn(least.lines) ? load : least
      }, null)
  }

  /** The loads before and after it, of those that have room for it and bake alike. */
  besides(load: BakeLoad): readonly BakeLoad[] {
    const inTurn = [...this.#loads].sort((one, other) => one.in - other.in)
    const place = inTurn.indexOf(load)
    const fits = (other: BakeLoad) => this.#takes(other, load)
    return [inTurn.slice(0, place).reverse().find(fits), inTurn.slice(place + 1).find(fits)].flatMap((one) => one ?? [])
  }

  joinBest(small: BakeLoad, neighbours: readonly BakeLoad[]): void {
    let best: { loads: readonly BakeLoad[]; worth: ReadonlyMap<string, number>; gain: number } | null = null
    for (const neighbour of neighbours) {
      const wished = this.#together(neighbour, small)
      const rest = this.#loads.filter((load) => load !== small && load !== neighbour)
      const loads = fitted(this.#given, [...rest, wished])
      if (loads.length < rest.length + 1 || takesFromShow(this.#given, small, wished)) continue
      const worth = this.#worthOf(loads)
      const gain = total(worth) - total(this.#worth)
      if (gain > -LOAD_CENTS && (best === null || gain > best.gain)) best = { loads, worth, gain }
    }
    if (best === null) return
    this.#loads = best.loads
    this.#worth = best.worth
  }

  #roomOf(shelf: string): number {
    return this.#given.oven.shelves.find(({ name }) => name === shelf)?.pieces ?? 0
  }

  #takes(load: BakeLoad, more: BakeLoad): boolean {
    const { boards, kettle, bakeToleranceMin } = this.#given
    const lines = linesTogether(load.lines, more.lines)
    const dips = dipsOf(this.#given, lines)
    const bakes = lines.map(([name]) => varietyOf(this.#given, name)?.bakeMin ?? 0)
    return (
      piecesIn(lines) <= this.#roomOf(load.shelf) &&
      boardsOf(this.#given, lines) <= boards.count &&
      (dips - 1) * kettle.cycleMin <= boards.maxWaitMin &&
      Math.max(...bakes) - Math.min(...bakes) <= bakeToleranceMin
    )
  }

  #together(load: BakeLoad, more: BakeLoad): BakeLoad {
    const lines = linesTogether(load.lines, more.lines)
    const kettleStart = load.in - dipsOf(this.#given, lines) * this.#given.kettle.cycleMin
    return { ...load, kettleStart, out: load.in + bakeMinOf(this.#given, lines), lines }
  }

  /** Only varieties of loads that are others than before have another worth. */
  #worthOf(loads: readonly BakeLoad[]): ReadonlyMap<string, number> {
    const [was, is] = [new Set(this.#loads), new Set(loads)]
    const others = [...loads.filter((load) => !was.has(load)), ...this.#loads.filter((load) => !is.has(load))]
    const names = new Set(others.flatMap(({ lines }) => lines.map(([name]) => name)))
    const worth = new Map(this.#worth)
    for (const variety of this.#given.varieties)
      if (names.has(variety.name)) worth.set(variety.name, expectedVariety(this.#given, variety, loads).profit)
    return worth
  }
}

/** What must be on show at the opening would be ready after it. */
function takesFromShow(given: BakeOff, small: BakeLoad, wished: BakeLoad): boolean {
  return small.lines.some(([name]) => {
    const variety = varietyOf(given, name)
    if (variety === undefined || (variety.show?.atOpen ?? 0) === 0) return false
    const cool = coolMinOf(given, variety)
    return small.out + cool <= given.open && wished.out + cool > given.open
  })
}

function linesTogether(one: readonly BakeLine[], other: readonly BakeLine[]): readonly BakeLine[] {
  const sums = new Map(one)
  for (const [name, pieces] of other) sums.set(name, (sums.get(name) ?? 0) + pieces)
  return [...sums]
}

function total(worth: ReadonlyMap<string, number>): number {
  let sum = 0
  for (const cents of worth.values()) sum += cents
  return sum
}
