import { describe, expect, it } from 'vitest'
import type { JournalDay, JournalItem } from '../../../shared-core/demand/journal-day.ts'
import { mergedDay } from '../../../shared-core/demand/merge-days.ts'
import type { ItemDay, Purchase, SalesDay } from '../../../shared-core/demand/sales-day.ts'

const at = (...some: readonly (readonly [minute: number, pieces: number])[]): readonly Purchase[] =>
  some.map(([minute, pieces]) => ({ minute, pieces }))
const item = (parts: Partial<JournalItem>): JournalItem => ({
  ...{ id: 'sesame', sold: [], allotted: [], kitchen: [], unseen: 0, gone: [] },
  ...{ baked: 0, left: 0, wasted: 0, given: 0, ordered: null },
  ...parts,
})
const journal = (items: readonly JournalItem[], isClosed = true): JournalDay => ({
  ...{ date: '2026-11-24', openMinute: 360, closeMinute: 900, isClosed, items, wanted: [] },
})
const till = (items: Readonly<Record<string, readonly Purchase[]>>): SalesDay => ({
  ...{ date: '2026-11-24', openMinute: 420, closeMinute: 840, specials: ['snow'] },
  items: new Map(
    Object.entries(items).map(([id, sold]): [string, ItemDay] => [id, { sold, unseen: 0, gone: [], offered: true }]),
  ),
})
const sesame = (day: SalesDay) => day.items.get('sesame')

describe('a day from till and journal', () => {
  it('[Q70] given both, when merged, then purchases are the till’s, the total is the journal’s, and nothing counts twice', () => {
    const known = journal([item({ sold: at([400, 1]), kitchen: at([500, 2]), unseen: 20, baked: 24, left: 1 })])
    const day = mergedDay(till({ sesame: at([390, 6], [410, 12]) }), known)
    // 1 + 2 + 20 went by the account, 18 of them over the till.
    expect(sesame(day)).toEqual({ sold: at([390, 6], [410, 12]), unseen: 5, gone: [], offered: true })
    expect(day).toMatchObject({ openMinute: 360, closeMinute: 900, specials: ['snow'] })
  })

  it('[Q70] given a till with fewer purchases than taps, when merged, then the taps say when', () => {
    const known = journal([item({ sold: at([400, 8], [450, 8]), unseen: 4 })])
    expect(sesame(mergedDay(till({ sesame: at([390, 6]) }), known))).toMatchObject({
      sold: at([400, 8], [450, 8]),
      unseen: 4,
    })
  })

  it('[Q70] given a till that sold more than was counted, when merged, then what is unseen is negative', () => {
    const known = journal([item({ unseen: 10 })])
    expect(sesame(mergedDay(till({ sesame: at([390, 12]) }), known))).toMatchObject({ unseen: -2 })
  })

  it('[Q70] given a board that nobody kept that day, when merged, then the till’s day stands alone', () => {
    const day = till({ sesame: at([390, 40]) })
    expect(mergedDay(day, journal([item({ sold: at([400, 3]), gone: [{ fromMinute: 360, toMinute: 900 }] })]))).toBe(
      day,
    )
  })

  it('[Q70] given a day that is open, when merged, then nothing that nobody has counted yet is missing', () => {
    const known = journal([item({ sold: at([400, 3]), unseen: 2 })], false)
    expect(sesame(mergedDay(till({ sesame: at([390, 8]) }), known))).toMatchObject({ sold: at([390, 8]), unseen: 0 })
  })

  it('[Q70] given a sale of the till while the board had none, when merged, then it was there until then', () => {
    const gone = [
      { fromMinute: 400, toMinute: 450 },
      { fromMinute: 600, toMinute: 900 },
    ]
    const known = journal([item({ unseen: 20, gone })])
    const day = mergedDay(till({ sesame: at([390, 6], [603, 1], [610, 1]) }), known)
    expect(sesame(day)?.gone).toEqual([
      { fromMinute: 400, toMinute: 450 },
      { fromMinute: 610, toMinute: 900 },
    ])
  })

  it('[Q70] given a variety of the menu that the journal’s day has not, when merged, then it was not offered, unless the till sold it', () => {
    const day = mergedDay(till({ poppy: at([390, 6]) }), journal([item({ sold: at([400, 9]) })]), [
      'poppy',
      'rye',
      'sesame',
    ])
    expect([...day.items].map(([id, { offered }]) => [id, offered]).sort()).toEqual([
      ['poppy', true],
      ['rye', false],
      ['sesame', true],
    ])
  })

  it('[Q70] given one of the two alone, when merged, then it is that one; none is our bug', () => {
    const day = till({ sesame: at([390, 6]) })
    expect(mergedDay(day, null)).toBe(day)
    expect(sesame(mergedDay(null, journal([item({ sold: at([400, 3]), allotted: at([390, 2]) })])))).toMatchObject({
      sold: at([390, 2], [400, 3]),
    })
    expect(() => mergedDay(null, null)).toThrow('a till’s day or a journal’s')
  })
})
