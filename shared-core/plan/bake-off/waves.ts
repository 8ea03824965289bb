import { partBy } from '../../demand/exposure.ts'
import { negativeBinomial, quantile } from '../../demand/pieces.ts'
import type { BakeLine, BakeOff, BakePlan, VarietyGiven } from './bake-off.ts'
import { coolMinOf, piecesIn } from './load-parts.ts'
import { PlacedLoads } from './place-loads.ts'

/** What of a variety is still wanted, in pieces, until the pieces of each wave are there; summed up. */
interface Wanted {
  readonly variety: VarietyGiven
  readonly upTo: readonly number[]
  given: number
}

/**
 * What shops do by habit: equal waves, the first when the oven is ready, each with what is asked for until the next one is
 * there; of each variety the newsvendor's quantity for the day, less what is there, and what is ordered. Feasible; what
 * finds no place in its wave goes into the next one.
 */
export function wavesPlan(given: BakeOff, everyMin = 90): BakePlan {
  const starts = waveStarts(given, everyMin)
  const shares = doughShares(given)
  const wanted = given.varieties.map((variety) => wantedOf(given, variety, starts, shares.get(variety.dough) ?? 0))
  const placed = new PlacedLoads(given)
  for (const [wave, inMin] of starts.entries()) {
    const lines = wanted.flatMap((one): { line: BakeLine; bakeMin: number; wanted: Wanted }[] => {
      const pieces = (one.upTo[wave] ?? 0) - one.given
      return pieces > 0 ? [{ line: [one.variety.name, pieces], bakeMin: one.variety.bakeMin, wanted: one }] : []
    })
    for (const { load, of } of urgentFirst(given, filled(given, lines))) {
      if (placed.put({ shelf: null, lines: load, inMin }) === null) continue
      for (const [at, [, pieces]] of load.entries()) {
        const one = of[at]
        if (one !== undefined) one.given += pieces
      }
    }
  }
  return { loads: placed.loads }
}

function waveStarts({ oven, now }: BakeOff, everyMin: number): number[] {
  const first = Math.max(oven.readyMin, now ?? oven.readyMin)
  // The last one needs its time too: what is begun too late is not out when the oven must be empty.
  const count = Math.max(1, Math.floor((oven.mustBeEmptyMin - first) / everyMin))
  return Array.from({ length: count }, (_, wave) => first + wave * everyMin)
}

/** Where a dough is short, every variety of it bakes the same part of what it would; orders are not cut. */
function doughShares(given: BakeOff): ReadonlyMap<string, number> {
  return new Map(
    Object.entries(given.doughs).map(([dough, { pieces }]) => {
      const all = given.varieties.filter((variety) => variety.dough === dough).map((variety) => dayOf(given, variety))
      const ordered = all.reduce((sum, one) => sum + one.ordered, 0)
      const whole = all.reduce((sum, one) => sum + one.whole, 0)
      return [dough, whole <= pieces ? 1 : Math.max(0, pieces - ordered) / Math.max(1, whole - ordered)]
    }),
  )
}

/** Pieces of a variety for what is left of the day: the newsvendor's for who walks in, and orders, less what is there. */
function dayOf(given: BakeOff, variety: VarietyGiven) {
  const { open, now } = given
  const { mean, dispersion, profile } = variety.demand
  const came = partBy(profile, Math.max(open, now ?? open))
  const rest = mean * Math.max(0, 1 - came)
  const walkIns = rest <= 0 ? 0 : quantile(negativeBinomial(rest, dispersion), criticalRatio(variety))
  const there = variety.onShelf + onTheWay(given, variety.name)
  const ordered = given.orders
    .flatMap(({ lines }) => lines)
    .reduce((sum, line) => sum + piecesOf(variety.name, line), 0)
  return { came, walkIns, there, ordered, whole: Math.max(0, walkIns + ordered - there) }
}

