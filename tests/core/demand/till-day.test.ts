import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { JournalDay } from '../../../shared-core/demand/journal-day.ts'
import type { NamedSale, SpreadBy, TillDay, UnnamedSale } from '../../../shared-core/demand/till-day.ts'
import { spreadDay } from '../../../shared-core/demand/till-day.ts'
import '../../fixed-seed.ts'

const MENU = ['plain', 'poppy', 'sesame']
const by = (parts: Partial<SpreadBy> = {}): SpreadBy => ({
  ...{ menu: MENU, named: [], recent: new Map(), journal: null },
  ...parts,
})
const day = (parts: Partial<TillDay>): TillDay => ({
  ...{ date: '2026-11-24', openMinute: 360, closeMinute: 900, named: [], unnamed: [], back: new Map() },
  ...parts,
})
const named = (varietyId: string, minute: number | null, pieces: number): NamedSale => ({ varietyId, minute, pieces })
const unnamed = (minute: number | null, pieces: number, among: readonly string[] | null = null): UnnamedSale => ({
  ...{ minute, pieces, among },
})
/** Pieces by variety. */
function totals(till: TillDay, spread = by()): Record<string, number> {
  const all = [...spreadDay(till, spread).items].map(([id, { sold, unseen }]): [string, number] => {
    return [id, sold.reduce((sum, { pieces }) => sum + pieces, unseen)]
  })
  return Object.fromEntries(all)
}

describe('pieces of which a till does not say the variety', () => {
  it('[Q69] given nothing known, when spread, then each variety gets as much', () => {
    expect(totals(day({ unnamed: [unnamed(400, 12)] }))).toEqual({ plain: 4, poppy: 4, sesame: 4 })
  })

  it('[Q69] given no shares yet, when spread, then only what the till has names for gets of it, as much each', () => {
    const till = day({ unnamed: [unnamed(400, 12)] })
    expect(totals(till, by({ named: ['plain', 'sesame'] }))).toEqual({ plain: 6, sesame: 6 })
    // What was sold in the weeks before says more.
    expect(totals(till, by({ named: ['plain', 'sesame'], recent: new Map([['poppy', 9]]) }))).toEqual({ poppy: 12 })
  })

  it('[Q69] given named sales, when spread, then by their shares, drawn towards the weeks before', () => {
    const till = day({ named: [named('sesame', 400, 60), named('plain', 410, 60)], unnamed: [unnamed(700, 36)] })
    // (60 + 24 / 3) / 144 of 36 is 17, and 24 / 3 / 144 of 36 is 2.
    expect(totals(till)).toEqual({ plain: 77, poppy: 2, sesame: 77 })
    expect(totals(till, by({ recent: new Map([['plain', 500]]) }))).toEqual({ plain: 81, sesame: 75 })
  })

  it('[Q69] given an hour that sold otherwise than the day, when spread, then as the hour did', () => {
    const till = day({
      named: [named('sesame', 400, 96), named('plain', 640, 96)],
      unnamed: [unnamed(410, 10), unnamed(650, 10)],
    })
    const { items } = spreadDay(
      till,
      by({
        recent: new Map([
          ['sesame', 1],
          ['plain', 1],
        ]),
      }),
    )
    const got = (id: string, minute: number) => items.get(id)?.sold.find((one) => one.minute === minute)?.pieces ?? 0
    expect([got('sesame', 410), got('plain', 410)]).toEqual([9, 1])
    expect([got('sesame', 650), got('plain', 650)]).toEqual([1, 9])
  })

  it('[Q69] given some among which it is, when spread, then only these get of it', () => {
    expect(totals(day({ unnamed: [unnamed(400, 7, ['poppy'])] }))).toEqual({ poppy: 7 })
  })

  it('[Q69] given a day that the journal counted, when spread, then what it says beyond the named ones decides, and none goes to what was gone', () => {
    const counted = (id: string, unseen: number, gone: JournalDay['items'][number]['gone'] = []) => ({
      ...{
        id,
        unseen,
        gone,
        sold: [],
        allotted: [],
        kitchen: [],
        baked: 0,
        left: 0,
        wasted: 0,
        given: 0,
        ordered: null,
      },
    })
    const items = [
      counted('plain', 30),
      counted('poppy', 6),
      counted('sesame', 10, [{ fromMinute: 600, toMinute: 900 }]),
    ]
    const journal: JournalDay = {
      date: '2026-11-24',
      openMinute: 360,
      closeMinute: 900,
      isClosed: true,
      items,
      wanted: [],
    }
    const till = day({ named: [named('plain', 400, 10)], unnamed: [unnamed(500, 18), unnamed(700, 18)] })
    // 20 plain, 6 poppy and 10 sesame are left over; the second half of them after the last sesame.
    expect(totals(till, by({ journal }))).toEqual({ plain: 10 + 10 + 14, poppy: 3 + 4, sesame: 5 })
    expect(totals(till)).not.toEqual(totals(till, by({ journal })))
  })

  it('[Q69] given whatever day, when spread, then no piece is lost or made, all are whole, and the order of rows says nothing', () => {
    const minute = fc.option(fc.integer({ min: 360, max: 899 }))
    const pieces = fc.integer({ min: 1, max: 24 })
    const sale = fc.record({ varietyId: fc.constantFrom(...MENU), minute, pieces })
    const some = fc.record({ minute, pieces, among: fc.option(fc.subarray(MENU, { minLength: 1 })) })
    fc.assert(
      fc.property(fc.array(sale, { maxLength: 12 }), fc.array(some, { maxLength: 12 }), (sales, others) => {
        const spread = spreadDay(day({ named: sales, unnamed: others }), by())
        const counts = [...spread.items.values()].flatMap(({ sold, unseen }) => [
          unseen,
          ...sold.map((one) => one.pieces),
        ])
        const sum = (of: readonly { pieces: number }[]) => of.reduce((total, one) => total + one.pieces, 0)
        expect(counts.reduce((total, one) => total + one, 0)).toBe(sum(sales) + sum(others))
        expect(counts.every((count) => Number.isInteger(count))).toBe(true)
        const turned = spreadDay(day({ named: [...sales].reverse(), unnamed: others }), by())
        expect(turned).toEqual(spread)
      }),
      { numRuns: 60 },
    )
  })

  it('[Q67] given returns of which no sale is known, when spread, then they lower the variety’s day', () => {
    const till = day({
      named: [named('sesame', 400, 6)],
      back: new Map([
        ['sesame', 2],
        ['poppy', 1],
        [null, 1],
      ]),
    })
    expect(totals(till)).toEqual({ sesame: 3, poppy: -1 })
  })
})
