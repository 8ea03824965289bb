import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { negativeBinomial } from '../../../shared-core/demand/pieces.ts'
import type { Asked } from '../../../shared-core/plan/how-many.ts'
import { howMany } from '../../../shared-core/plan/how-many.ts'
import type { Worth } from '../../../shared-core/plan/worth.ts'
import { chancesOf, NOBODY, profitOfTwo } from './brute.ts'

function worth(parts: Partial<Worth> = {}): Worth {
  return { uses: [{ part: 1, worthCents: 200 }], costCents: 50, dayOldCents: 40, isAssumed: false, ...parts }
}

function asked(parts: Partial<Asked> = {}): Asked {
  return {
    demand: negativeBinomial(30, 8),
    stock: [{ pieces: 0, chance: 1 }],
    later: null,
    worth: worth(),
    unit: 1,
    besides: 0,
    ...parts,
  }
}

function amount(one: Asked, dayOldSells = 0) {
  const found = howMany(new Map([['one', one]]), dayOldSells).get('one')
  if (found === undefined) throw new Error('no amount')
  return found
}

/** The most that any number of pieces earns, tried one by one. */
function bestByTrying(
  one: Asked,
  dayOldSells: number,
): { readonly most: number; readonly earns: (n: number) => number } {
  const demand = chancesOf(one.demand, 900)
  const earns = (pieces: number) => profitOfTwo({ demand, worth: one.worth, pieces }, NOBODY, dayOldSells)
  return { most: Math.max(...Array.from({ length: 200 }, (_, n) => earns(n))), earns }
}

