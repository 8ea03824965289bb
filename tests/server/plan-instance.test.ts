import { existsSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readBakeOff } from '../../server/plan/read-bake-off.ts'
import type { BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../shared-core/plan/bake-off/plan-bake-off.ts'
import { anyShop } from '../reference/bake-off/any-shop.ts'
import { loadReadyAt, madeShop, madeVariety, orderOf } from '../reference/bake-off/made-shop.ts'

const SAMPLES = new URL('../../../shared/data/plan/', import.meta.url)

/** All that a shop may add to the scored core. */
const WHOLE: BakeOff = {
  ...madeShop(),
  kettle: { pieces: 36, cycleMin: 1.5, readyMin: 260, recoveryMin: 0.5 },
  boards: { count: 24, pieces: 6, maxWaitMin: 8, rewetMin: 2 },
  oven: { ...madeShop().oven, turnMin: 1, shelves: [{ name: '1', pieces: 72, emptyByMin: 600, readyMin: 280 }] },
  doughs: { plain: { pieces: 600, notBeforeMin: 300, carryValue: 0.2 } },
  varieties: [
    {
      ...madeVariety({ mean: 20 }),
      coolMin: 0,
      show: { atOpen: 6, least: 3, untilMin: 500 },
      brings: ['egg'],
      avoids: [],
    },
  ],
  orders: [{ ...orderOf(495, 36), leadMin: 20, coolMin: 30 }],
  now: 300,
  running: [loadReadyAt(340, 12)],
  hands: {
    loadMin: 1,
    flipMin: 0.5,
    outMin: 1,
    people: [
      [240, 1],
      [300, 2],
    ],
  },
  pinned: [loadReadyAt(400, 12)],
  forbidden: [
    { shelf: '1', fromMin: 500, toMin: 520 },
    { variety: 'Plain', fromMin: 400, toMin: 410 },
  ],
  washes: [420],
  contactNow: ['egg'],
  contactCost: 0.1,
}

function changed(change: (given: ReturnType<typeof copyOf>) => void): unknown {
  const given = copyOf(WHOLE)
  change(given)
  return given
}

// Broken on purpose, so that its type says nothing.
function copyOf(given: BakeOff) {
  return JSON.parse(JSON.stringify(given))
}

describe('a planning problem as JSON', () => {
  it('[I53] given any problem, sensible or not, with all that a shop may add or without, when read, then it is as it was', () => {
    expect(readBakeOff(copyOf(WHOLE))).toEqual({ ok: true, given: WHOLE, passedOver: [] })
    fc.assert(
      fc.property(anyShop(), (given) => {
        expect(readBakeOff(copyOf(given))).toEqual({ ok: true, given, passedOver: [] })
      }),
      { numRuns: 150 },
    )
  })

  it('[I53] given the public samples, when read, then they are as they were', ({ skip }) => {
    skip(
      !existsSync(SAMPLES),
      'skipped: the samples are not there; they lie in ../shared/data/plan, beside the checkout',
    )
    for (const name of ['small', 'medium', 'large']) {
      const given = JSON.parse(readFileSync(new URL(`${name}.json`, SAMPLES), 'utf8'))
      expect(readBakeOff(given)).toEqual({ ok: true, given, passedOver: [] })
    }
  })

  it('[I53] given keys that nobody knows, when read, then they are passed over and named', () => {
    const given = changed((one) => {
      one.note = 'a Tuesday'
      one.varieties[0].color = 'brown'
    })
    expect(readBakeOff(given)).toEqual({ ok: true, given: WHOLE, passedOver: ['/varieties/0/color', '/note'] })
  })

  it('[I53] given orders and loads that name a variety in thousands of lines, when read, then each names it once, and it is planned', () => {
    const many = Array.from({ length: 60 }, () => ['Plain', 1])
    const read = readBakeOff({
      ...copyOf(WHOLE),
      orders: Array.from({ length: 40 }, (_, n) => ({ due: 450 + n * 10, lines: many })),
      running: [{ ...copyOf(WHOLE).running[0], lines: many }],
    })
    const given = read.ok ? read.given : null
    expect([...(given?.orders ?? []), ...(given?.running ?? [])].map(({ lines }) => lines)).toEqual(
      Array.from({ length: 41 }, () => [['Plain', 60]]),
    )
    expect(given === null ? [] : planBakeOff(given, 0.1).loads).not.toEqual([])
  })

  it.each<[path: string, wrong: string, change: (given: ReturnType<typeof copyOf>) => void]>([
    ['/unit', '"unit" is 0.', (one) => (one.unit = 0)],
    ['/kettle/pieces', '"pieces" is 1.5.', (one) => (one.kettle.pieces = 1.5)],
    ['/kettle/cycleMin', '"cycleMin" is missing.', (one) => delete one.kettle.cycleMin],
    ['/oven/shelves', '"shelves" has 0 entries.', (one) => (one.oven.shelves = [])],
    ['/oven/shelves', '"shelves" has 21 entries.', (one) => (one.oven.shelves = shelves(21))],
    ['/varieties', '"varieties" has 61 entries.', (one) => (one.varieties = varieties(61))],
    ['/oven/shelves/1/name', '"1" is the name of entry 1 too.', (one) => one.oven.shelves.push(one.oven.shelves[0])],
    ['/oven/shelves/0/pieces', '"pieces" is 90000.', (one) => (one.oven.shelves[0].pieces = 90_000)],
    ['/varieties/1/name', '"Plain" is the name of entry 1 too.', (one) => one.varieties.push(one.varieties[0])],
    ['/varieties/0/dough', 'There is no dough "rye".', (one) => (one.varieties[0].dough = 'rye')],
    ['/varieties/0/dough', 'There is no dough "toString".', (one) => (one.varieties[0].dough = 'toString')],
    ['/varieties/0/demand/mean', '"mean" is the text "many".', (one) => (one.varieties[0].demand.mean = 'many')],
    ['/varieties/0/demand/dispersion', '"dispersion" is 0.', (one) => (one.varieties[0].demand.dispersion = 0)],
    ['/varieties/0/demand/profile/1', 'The part falls to 0.2.', (one) => (one.varieties[0].demand.profile = falling)],
    [
      '/varieties/0/demand/profile/1',
      'Minute 300 stands after a later one.',
      (one) => (one.varieties[0].demand.profile = back),
    ],
    ['/close', '"close" is 360.', (one) => (one.close = 360)],
    ['/orders/0/due', '"due" is 901.', (one) => (one.orders[0].due = 901)],
    ['/orders/0/due', '"due" is 300.', (one) => (one.orders[0].due = 300)],
    ['/orders/0/lines/0', 'There is no variety "Onion".', (one) => (one.orders[0].lines = [['Onion', 6]])],
    ['/orders/0/lines/0', 'Entry 1 is the text "Plain".', (one) => (one.orders[0].lines = ['Plain'])],
    ['/running/0/shelf', 'There is no shelf "9".', (one) => (one.running[0].shelf = '9')],
    ['/running/0/in', 'The times of this load are out of order.', (one) => (one.running[0].in = 1_000)],
    ['/hands/people/1', 'Minute 200 stands after a later one.', (one) => (one.hands.people[1][0] = 200)],
    ['/forbidden/0/toMin', '"toMin" is 500.', (one) => (one.forbidden[0].toMin = 500)],
    ['/forbidden/1/variety', 'There is no variety "Onion".', (one) => (one.forbidden[1].variety = 'Onion')],
  ])('[I54] given a problem broken at %s, when read, then it is refused: %s', (path, wrong, change) => {
    const read = readBakeOff(changed(change))
    expect(read.ok || read.problems[0]).toMatchObject({ path, wrong })
    expect(read.ok || read.problems[0]?.right).toMatch(/^\S.*[.}]$/)
  })

  it.each([[null], [7], ['text'], [[]], [{}]])(
    '[I54] given %j, when read, then it is refused with a sentence',
    (raw) => {
      const read = readBakeOff(raw)
      expect(read.ok).toBe(false)
      expect(read.ok || read.problems.every(({ wrong, right }) => wrong.length > 0 && right.length > 0)).toBe(true)
    },
  )
})

const shelves = (count: number) => Array.from({ length: count }, (_, n) => ({ name: `shelf ${n}`, pieces: 12 }))
const varieties = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ ...madeVariety(), name: `variety ${n}` }))
const falling = [
  [360, 0.5],
  [900, 0.2],
]
const back = [
  [360, 0],
  [300, 1],
]
