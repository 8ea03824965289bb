import { describe, expect, it } from 'vitest'
import type { Profile, RestDemand } from '../../../shared-core/demand/demand.ts'
import { negativeBinomial } from '../../../shared-core/demand/pieces.ts'
import type { Today, TodayItem } from '../../../shared-core/demand/today.ts'
import { doughId, varietyId } from '../../../shared-core/ids.ts'
import { afternoon } from '../../../shared-core/plan/afternoon.ts'
import { shopWith, table, variety } from '../support/shop.ts'
import { chancesOf } from './brute.ts'

/** Now 9:00, last load in at 10:40 and ready at 11:11, changeover 11:00, close 15:00. */
const NOW = 540
const CHANGEOVER = 660
const CLOSE = 900
const PROFILE: Profile = [
  [NOW, 0],
  [CHANGEOVER, 0.5],
  [CLOSE, 1],
]
const SESAME = varietyId('sesame')
const NO_KITCHEN = new Map()

function item(parts: Partial<TodayItem> = {}): TodayItem {
  return { id: 'sesame', sold: [], unseen: 0, gone: [], stock: { mean: 30, doubt: 0 }, more: [], kept: 0, ...parts }
}

function today(parts: Partial<Today> = {}, ...items: TodayItem[]): Today {
  return {
    date: '2026-11-24',
    openMinute: 360,
    closeMinute: CLOSE,
    nowMinute: NOW,
    changeoverMinute: CHANGEOVER,
    lastLoadInMinute: 640,
    bakingIsOver: false,
    chilled: null,
    items: items.length === 0 ? [item()] : items,
    ...parts,
  }
}

function rest(mean: number, dispersion = 12): RestDemand {
  return { mean, dispersion, profile: PROFILE, soFar: 20, expected: 20 }
}

/** Boards of one piece, so that nothing is rounded. */
const SHOP = shopWith({
  boards: { ...shopWith().boards, pieces: 1 },
  varieties: table([
    variety({ id: 'sesame', order: 1, priceCents: 200, costCents: 50 }),
    variety({ id: 'poppy', order: 2, priceCents: 120, costCents: 50 }),
  ]),
  demand: { region: null, disappointCents: 50, takeAnotherPercent: 0, dayOldSells: 0 },
})

function of(one: Today, demand = rest(40)) {
  const found = afternoon(SHOP, one, new Map([['sesame', demand]]), NO_KITCHEN).get(SESAME)
  if (found === undefined) throw new Error('no afternoon')
  return found
}

/** Customers before and after a part of the demand, one by one: a gamma rate splits a number of them by chance. */
function splits(demand: RestDemand, early: number): { a: number; b: number; chance: number }[] {
  return chancesOf(negativeBinomial(demand.mean, demand.dispersion), 160).flatMap((chance, all) => {
    let binomial = (1 - early) ** all
    return Array.from({ length: all + 1 }, (_, a) => {
      const one = { a, b: all - a, chance: chance * binomial }
      binomial *= ((all - a) / (a + 1)) * (early / (1 - early))
      return one
    })
  })
}

describe('what remains for the afternoon', () => {
  it('[Q54, Q55] given 30 there and 40 more asked for, when every split is gone through, then the same chances', () => {
    const found = of(today())
    const all = splits(rest(40), 0.5)
    const upTo = (n: number) => all.reduce((sum, { a, chance }) => (Math.max(0, 30 - a) <= n ? sum + chance : sum), 0)
    for (const [part, left] of [
      [0.1, found.left.q10],
      [0.5, found.left.q50],
      [0.9, found.left.q90],
    ] as const) {
      expect(upTo(left)).toBeGreaterThanOrEqual(part - 1e-9)
      expect(upTo(left - 1)).toBeLessThan(part)
    }
    expect(found.lasts).toBeCloseTo(
      all.reduce((sum, { a, b, chance }) => (a + b <= 30 ? sum + chance : sum), 0),
      9,
    )
  })

  it('[Q54] given a doubtful count, when what is left is asked, then the range is wider and its middle within a piece', () => {
    const sure = of(today()).left
    const doubted = of(today({}, item({ stock: { mean: 30, doubt: 6 } }))).left
    expect(Math.abs(doubted.q50 - sure.q50)).toBeLessThanOrEqual(1)
    expect(doubted.q90 - doubted.q10).toBeGreaterThan(sure.q90 - sure.q10)
  })

  it('[Q54] given a gap before more comes, when what is left is asked, then what was asked for in it takes none', () => {
    // None there now; 24 come a minute before the changeover.
    const found = of(today({}, item({ stock: { mean: 0, doubt: 0 }, more: [{ minute: 659, pieces: 24 }] })))
    expect(found.left.q50).toBe(24)
  })

  it('[Q55] given more on the way, when it is asked whether it lasts, then more surely', () => {
    const alone = of(today()).lasts
    expect(of(today({}, item({ more: [{ minute: 600, pieces: 20 }] }))).lasts).toBeGreaterThan(alone + 0.2)
  })

  it.each([
    [30, 40],
    [5, 60],
    [0, 25],
    [60, 60],
  ])(
    '[Q56] given %d there and %d asked for, when every number more is tried, then hardly any earns more',
    (there, mean) => {
      const demand = rest(mean)
      const found = of(today({}, item({ stock: { mean: there, doubt: 0 } })), demand)
      // Ready at 11:11: 16 minutes of bake and 15 of cooling after 10:40.
      const all = splits(demand, 0.5 + 0.5 * ((671 - CHANGEOVER) / (CLOSE - CHANGEOVER)))
      const earns = (more: number) =>
        all.reduce(
          (sum, { a, b, chance }) => sum + chance * 250 * Math.min(more, Math.max(0, b - Math.max(0, there - a))),
          0,
        ) -
        50 * more
      const most = Math.max(...Array.from({ length: 90 }, (_, n) => earns(n)))
      // Whether the morning runs out and how the afternoon goes are taken for one: it costs less than a piece.
      expect(earns(found.more)).toBeGreaterThan(most - 50)
      expect(found.more === 0).toBe(most === 0)
      expect(found.why.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(found.more)
    },
  )

  it('[Q56] given chilled dough for ten, when both varieties want more, then ten, most of the dearer one', () => {
    const both = today(
      { chilled: new Map([[doughId('plain'), 10]]) },
      item({ stock: { mean: 0, doubt: 0 } }),
      item({ id: 'poppy', stock: { mean: 0, doubt: 0 } }),
    )
    const rests = new Map([
      ['sesame', rest(20)],
      ['poppy', rest(20)],
    ])
    const found = afternoon(SHOP, both, rests, NO_KITCHEN)
    const [sesame, poppy] = [found.get(SESAME), found.get(varietyId('poppy'))]
    expect((sesame?.more ?? 0) + (poppy?.more ?? 0)).toBe(10)
    expect(sesame?.more ?? 0).toBeGreaterThan(poppy?.more ?? 0)
    expect(sesame?.why.at(-1)?.code).toBe('dough')
  })

  it('[Q56] given that the last load is in, when more is asked, then none; after the changeover nothing is said', () => {
    expect(of(today({ lastLoadInMinute: 530 })).more).toBe(0)
    expect(of(today({ bakingIsOver: true })).more).toBe(0)
    expect(afternoon(SHOP, today({ nowMinute: CHANGEOVER }), new Map([['sesame', rest(40)]]), NO_KITCHEN).size).toBe(0)
    expect(afternoon(SHOP, today({ changeoverMinute: null }), new Map([['sesame', rest(40)]]), NO_KITCHEN).size).toBe(0)
  })
})