describe('how many of one variety', () => {
  it('[Q42, Q43] given any demand, prices and day-old sales, when tried one by one, then no number earns more', () => {
    const money = fc.record({
      price: fc.integer({ min: 60, max: 300 }),
      cost: fc.integer({ min: 10, max: 55 }),
      dayOld: fc.integer({ min: 0, max: 55 }),
      sells: fc.integer({ min: 0, max: 12 }),
      mean: fc.double({ min: 0.2, max: 40, noNaN: true }),
      k: fc.double({ min: 1, max: 60, noNaN: true }),
    })
    fc.assert(
      fc.property(money, ({ price, cost, dayOld, sells, mean, k }) => {
        const one = asked({
          demand: negativeBinomial(mean, k),
          worth: worth({ uses: [{ part: 1, worthCents: price }], costCents: cost, dayOldCents: dayOld }),
        })
        const { most, earns } = bestByTrying(one, sells)
        const { pieces } = amount(one, sells)
        expect(earns(pieces)).toBeGreaterThan(most - 1e-6)
      }),
      { numRuns: 25 },
    )
  })

  it('[Q43] given day-old pieces that bring more than they cost, when few sell, then no more are made than sell', () => {
    const one = asked({ worth: worth({ dayOldCents: 60 }) })
    const few = amount(one, 6)
    const many = amount(one, 24)
    expect(amount(one, 0).pieces).toBeLessThan(few.pieces)
    expect(few.pieces).toBeLessThan(many.pieces)
    const { most, earns } = bestByTrying(one, 24)
    expect(earns(many.pieces)).toBeGreaterThan(most - 1e-6)
  })

  it('[Q43] given two varieties that share the day-old sales, when every pair is tried, then nearly nothing is gained', () => {
    const pair = [
      asked({ demand: negativeBinomial(14, 6), worth: worth({ dayOldCents: 45 }) }),
      asked({
        demand: negativeBinomial(9, 3),
        worth: worth({ uses: [{ part: 1, worthCents: 150 }], dayOldCents: 45 }),
      }),
    ] as const
    const [first, second] = pair.map(({ demand }) => chancesOf(demand, 90))
    const earns = (a: number, b: number) =>
      profitOfTwo(
        { demand: first ?? [], worth: pair[0].worth, pieces: a },
        { demand: second ?? [], worth: pair[1].worth, pieces: b },
        8,
      )
    let most = 0
    for (let a = 10; a < 35; a += 1) for (let b = 5; b < 30; b += 1) most = Math.max(most, earns(a, b))
    const both = howMany(new Map(pair.entries()), 8)
    const own = earns(both.get(0)?.pieces ?? 0, both.get(1)?.pieces ?? 0)
    expect(own).toBeGreaterThan(most * 0.9999)
    // Each for itself, as if the other left nothing, too many are made.
    const alone = earns(amount(pair[0], 8).pieces, amount(pair[1], 8).pieces)
    expect(alone).toBeLessThan(own)
  })

  it('[Q44] given a kitchen that makes three times as much of a piece, when tried, then no number earns more', () => {
    const uses = [
      { part: 0.25, worthCents: 450 },
      { part: 0.75, worthCents: 90 },
    ]
    const one = asked({ demand: negativeBinomial(40, 10), worth: worth({ uses }) })
    const { most, earns } = bestByTrying(one, 0)
    const { pieces } = amount(one)
    // The last piece serves parts of a demand where the uses meet: within a cent.
    expect(earns(pieces)).toBeGreaterThan(most - 1)
    const mean = amount(
      asked({ demand: negativeBinomial(40, 10), worth: worth({ uses: [{ part: 1, worthCents: 180 }] }) }),
    )
    // As the loose ones go without first, the dear ones hardly count at the margin.
    expect(pieces).toBeLessThan(mean.pieces)
    expect(pieces).toBeGreaterThan(amount(asked({ demand: negativeBinomial(10, 10), worth: worth() })).pieces)
  })

  it('[Q42] given pieces that cost more than they bring, when it is decided, then none', () => {
    expect(amount(asked({ worth: worth({ uses: [{ part: 1, worthCents: 50 }] }) }), 24).pieces).toBe(0)
  })

  it('[Q42] given what is there already, when it is decided, then so many fewer', () => {
    const all = amount(asked()).pieces
    expect(amount(asked({ stock: [{ pieces: 12, chance: 1 }] })).pieces).toBe(all - 12)
    const doubted = amount(
      asked({
        stock: [
          { pieces: 4, chance: 0.5 },
          { pieces: 20, chance: 0.5 },
        ],
      }),
    )
    expect(doubted.pieces).toBeGreaterThan(all - 12)
  })

  it('[Q47] given boards of 6, when rounded, then up or down by what earns more, and less than one board as it is', () => {
    const one = asked()
    const { earns } = bestByTrying(one, 0)
    const { pieces, exact } = amount({ ...one, unit: 6 })
    const [down, up] = [Math.floor(exact / 6) * 6, Math.ceil(exact / 6) * 6]
    expect(pieces).toBe(earns(up) > earns(down) ? up : down)
    expect(amount({ ...one, demand: negativeBinomial(2, 5), unit: 6 }).pieces).toBe(
      amount({ ...one, demand: negativeBinomial(2, 5) }).pieces,
    )
    const ordered = amount({ ...one, unit: 6, besides: 7 })
    expect((ordered.pieces + 7) % 6).toBe(0)
    expect(ordered.pieces).toBeGreaterThanOrEqual(0)
  })

  it('[Q47] given dough for fewer, when it is decided, then the pieces that earn least are left out', () => {
    const two = new Map([
      ['dear', asked({ worth: worth({ uses: [{ part: 1, worthCents: 400 }] }) })],
      ['cheap', asked({ worth: worth({ uses: [{ part: 1, worthCents: 120 }] }) })],
    ])
    const free = howMany(two, 0)
    const short = howMany(two, 0, [{ ids: ['dear', 'cheap'], pieces: 50 }])
    const pieces = (id: string, of: typeof free) => of.get(id)?.pieces ?? 0
    expect(pieces('dear', short) + pieces('cheap', short)).toBe(50)
    expect(pieces('dear', free) - pieces('dear', short)).toBeLessThan(pieces('cheap', free) - pieces('cheap', short))
    const none = howMany(two, 0, [{ ids: ['dear', 'cheap'], pieces: 0 }])
    expect([...none.values()].map((one) => one.pieces)).toEqual([0, 0])
  })

  it('[Q42] given varieties in another order, when it is decided, then nothing changes', () => {
    const three = [
      ['a', asked()],
      ['b', asked({ demand: negativeBinomial(12, 2) })],
      ['c', asked({ demand: negativeBinomial(55, 30), unit: 6 })],
    ] as const
    const there = howMany(new Map(three), 24)
    const back = howMany(new Map([...three].reverse()), 24)
    for (const [id] of three) expect(back.get(id)?.pieces).toBe(there.get(id)?.pieces)
  })
})
