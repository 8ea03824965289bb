import { describe, expect, it } from 'vitest'
import type { BakeLoad, BakeOff, OrderGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { violationsOf } from './feasible.ts'
import { loadReadyAt, madeShop, madeVariety, orderOf } from './made-shop.ts'
import { scorePlan, scorePlans } from './score.ts'

/** Price 2, cost 0.5, salvage 0.1, lost sale 0.6 (a missing piece: 2 + 1.2), a piece that waits 0.001 a minute. */
const scored = (orders: readonly OrderGiven[], loads: readonly BakeLoad[], own: Partial<BakeOff> = {}) =>
  scorePlan(madeShop({ orders, ...own }), { loads }, { days: 3 })

describe('the score of a day without walk-ins, worked by hand', () => {
  it.each([
    ['nothing at all', [], [], 0],
    ['12 baked for nobody', [], [loadReadyAt(400, 12)], 12 * (0.1 - 0.5)],
    ['10 of 12 go to an order 80 min later', [orderOf(480, 10)], [loadReadyAt(400, 12)], 20 - 6 + 0.2 - 0.8],
    ['the order lacks 8', [orderOf(480, 20)], [loadReadyAt(400, 12)], 24 - 6 - 8 * 3.2 - 12 * 0.08],
    ['nothing is there for the order', [orderOf(480, 20)], [], -20 * 3.2],
    ['ready and due in the same minute', [orderOf(400, 12)], [loadReadyAt(400, 12)], 24 - 6],
    ['ready a minute too late', [orderOf(399, 12)], [loadReadyAt(400, 12)], 12 * (0.1 - 0.5 - 3.2)],
    [
      'the one due first is served, the other lacks 6',
      [orderOf(500, 12), orderOf(450, 12)],
      [loadReadyAt(400, 18)],
      36 - 9 - 6 * 3.2 - (12 * 50 + 6 * 100) / 1_000,
    ],
    [
      'the oldest go first: 6 at 60 and 6 at 10 min, 6 are left',
      [orderOf(460, 12)],
      [loadReadyAt(450, 12), loadReadyAt(400, 6)],
      24 - 9 + 0.6 - (6 * 60 + 6 * 10) / 1_000,
    ],
  ] as const)('%s', (_what, orders, loads, profit) => {
    expect(scored(orders, loads).profit).toBeCloseTo(profit, 9)
  })

  it('pieces on the shelf and in running loads are paid for, and their salvage counts', () => {
    const own = { now: 420, varieties: [madeVariety({ onShelf: 6 })], running: [loadReadyAt(430, 12)] }
    expect(scored([], [], own).profit).toBeCloseTo(18 * 0.1, 9)
    // The six on the shelf count as ready since 420.
    expect(scored([orderOf(440, 6)], [], own).profit).toBeCloseTo(12 + 1.2 - 6 * 0.02, 9)
  })
})

describe('the score with walk-ins', () => {
  const days = { days: 20_000, seed: 5 }

  it('agrees with sums over the negative binomial for one batch at the opening', () => {
    const [mean, k, pieces] = [40, 5, 48]
    const shop = madeShop({ varieties: [madeVariety({ mean, dispersion: k, stalePerHour: 0 })] })
    let [sold, chance, by] = [0, (k / (k + mean)) ** k, 0]
    for (let n = 0; n < pieces; n++) {
      by += chance
      sold += 1 - by
      chance *= ((k + n) / (n + 1)) * (mean / (k + mean))
    }
    const expected = 2 * sold - 0.5 * pieces + 0.1 * (pieces - sold) - 0.6 * (mean - sold)
    const score = scorePlan(shop, { loads: [loadReadyAt(360, pieces)] }, days)
    // Four standard errors: wrong once in 16,000 seeds, and the seed is fixed.
    expect(Math.abs(score.profit - expected)).toBeLessThan(4 * score.standardError)
    expect(score.lost + sold).toBeCloseTo(mean, 0)
    expect(score.left).toBeCloseTo(pieces - sold, 0)
  })

  it('a piece waits for its customer: half the day on average when there is plenty', () => {
    const varieties = [madeVariety({ mean: 30, dispersion: 1e6 })]
    const score = scorePlan(madeShop({ varieties }), { loads: [loadReadyAt(360, 72)] }, days)
    // Spread of one wait 156 min, over 600,000 pieces.
    expect(score.age).toBeCloseTo(270, 0)
    expect(score.lost).toBe(0)
  })

  it('holds for an order from two hours before it is due, and before that walk-ins take everything', () => {
    const varieties = [madeVariety({ mean: 100_000, dispersion: 1e6 })]
    const loads = [loadReadyAt(360, 12)]
    const held = scorePlan(madeShop({ varieties, orders: [orderOf(479, 12)] }), { loads }, { days: 4 })
    expect(held.missing).toBe(0)
    const late = scorePlan(madeShop({ varieties, orders: [orderOf(490, 12)] }), { loads }, { days: 4 })
    expect(late.missing).toBe(12)
    expect(held.lost - late.lost).toBe(12)
  })

  it('counts only customers after now, of a day whose mean is given whole', () => {
    const shop = madeShop({ now: 765, varieties: [madeVariety({ mean: 80 })] })
    expect(scorePlan(shop, { loads: [] }, days).lost).toBeCloseTo(20, 0)
  })

  it('meets the same customers with every plan', () => {
    const shop = madeShop({ varieties: [madeVariety({ mean: 50 })] })
    const plans = [{ loads: [] }, { loads: [loadReadyAt(400, 6)] }]
    const [none, six] = scorePlans(shop, plans, { days: 50, seed: 3 })
    // On every one of these days there are more than six customers left after 400.
    expect((none?.lost ?? 0) - (six?.lost ?? 0)).toBe(6)
    expect(scorePlans(shop, plans, { days: 50, seed: 3 })).toEqual([none, six])
  })
})

describe('what a plan breaks', () => {
  const first = loadReadyAt(400, 36)
  const next = loadReadyAt(417, 36)
  const twoShelves = { ...madeShop().oven, shelves: ['1', '2'].map((name) => ({ name, pieces: 72 })) }

  it('nothing, when everything just fits', () => {
    expect(violationsOf(madeShop(), { loads: [next, first] })).toEqual([])
    // The first dip's pieces wait 8 minutes.
    expect(violationsOf(madeShop(), { loads: [{ ...first, kettleStart: first.in - 9.5 }] })).toEqual([])
    expect(violationsOf(madeShop(), { loads: [] })).toEqual([])
  })

  it.each<[string, Partial<BakeOff>, BakeLoad[]]>([
    ['form', {}, [{ ...first, shelf: '9' }]],
    ['form', {}, [{ ...first, lines: [['Rye', 6]] }]],
    ['form', {}, [{ ...first, lines: [['Plain', 7]] }]],
    ['form', {}, [{ ...first, lines: [['Plain', 0]] }]],
    ['form', {}, [{ ...first, lines: [] }]],
    ['form', {}, [{ ...first, in: Number.NaN }]],
    ['1', { kettle: { pieces: 90, cycleMin: 1.5 } }, [loadReadyAt(400, 78)]],
    ['1', {}, [{ ...first, out: first.out + 1 }]],
    ['1', {}, [{ ...first, flip: first.flip - 0.5 }]],
    ['2', {}, [{ ...first, kettleStart: first.kettleStart + 0.5 }]],
    ['2', {}, [{ ...first, kettleStart: first.in - 9.6 }]],
    ['2', { oven: twoShelves }, [first, { ...first, shelf: '2' }]],
    ['3', { boards: { count: 5, pieces: 6, maxWaitMin: 8 } }, [first]],
    ['4', {}, [first, loadReadyAt(416.5, 36)]],
    ['5', { oven: { ...madeShop().oven, readyMin: 370 } }, [first]],
    ['5', { oven: { ...madeShop().oven, mustBeEmptyMin: 384 } }, [first]],
    ['6', { doughs: { plain: { pieces: 66 } } }, [first, next]],
    ['now', { now: 368 }, [first]],
    ['4', { now: 366, running: [first] }, [loadReadyAt(416.5, 36)]],
    ['2', { now: 366, running: [first], oven: twoShelves }, [{ ...loadReadyAt(400.5, 36), shelf: '2' }]],
  ])('rule %s, and no other', (rule, own, loads) => {
    const found = violationsOf(madeShop(own), { loads })
    expect(found.map((sentence) => sentence.split(':')[0])).toEqual([rule])
  })

  it('a board is free again at the flip, and not a moment before', () => {
    const boards = { count: 6, pieces: 6, maxWaitMin: 8 }
    const own = { boards, oven: twoShelves }
    // The only dip of the second ends as it goes in: 3.5 min after the first one did, where that is turned.
    const second = { ...loadReadyAt(403.5, 36), shelf: '2' }
    const early = { ...loadReadyAt(403.49, 36), shelf: '2' }
    expect(violationsOf(madeShop(own), { loads: [first, second] })).toEqual([])
    expect(violationsOf(madeShop(own), { loads: [first, early] })).toEqual([expect.stringMatching(/^3: 12 boards/)])
  })

  it('bakes that differ by more than the tolerance, and a variety twice', () => {
    const varieties = [madeVariety(), madeVariety({ name: 'Rye', bakeMin: 19 })]
    const mixed: BakeLoad = {
      ...first,
      out: first.in + 19,
      lines: [
        ['Plain', 6],
        ['Rye', 6],
      ],
    }
    expect(violationsOf(madeShop({ varieties }), { loads: [mixed] })).toEqual([expect.stringMatching(/^1: bakes/)])
    expect(violationsOf(madeShop({ varieties, bakeToleranceMin: 3 }), { loads: [mixed] })).toEqual([])
    const twice: BakeLoad = { ...first, lines: [...first.lines, ['Plain', 6]] }
    expect(violationsOf(madeShop(), { loads: [twice] })).toEqual([expect.stringMatching(/^form: .*twice/)])
  })
})