function wantedOf(given: BakeOff, variety: VarietyGiven, starts: readonly number[], share: number): Wanted {
  const { unit } = given
  const { came, walkIns, there, ordered, whole } = dayOf(given, variety)
  const day = walkIns * share
  const round = share < 1 ? Math.floor : Math.ceil
  const pieces = Math.max(0, round((share < 1 ? day + ordered - Math.min(there, ordered) : whole) / unit) * unit)
  const upTo = starts.map((_, wave) => {
    const next = starts[wave + 1]
    if (next === undefined) return pieces
    const until = next + variety.bakeMin + coolMinOf(given, variety)
    const part = came >= 1 ? 1 : Math.max(0, partBy(variety.demand.profile, until) - came) / (1 - came)
    const due = given.orders
      .filter((order) => order.due <= until)
      .flatMap(({ lines }) => lines)
      .reduce((sum, line) => sum + piecesOf(variety.name, line), 0)
    return Math.min(pieces, Math.max(0, Math.ceil((part * day + due - there) / unit) * unit))
  })
  return { variety, upTo, given: 0 }
}

function criticalRatio({ price, lostSale, cost, salvage }: VarietyGiven): number {
  const [under, over] = [price + lostSale - cost, cost - salvage]
  if (under <= 0) return 0
  return over <= 0 ? 0.999 : under / (under + over)
}

function onTheWay({ running = [], pinned = [] }: BakeOff, name: string): number {
  return [...running, ...pinned].flatMap(({ lines }) => lines).reduce((sum, line) => sum + piecesOf(name, line), 0)
}

function piecesOf(name: string, [variety, pieces]: BakeLine): number {
  return variety === name ? pieces : 0
}

interface Filled {
  readonly load: readonly BakeLine[]
  /** Whose lines they are. */
  readonly of: readonly Wanted[]
}

/** Lines into loads of a shelf's size, those that bake alike beside each other. */
function filled(given: BakeOff, lines: readonly { line: BakeLine; bakeMin: number; wanted: Wanted }[]): Filled[] {
  const { unit, boards, kettle } = given
  const dipsMax = 1 + Math.floor(boards.maxWaitMin / (kettle.cycleMin + (kettle.recoveryMin ?? 0)) + 1e-9)
  const shelf = Math.max(0, ...given.oven.shelves.map(({ pieces }) => pieces))
  const most = Math.floor(Math.min(shelf, dipsMax * kettle.pieces) / unit) * unit
  const byBake = [...lines].sort((one, other) => one.bakeMin - other.bakeMin)
  const loads: { load: BakeLine[]; of: Wanted[]; fromMin: number }[] = []
  for (const { line, bakeMin, wanted } of byBake) {
    for (let rest = line[1]; rest > 0 && most > 0; ) {
      let last = loads[loads.length - 1]
      if (last === undefined || bakeMin - last.fromMin > given.bakeToleranceMin || piecesIn(last.load) >= most) {
        last = { load: [], of: [], fromMin: bakeMin }
        loads.push(last)
      }
      const pieces = Math.min(rest, roomIn(given, last.load, most))
      if (pieces <= 0) {
        if (last.load.length === 0) break
        loads.push({ load: [], of: [], fromMin: bakeMin })
        continue
      }
      last.load.push([line[0], pieces])
      last.of.push(wanted)
      rest -= pieces
    }
  }
  return loads.filter(({ load }) => load.length > 0)
}

/** What an order wants soonest goes in first; nobody lets an order wait for what bakes alike. */
function urgentFirst({ orders, now = Number.NEGATIVE_INFINITY }: BakeOff, loads: readonly Filled[]): Filled[] {
  const due = ({ load }: Filled) => {
    const names = new Set(load.map(([name]) => name))
    const wanting = orders.filter((order) => order.due > now && order.lines.some(([name]) => names.has(name)))
    return Math.min(Number.MAX_SAFE_INTEGER, ...wanting.map((order) => order.due))
  }
  return [...loads].sort((one, other) => due(one) - due(other))
}

/** Pieces of one line more that a load takes, by shelf, kettle and boards. */
function roomIn({ unit, boards }: BakeOff, load: readonly BakeLine[], most: number): number {
  const taken = load.reduce((sum, [, pieces]) => sum + Math.ceil(pieces / boards.pieces - 1e-9), 0)
  const onBoards = Math.max(0, boards.count - taken) * boards.pieces
  return Math.floor(Math.min(most - piecesIn(load), onBoards) / unit) * unit
}
