import type { Highs } from 'highs'
import type { BakeLoad, BakeOff, VarietyGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { Program } from './program.ts'

/**
 * Kinds of shops for which the best plan can be proven, each as a mixed-integer program on a grid of times. What makes
 * them simple: the kettle and the boards are never short, all pieces come in whole units, and the profit is a sum over
 * units that does not depend on what else is baked:
 *
 * - `orders only`: nobody walks in, so that a unit is worth what the order that takes it pays, less its wait.
 * - `one rush`: all of a variety's customers come in the same minute. First ready, first sold, so that the n-th unit is
 *   sold exactly when the demand reaches it: its worth follows from the law of the demand and its wait.
 * - `baked before the opening`: the oven must be empty before, pieces cost nothing to wait: only totals matter.
 *
 * The planner may use any minute, so that it may do better than the grid.
 */
export interface Optimum {
  /** Expected profit. */
  readonly profit: number
  readonly loads: BakeLoad[]
}

const GRID_MIN = 5

export function solveOrdersOnly(solver: Highs, given: BakeOff): Optimum {
  const program = new Program()
  const grid = new LoadGrid(program, given)
  const lines = given.orders.flatMap(({ due, lines: wanted }, order) =>
    wanted.map(([name, pieces], nth) => ({ due, pieces, id: `o${order}_${nth}`, variety: varietyOf(given, name) })),
  )
  let fixed = 0
  for (const { due, pieces, id, variety } of lines) {
    const { price, cost, lostSale, stalePerHour } = variety
    fixed -= pieces * (price + 2 * lostSale)
    const units = grid.slotsOf(variety).flatMap((slot) => {
      if (slot.readyAt > due) return []
      const each = 2 * price + 2 * lostSale - cost - (stalePerHour * (due - slot.readyAt)) / 60
      const name = program.integer(`u_${id}_${slot.id}`, pieces / given.unit, each * given.unit)
      slot.put(variety, name)
      return [[1, name] as const]
    })
    program.atMost(units, pieces / given.unit)
  }
  return grid.solve(solver, fixed)
}

export function solveOneRush(solver: Highs, given: BakeOff): Optimum {
  const program = new Program()
  const grid = new LoadGrid(program, given)
  let fixed = 0
  for (const [index, variety] of given.varieties.entries()) {
    const [[from], [to]] = rushOf(variety)
    const atLeast = chancesOf(variety)
    fixed -= variety.lostSale * variety.demand.mean
    const slots = grid.slotsOf(variety).filter(({ readyAt }) => readyAt <= from)
    const unitsMax = unitsWorthWhile(given, variety, atLeast)
    const unit = given.unit
    const byUnit = Array.from({ length: unitsMax }, (_, n) =>
      slots.map((slot) => {
        const wait = (from + to) / 2 - slot.readyAt
        const worth = worthOfUnit(variety, atLeast, { first: n * unit, pieces: unit, wait })
        const name = program.binary(`z_${index}_${n}_${slot.id}`, worth)
        slot.put(variety, name)
        return name
      }),
    )
    for (const [n, names] of byUnit.entries()) {
      program.atMost(
        names.map((name) => [1, name]),
        1,
      )
      // First ready, first sold: the next unit is not ready before this one.
      const next = byUnit[n + 1]
      for (let until = 1; next !== undefined && until <= names.length; until++) {
        const both = [
          ...next.slice(0, until).map((one) => [1, one] as const),
          ...names.slice(0, until).map((one) => [-1, one] as const),
        ]
        program.atMost(both, 0)
      }
    }
  }
  return grid.solve(solver, fixed)
}

export function solveBeforeOpening(solver: Highs, given: BakeOff): Optimum {
  const { oven, doughs, unit, varieties } = given
  const program = new Program()
  let fixed = 0
  const bakes = [...new Set(varieties.map(({ bakeMin }) => bakeMin))]
  const timeMin = oven.mustBeEmptyMin - oven.readyMin + oven.handlingMin
  const loads = oven.shelves.map((_, shelf) => bakes.map((bakeMin) => program.integer(`loads_${shelf}_${bakeMin}`, 9)))
  for (const ofShelf of loads) {
    program.atMost(
      ofShelf.map((name, n) => [(bakes[n] ?? 0) + oven.handlingMin, name] as const),
      timeMin,
    )
  }
  // Units are worth less and less, so that the best are taken without being told to.
  const units = varieties.map((variety, index) => {
    const atLeast = chancesOf(variety)
    fixed -= variety.lostSale * variety.demand.mean
    return Array.from({ length: unitsWorthWhile(given, variety, atLeast) }, (_, n) =>
      program.binary(`z_${index}_${n}`, worthOfUnit(variety, atLeast, { first: n * unit, pieces: unit, wait: 0 })),
    )
  })
  const unitsOf = (isTaken: (variety: VarietyGiven) => boolean) =>
    units.flatMap((names, index) => (varieties.some((one, n) => n === index && isTaken(one)) ? names : []))
  for (const [n, bakeMin] of bakes.entries()) {
    const room = loads.map((ofShelf) => [-(oven.shelves[0]?.pieces ?? 0), ofShelf[n] ?? ''] as const)
    program.atMost([...unitsOf((one) => one.bakeMin === bakeMin).map((name) => [unit, name] as const), ...room], 0)
  }
  for (const [dough, { pieces }] of Object.entries(doughs)) {
    program.atMost(
      unitsOf((one) => one.dough === dough).map((name) => [unit, name] as const),
      pieces,
    )
  }
  const { profit, countOf } = solved(solver, program)
  const pieces = new Map(
    varieties.map(({ name }, n) => [name, unit * (units[n] ?? []).reduce((sum, one) => sum + countOf(one), 0)]),
  )
  const places = loads.flatMap((ofShelf) => {
    let into = oven.readyMin
    return ofShelf.flatMap((name, n) =>
      Array.from({ length: countOf(name) }, () => {
        const bakeMin = bakes[n] ?? 0
        const place = { into, bakeMin, lines: filled(pieces, given, bakeMin) }
        into += bakeMin + oven.handlingMin
        return place
      }),
    )
  })
  return { profit: profit + fixed, loads: loadsOf(given, places) }
}

/** Loads on a grid of times: for each length of bake and each minute so many, never more at once than shelves. */
class LoadGrid {
  readonly #program: Program
  readonly #given: BakeOff
  readonly #slots: Slot[]

  constructor(program: Program, given: BakeOff) {
    const { oven, varieties } = given
    this.#program = program
    this.#given = given
    const minutes: number[] = []
    for (let at = oven.readyMin; at <= oven.mustBeEmptyMin; at += GRID_MIN) minutes.push(at)
    this.#slots = [...new Set(varieties.map(({ bakeMin }) => bakeMin))].flatMap((bakeMin) =>
      minutes
        .filter((into) => into + bakeMin <= oven.mustBeEmptyMin)
        .map((into) => new Slot(program, given, { into, bakeMin })),
    )
    for (const at of minutes) {
      const busy = this.#slots.filter(({ into, bakeMin }) => into <= at && at < into + bakeMin + oven.handlingMin)
      program.atMost(
        busy.map(({ loads }) => [1, loads]),
        oven.shelves.length,
      )
    }
  }

  slotsOf({ bakeMin }: VarietyGiven): readonly Slot[] {
    return this.#slots.filter((slot) => slot.bakeMin === bakeMin)
  }

  solve(solver: Highs, fixed: number): Optimum {
    const { doughs, unit } = this.#given
    for (const slot of this.#slots) slot.limit()
    for (const [dough, { pieces }] of Object.entries(doughs)) {
      const used = this.#slots.flatMap((slot) => slot.units.filter(({ variety }) => variety.dough === dough))
      this.#program.atMost(
        used.map(({ name }) => [unit, name]),
        pieces,
      )
    }
    const { profit, countOf } = solved(solver, this.#program)
    return {
      profit: profit + fixed,
      loads: loadsOf(
        this.#given,
        this.#slots.flatMap((slot) => slot.places(countOf)),
      ),
    }
  }
}

type CountOf = (variable: string) => number

function solved(solver: Highs, program: Program): { profit: number; countOf: CountOf } {
  const found = solver.solve(program.text(), { mip_rel_gap: 0 })
  if (found.Status !== 'Optimal') throw new Error(`the solver says: ${found.Status}`)
  return { profit: found.ObjectiveValue, countOf: (variable) => Math.round(found.Columns[variable]?.Primal ?? 0) }
}

/** Loads of one length of bake that go in at one minute. */
class Slot {
  readonly into: number
  readonly bakeMin: number
  readonly id: string
  readonly readyAt: number
  /** The variable that says how many. */
  readonly loads: string
  readonly units: { variety: VarietyGiven; name: string }[] = []
  readonly #program: Program
  readonly #given: BakeOff

  constructor(program: Program, given: BakeOff, { into, bakeMin }: { into: number; bakeMin: number }) {
    this.into = into
    this.bakeMin = bakeMin
    this.id = `${bakeMin}_${into}`
    this.readyAt = into + bakeMin + given.coolMin
    this.loads = program.integer(`loads_${this.id}`, given.oven.shelves.length)
    this.#program = program
    this.#given = given
  }

  put(variety: VarietyGiven, name: string): void {
    this.units.push({ variety, name })
  }

  limit(): void {
    const room = this.#given.oven.shelves[0]?.pieces ?? 0
    this.#program.atMost([...this.units.map(({ name }) => [this.#given.unit, name] as const), [-room, this.loads]], 0)
  }

  places(countOf: CountOf): Place[] {
    const pieces = new Map<string, number>()
    for (const { variety, name } of this.units) {
      pieces.set(variety.name, (pieces.get(variety.name) ?? 0) + this.#given.unit * countOf(name))
    }
    const loads = Array.from({ length: countOf(this.loads) })
    return loads.map(() => ({
      into: this.into,
      bakeMin: this.bakeMin,
      lines: filled(pieces, this.#given, this.bakeMin),
    }))
  }
}

interface Place {
  readonly into: number
  readonly bakeMin: number
  readonly lines: [variety: string, pieces: number][]
}

/** A shelf that is free for each place, and the kettle just before: those that go in together take turns in it. */
function loadsOf(given: BakeOff, places: readonly Place[]): BakeLoad[] {
  const { oven, kettle } = given
  const freeAt = new Map(oven.shelves.map(({ name }) => [name, oven.readyMin]))
  const inOrder = places.filter(({ lines }) => lines.length > 0).sort((a, b) => a.into - b.into)
  const placed = inOrder.map(({ into, bakeMin, lines }) => {
    const shelf = oven.shelves.find(({ name }) => (freeAt.get(name) ?? 0) <= into)
    if (shelf === undefined) throw new Error(`no shelf is free at ${into}`)
    const out = into + bakeMin
    freeAt.set(shelf.name, out + oven.handlingMin)
    return { shelf: shelf.name, kettleStart: into, in: into, flip: into + oven.firstSideMin, out, lines }
  })
  let before = Number.POSITIVE_INFINITY
  const lastFirst = placed.reverse().map((load) => {
    const dips = Math.ceil(load.lines.reduce((sum, [, n]) => sum + n, 0) / kettle.pieces)
    before = Math.min(before, load.in) - dips * kettle.cycleMin
    return { ...load, kettleStart: before }
  })
  return lastFirst.reverse()
}

/** Takes a shelf full of what has this length of bake. */
function filled(pieces: Map<string, number>, { varieties, oven }: BakeOff, bakeMin: number): [string, number][] {
  let left = oven.shelves[0]?.pieces ?? 0
  return varieties.flatMap<[string, number]>(({ name, bakeMin: own }) => {
    const taken = own === bakeMin ? Math.min(pieces.get(name) ?? 0, left) : 0
    if (taken <= 0) return []
    pieces.set(name, (pieces.get(name) ?? 0) - taken)
    left -= taken
    return [[name, taken]]
  })
}

/** Expected profit of the pieces first + 1 … first + pieces that are ready, against not having them. */
function worthOfUnit(
  { price, cost, salvage, lostSale, stalePerHour }: VarietyGiven,
  atLeast: readonly number[],
  { first, pieces, wait }: { first: number; pieces: number; wait: number },
): number {
  const soldWorth = price + lostSale - salvage - (stalePerHour * wait) / 60
  return atLeast
    .slice(first + 1, first + pieces + 1)
    .reduce((sum, chance) => sum + chance * soldWorth, (salvage - cost) * pieces)
}

/** Units are worth less and less: beyond so many none pays, even without a wait. */
function unitsWorthWhile({ doughs, unit }: BakeOff, variety: VarietyGiven, atLeast: readonly number[]): number {
  const most = Math.floor((doughs[variety.dough]?.pieces ?? 0) / unit)
  let units = 0
  while (units < most && worthOfUnit(variety, atLeast, { first: units * unit, pieces: unit, wait: 0 }) > 0) units++
  return units
}

/** P(demand >= n), n = 0, 1, …, of the negative binomial, by its recursion. */
function chancesOf({ demand: { mean, dispersion: k } }: VarietyGiven): number[] {
  const atLeast = [1]
  let chance = (k / (k + mean)) ** k
  for (let n = 0; n < 1_000; n++) {
    atLeast.push((atLeast[n] ?? 0) - chance)
    chance *= ((k + n) / (n + 1)) * (mean / (k + mean))
  }
  return atLeast
}

/** The minute in which all customers of a variety come. */
function rushOf({
  name,
  demand: { profile },
}: VarietyGiven): readonly [readonly [number, number], readonly [number, number]] {
  const [from, to] = profile
  if (from === undefined || to === undefined) throw new Error(`${name} has no rush`)
  return [from, to]
}

function varietyOf({ varieties }: BakeOff, name: string): VarietyGiven {
  const found = varieties.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no variety is called ${name}`)
  return found
}
