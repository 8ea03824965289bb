import { describe, expect, it } from 'vitest'
import { agreementOf, byDay, mean } from './figures.ts'
import type { Played, ShopKind } from './shop-days.ts'
import { playShop } from './shop-days.ts'

/** Days until counts have taught what can be learnt. */
const LEARNT_AFTER = 2
const SHOPS = 5
const DAYS = 6

/** `bias`: how far the mean may be off, in pieces a rod; `better`: at most this share of the books' own distance. */
const KINDS: readonly (readonly [string, Pick<ShopKind, 'tapped' | 'others'>, { bias: number; better: number }])[] = [
  // A shop that taps nothing learns the shape of its day from counts alone: some leak is still missed at noon.
  ['no sale is told', { tapped: 0, others: 'unseen' }, { bias: 2.5, better: 0.5 }],
  ['a quarter is tapped', { tapped: 0.25, others: 'unseen' }, { bias: 2.2, better: 0.55 }],
  ['half is tapped', { tapped: 0.5, others: 'unseen' }, { bias: 1.5, better: 0.6 }],
  ['nine in ten are tapped', { tapped: 0.9, others: 'unseen' }, { bias: 0.7, better: 1 }],
  ['all is tapped', { tapped: 1, others: 'unseen' }, { bias: 0.1, better: 1 }],
  ['no variety is said', { tapped: 0, others: 'unnamed' }, { bias: 1, better: 1.01 }],
  ['half is said, half without variety', { tapped: 0.5, others: 'unnamed' }, { bias: 0.8, better: 1.01 }],
]

describe.each(KINDS)('a simulated shop in which %s', (_name, kind, { bias, better }) => {
  const played: Played[] = []
  for (let seed = 1; seed <= SHOPS; seed += 1)
    played.push(playShop({ ...kind, seed: seed + 100, days: DAYS, sweeps: true }))
  const isLearnt = (day: number) => day >= LEARNT_AFTER
  const looks = byDay(played, 'between', isLearnt)
  const between = agreementOf(looks)
  const books = agreementOf(looks, (look) => look.books)

  it('[S6, S37] given sweeps in half-dozens, then a swept rod is right within three pieces, and not off to one side', () => {
    const swept = agreementOf(byDay(played, 'sweep', isLearnt))
    expect(swept.looks).toBeGreaterThan(100)
    expect(swept.within3).toBeGreaterThan(0.97)
    expect(Math.abs(swept.bias)).toBeLessThan(0.6)
  })

  it('[S37] given days after the second, then numbers are not off to one side, and nearer than the books', () => {
    expect(between.looks).toBeGreaterThan(5_000)
    expect(Math.abs(between.bias)).toBeLessThan(bias)
    expect(between.off).toBeLessThanOrEqual(better * books.off + 0.01)
  })

  it('[S30] given what a rod says of its doubt, then the truth lies in it at least about four times in five', () => {
    expect(between.covered).toBeGreaterThan(0.77)
  })

  it('[S31, S32] given the sweeps that it asks for, then they are few: five a day, of six rods', () => {
    const aDay = (of: (one: Played) => readonly number[]) => mean(played.flatMap((one) => of(one).slice(LEARNT_AFTER)))
    expect(aDay((one) => one.sweeps)).toBeLessThanOrEqual(6)
    expect(aDay((one) => one.sweptRods) / aDay((one) => one.sweeps)).toBeGreaterThan(2)
    expect(aDay((one) => one.sweptRods)).toBeLessThanOrEqual(36)
  })

  it('[S27] given any look, then what is likely is between none and the books', () => {
    for (const { likely, within, books: most } of looks.flat()) {
      expect(likely).toBeGreaterThanOrEqual(0)
      expect(likely).toBeLessThanOrEqual(most)
      expect(within).toBeGreaterThanOrEqual(0)
      expect(Number.isInteger(likely) && Number.isInteger(within)).toBe(true)
    }
  })
})

describe('the simulated shop itself', () => {
  it('[S28] given all sales tapped and no sweep, then the books are the truth, and what is likely is the books', () => {
    const { looks } = playShop({ seed: 3, days: 2, tapped: 1, others: 'unseen', sweeps: false })
    expect(looks.length).toBeGreaterThan(500)
    for (const look of looks) expect([look.likely, look.books]).toEqual([look.truth, look.truth])
  })

  it('[S28] given half tapped and nobody ever counts, then no leak is assumed: what is likely is the books', () => {
    const { looks } = playShop({ seed: 3, days: 2, tapped: 0.5, others: 'unseen', sweeps: false })
    for (const look of looks) expect(look.likely).toBe(look.books)
    expect(looks.some((look) => look.books > look.truth + 6)).toBe(true)
  })

  it('given the same seed, then the same shop', () => {
    const [one, other] = [1, 2].map(() => playShop({ seed: 9, days: 1, tapped: 0.5, others: 'unnamed', sweeps: true }))
    expect(one?.looks).toEqual(other?.looks)
  })
})
