import fc from 'fast-check'
import type {
  BakeLoad,
  BakeOff,
  DemandGiven,
  OrderGiven,
  VarietyGiven,
} from '../../../shared-core/plan/bake-off/bake-off.ts'

/**
 * Any bake-off, sensible or not: an oven that is never free, a shelf smaller than a unit, no dough, few boards, orders that
 * nobody can fill, fractions of minutes, rushes, demand of nothing; half of them re-plans with loads under way.
 */
export function anyShop(): fc.Arbitrary<BakeOff> {
  return fc
    .record({
      unit: fc.constantFrom(1, 4, 5, 6, 12),
      kettle: fc.record({ pieces: fc.integer({ min: 3, max: 60 }), cycleMin: tenths(5, 30) }),
      boards: fc.record({
        count: fc.integer({ min: 1, max: 40 }),
        pieces: fc.integer({ min: 3, max: 12 }),
        maxWaitMin: tenths(0, 100),
      }),
      readyMin: tenths(2_500, 4_200),
      bakingMin: tenths(-100, 4_500),
      oven: fc.record({ firstSideMin: tenths(10, 50), handlingMin: tenths(0, 30) }),
      shelves: fc.array(fc.integer({ min: 5, max: 150 }), { minLength: 1, maxLength: 6 }),
      coolMin: tenths(0, 300),
      bakeToleranceMin: fc.constantFrom(0, 1, 2, 2.5),
      open: fc.constantFrom(330, 360, 401.5),
      hours: fc.constantFrom(2, 6, 9.25),
      doughs: fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 4 }),
      varieties: fc.array(anyVariety(), { minLength: 1, maxLength: 8 }),
      orders: fc.array(fc.tuple(fc.double({ min: 0.001, max: 1, noNaN: true }), anyLines()), { maxLength: 4 }),
      soFar: fc.option(fc.record({ part: fc.double({ min: 0, max: 1.1, noNaN: true }), running: anyRunning() })),
    })
    .map(({ readyMin, bakingMin, shelves, hours, doughs, varieties, orders, soFar, ...rest }) => {
      const close = rest.open + hours * 60
      const oven = {
        ...rest.oven,
        readyMin,
        mustBeEmptyMin: readyMin + bakingMin,
        shelves: shelves.map((pieces, n) => ({ name: `shelf ${n + 1}`, pieces })),
      }
      const plain: BakeOff = {
        ...rest,
        oven,
        close,
        doughs: Object.fromEntries(doughs.map((pieces, n) => [`dough ${n}`, { pieces }])),
        varieties: varieties.map((make, n) => make(n, doughs.length, { open: rest.open, close })),
        orders: [],
      }
      const now = soFar === null ? undefined : readyMin + soFar.part * (close - readyMin)
      const from = now ?? Math.min(rest.open, readyMin)
      const dues = orders.flatMap(([part, lines]) => orderAt(plain, from + part * (close - from), lines))
      const known = { ...plain, orders: from < close ? dues : [] }
      return now === undefined ? known : { ...known, now, running: soFar?.running(plain, now) ?? [] }
    })
}

const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10)

type Lines = readonly (readonly [nth: number, pieces: number])[]

const anyLines = (): fc.Arbitrary<Lines> =>
  fc.uniqueArray(fc.tuple(fc.nat(7), fc.integer({ min: 1, max: 90 })), {
    minLength: 1,
    maxLength: 3,
    selector: ([n]) => n,
  })

function orderAt({ varieties }: BakeOff, due: number, lines: Lines): OrderGiven[] {
  const known = lines.flatMap(([nth, pieces]) => {
    const name = varieties[nth]?.name
    return name === undefined ? [] : [[name, pieces] as const]
  })
  return known.length === 0 ? [] : [{ due, lines: known }]
}

type MakeVariety = (nth: number, doughs: number, hours: { open: number; close: number }) => VarietyGiven

function anyVariety(): fc.Arbitrary<MakeVariety> {
  return fc
    .record({
      dough: fc.nat(3),
      bakeMin: tenths(80, 240),
      onShelf: fc.constantFrom(0, 0, 3, 40),
      price: tenths(5, 30),
      costPart: tenths(0, 12),
      salvagePart: tenths(0, 10),
      lostSale: tenths(0, 15),
      stalePerHour: fc.constantFrom(0, 0.05, 0.8),
      mean: fc.constantFrom(0, 0.3, 8, 45, 180),
      dispersion: fc.constantFrom(0.3, 2, 9, 400),
      parts: fc.array(fc.nat(20), { minLength: 1, maxLength: 6 }),
    })
    .map(({ dough, costPart, salvagePart, mean, dispersion, parts, ...own }) => (nth, doughs, hours) => {
      const cost = own.price * costPart
      const demand = { mean, dispersion, profile: profileOf(parts, hours) }
      return {
        ...own,
        name: `variety ${nth}`,
        dough: `dough ${dough % doughs}`,
        cost,
        salvage: cost * salvagePart,
        demand,
      }
    })
}

/** Nobody in some parts of the day, many in others. */
function profileOf(parts: readonly number[], { open, close }: { open: number; close: number }): DemandGiven['profile'] {
  const sum = parts.reduce((total, part) => total + part, 0)
  let by = 0
  const points = parts.map((part, n): [number, number] => {
    by += part
    const isLast = n === parts.length - 1
    return [open + ((close - open) * (n + 1)) / parts.length, isLast || sum === 0 ? 1 : by / sum]
  })
  return [[open, 0], ...points]
}

type MakeRunning = (given: BakeOff, now: number) => BakeLoad[]

/** A load on some of the shelves, each in the kettle after the one before and still in the oven. */
function anyRunning(): fc.Arbitrary<MakeRunning> {
  return fc.array(fc.tuple(fc.boolean(), fc.nat(7), tenths(1, 40)), { maxLength: 6 }).map((kept) => (given, now) => {
    const { oven, kettle, varieties, unit } = given
    let before = now
    return kept.flatMap(([isThere, nth, agoMin], n) => {
      const [shelf, variety] = [oven.shelves[n], varieties[nth % varieties.length]]
      const pieces = Math.min(Math.floor((shelf?.pieces ?? 0) / unit), Math.floor(kettle.pieces / unit)) * unit
      if (!isThere || shelf === undefined || variety === undefined || pieces === 0) return []
      const into = before - agoMin
      before = into - kettle.cycleMin
      const [flip, out] = [into + oven.firstSideMin, into + variety.bakeMin]
      return [{ shelf: shelf.name, kettleStart: before, in: into, flip, out, lines: [[variety.name, pieces] as const] }]
    })
  })
}
