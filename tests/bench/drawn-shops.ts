import { partBy } from '../../shared-core/demand/exposure.ts'
import type { BakeLoad, BakeOff, VarietyGiven } from '../../shared-core/plan/bake-off/bake-off.ts'
import type { Draw } from '../core/support/draw.ts'
import { drawer } from '../core/support/draw.ts'

/** Drawn shops as large as planning must be quick for, and what is left of their mornings. */

const VARIETIES = 28
const SHELVES = 5
const DOUGHS = 6
const PIECES_A_DAY = 2_400

/** 28 varieties of six doughs, five shelves, about 2,400 pieces. */
export function largeShop(seed: number): BakeOff {
  const draw = drawer(seed)
  const open = 360
  const close = open + draw.oneOf([480, 540, 600])
  const shares = Array.from({ length: VARIETIES }, () => 1 + draw.upTo(9))
  const sum = shares.reduce((total, share) => total + share, 0)
  const profile = rush(draw, open, close)
  const varieties = shares.map((share, n) => drawnVariety(draw, n, { mean: (PIECES_A_DAY * share) / sum, profile }))
  const doughs = Array.from({ length: DOUGHS }, (_, n): [string, { pieces: number }] => {
    const mean = varieties.filter(({ dough }) => dough === `dough ${n}`).reduce((all, one) => all + one.demand.mean, 0)
    return [`dough ${n}`, { pieces: Math.ceil((mean * (95 + draw.upTo(30))) / 600) * 6 }]
  })
  return {
    unit: 6,
    kettle: { pieces: draw.oneOf([48, 60, 72]), cycleMin: draw.oneOf([1, 1.5]) },
    boards: { count: draw.oneOf([60, 90, 120]), pieces: 6, maxWaitMin: 8 },
    oven: {
      readyMin: open - draw.oneOf([90, 60, 30]),
      mustBeEmptyMin: close - draw.oneOf([240, 180, 120]),
      firstSideMin: 3.5,
      handlingMin: 1,
      shelves: Array.from({ length: SHELVES }, (_, n) => ({ name: `${n + 1}`, pieces: 144 })),
    },
    coolMin: 15,
    bakeToleranceMin: 2,
    open,
    close,
    doughs: Object.fromEntries(doughs),
    varieties,
    orders: [
      {
        due: open + 60 + draw.upTo(120),
        lines: [
          ['variety 0', 36],
          ['variety 3', 24],
        ],
      },
    ],
  }
}

function drawnVariety(draw: Draw, n: number, own: Pick<VarietyGiven['demand'], 'mean' | 'profile'>): VarietyGiven {
  const price = (140 + draw.upTo(90)) / 100
  const cost = (price * (25 + draw.upTo(20))) / 100
  return {
    name: `variety ${n}`,
    dough: `dough ${n < DOUGHS ? n : draw.upTo(DOUGHS - 1)}`,
    bakeMin: 15 + draw.upTo(4),
    onShelf: 0,
    price,
    cost,
    salvage: cost * 0.2,
    lostSale: (price * draw.upTo(70)) / 100,
    stalePerHour: 0.03,
    demand: { ...own, dispersion: 4 + draw.upTo(16) },
  }
}

/** Most come in the second hour. */
function rush(draw: Draw, open: number, close: number): VarietyGiven['demand']['profile'] {
  const hours = (close - open) / 60
  const weights = Array.from({ length: hours }, (_, n) => Math.exp(-((n - 1.5) ** 2) / 8) + 0.2 + draw.upTo(20) / 100)
  const sum = weights.reduce((total, weight) => total + weight, 0)
  let so = 0
  const points = weights.map((weight, n): [number, number] => {
    so += weight
    return [open + (n + 1) * 60, n === weights.length - 1 ? 1 : so / sum]
  })
  return [[open, 0], ...points]
}

/** What is left of a day two hours after opening that went as foretold, its plan followed. */
export function restOf(given: BakeOff, loads: readonly BakeLoad[]): BakeOff {
  const now = given.open + 120
  const begun = loads.filter(({ kettleStart }) => kettleStart < now)
  const running = begun.filter(({ out }) => out + given.coolMin > now)
  const piecesOf = (some: readonly BakeLoad[], name: string) =>
    some.flatMap(({ lines }) => lines).reduce((sum, [of, pieces]) => sum + (of === name ? pieces : 0), 0)
  const ready = begun.filter((load) => !running.includes(load))
  const doughs = Object.entries(given.doughs).map(([name, dough]): [string, { pieces: number }] => {
    const its = given.varieties.filter((one) => one.dough === name)
    return [name, { pieces: Math.max(0, dough.pieces - its.reduce((sum, one) => sum + piecesOf(begun, one.name), 0)) }]
  })
  return {
    ...given,
    now,
    running,
    doughs: Object.fromEntries(doughs),
    orders: given.orders.filter(({ due }) => due > now),
    varieties: given.varieties.map((one) => {
      const sold = one.demand.mean * partBy(one.demand.profile, now)
      return { ...one, onShelf: Math.max(0, Math.round(piecesOf(ready, one.name) - sold)) }
    }),
  }
}
