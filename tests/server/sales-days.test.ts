import { describe, expect, it } from 'vitest'
import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import { TillBooks } from './support/till-books.ts'

const HEADER = 'Date,Time,Receipt,Item,Qty,Void'
const file = (...rows: readonly string[]) => `${HEADER}\n${rows.map((row) => `2026-11-24,${row}`).join('\n')}\n`
const sesame = varietyId('sesame')
const poppy = varietyId('poppy')

async function tillWith(text: string, meanings: Readonly<Record<string, Meaning>> = {}): Promise<TillBooks> {
  const till = await TillBooks.made()
  await till.take(text)
  till.books.mean(Object.entries(meanings).map(([name, meaning]) => ({ name, meaning })))
  return till
}
/** What was sold of a variety on the only day, by minute. */
const sold = (till: TillBooks, id = 'sesame') =>
  till
    .days()[0]
    ?.items.get(id)
    ?.sold.map(({ minute, pieces }) => [minute, pieces])

describe('days of a till', () => {
  it.each<[string, readonly string[], readonly (readonly number[])[], number]>([
    [
      'of the same purchase',
      ['7:05,1,Sesame,6,', '7:10,2,Sesame,6,', '7:30,1,Sesame,-2,'],
      [
        [425, 4],
        [430, 6],
      ],
      0,
    ],
    [
      'of none that is known',
      ['7:05,1,Sesame,6,', '7:10,2,Sesame,6,', '7:30,,Sesame,-2,'],
      [
        [425, 6],
        [430, 4],
      ],
      0,
    ],
    ['of more than was sold before', ['7:05,1,Sesame,1,', '7:30,,Sesame,-3,', '8:00,2,Sesame,6,'], [[480, 6]], -2],
    ['by a word in a column', ['7:05,1,Sesame,6,', '7:06,1,Sesame,2,Refunded'], [[425, 4]], 0],
    ['as a void', ['7:05,1,Sesame,6,', '7:06,2,Sesame,2,VOID'], [[425, 6]], 0],
  ])(
    '[Q67] given a return %s, when the day is made, then it lowers that sale, else the day',
    async (_what, rows, purchases, unseen) => {
      const till = await tillWith(file(...rows))
      expect(sold(till)).toEqual(purchases)
      expect(till.days()[0]?.items.get('sesame')?.unseen).toBe(unseen)
    },
  )

  it('[Q67] given a sale that a later file has as voided, when both are taken, then it is void', async () => {
    const till = await tillWith(file('7:05,1,Sesame,6,', '7:10,2,Sesame,1,'))
    await till.take(file('7:05,1,Sesame,6,void', '7:10,2,Sesame,1,'))
    expect(sold(till)).toEqual([[430, 1]])
  })

  it('[Q68] given what names mean, when the day is made, then packs, kitchen use and dozens are pieces, and coffee is none', async () => {
    const rows = [
      '7:05,1,Seed pack,2,',
      '7:06,2,BLT sesame,1,',
      '7:07,3,Coffee,4,',
      '7:08,4,Who knows,5,',
      '7:09,5,Twelve poppy,1,',
    ]
    const till = await tillWith(file(...rows), {
      'Seed pack': {
        kind: 'pack',
        lines: [
          { varietyId: sesame, pieces: 3 },
          { varietyId: poppy, pieces: 3 },
        ],
      },
      'BLT sesame': { kind: 'kitchen', varietyId: sesame, pieces: 1 },
      Coffee: { kind: 'nothing' },
      'Twelve poppy': { kind: 'variety', varietyId: poppy, pieces: 12 },
    })
    expect([sold(till), sold(till, 'poppy')]).toEqual([
      [
        [425, 6],
        [426, 1],
      ],
      [
        [425, 6],
        [429, 12],
      ],
    ])
    expect([...(till.days()[0]?.items.keys() ?? [])].filter((id) => !['sesame', 'poppy'].includes(id))).toEqual([])
    till.books.mean([{ name: 'Who knows', meaning: { kind: 'unnamed', pieces: 2, among: [poppy] } }])
    expect(sold(till, 'poppy')).toEqual([
      [425, 6],
      [428, 10],
      [429, 12],
    ])
    expect(till.books.tillNames()[0]).toMatchObject({ name: 'Who knows', rows: 1, sold: 5, lastDate: '2026-11-24' })
  })

  it('[Q69] given rows of one purchase, when the day is made, then what is alike in it was bought together', async () => {
    const till = await tillWith(
      file('7:05,1,Sesame,1,', '7:05,1,Sesame,2,', '7:05,2,Sesame,1,', '7:05,,Sesame,1,', '7:05,,Sesame,1,'),
    )
    expect(
      sold(till)
        ?.map(([, pieces]) => pieces)
        .sort(),
    ).toEqual([1, 1, 1, 3])
  })

  it('[Q69] given times of which a file says nothing, when the day is made, then pieces are there without a time', async () => {
    const till = await TillBooks.made()
    await till.take('Date,Item,Count\n11/24/2026,Sesame,12\n11/24/2026,Dozen,2\n')
    till.books.mean([{ name: 'Dozen', meaning: { kind: 'unnamed', pieces: 12, among: [sesame] } }])
    expect(till.days()[0]?.items.get('sesame')).toMatchObject({ sold: [], unseen: 36 })
  })

  it('[Q69] given dozens before any named sale, when days are made, then of what the till names, whichever file came first', async () => {
    const later = `${HEADER}\n2026-11-24,7:05,1,Dozen,1,\n2026-11-25,7:05,2,Sesame,9,\n2026-11-25,7:06,3,Poppy,1,\n`
    const before = `${HEADER}\n2026-10-01,7:05,4,Sesame,1,\n`
    const dozen = { Dozen: { kind: 'unnamed', pieces: 12, among: null } } as const
    const till = await tillWith(later, dozen)
    expect(till.days()[0]?.date).toBe('2026-11-24')
    expect([sold(till), sold(till, 'poppy'), sold(till, 'plain')]).toEqual([[[425, 6]], [[425, 6]], undefined])
    // More than four weeks before: no share of it counts, but from then on the till sells sesame.
    await till.take(before)
    const onDozens = till.days()[1]
    expect(onDozens?.items.get('sesame')?.sold).toEqual([{ minute: 425, pieces: 12 }])
    const other = await tillWith(before)
    await other.take(later)
    other.books.mean([{ name: 'Dozen', meaning: dozen.Dozen }])
    expect(other.plainDays()).toEqual(till.plainDays())
  })

  it('[Q69] given hours that the shop had once, when much was sold outside today’s, then the day was as long', async () => {
    const early = Array.from({ length: 20 }, (_, n) => `${n < 5 ? '5:20' : '7:05'},${n},Sesame,1,`)
    const [before] = (await tillWith(file(...early))).days()
    expect(before).toMatchObject({ openMinute: 315, closeMinute: 900 })
    const one = Array.from({ length: 80 }, (_, n) => `${n < 1 ? '3:20' : '7:05'},${n},Sesame,1,`)
    expect((await tillWith(file(...one))).days()[0]).toMatchObject({ openMinute: 360 })
  })

  it('[Q69] given a variety that the till began to sell later, then before it was not offered', async () => {
    const till = await TillBooks.made()
    await till.take(`${HEADER}\n2026-11-23,7:05,1,Sesame,1,\n2026-11-24,7:05,2,Sesame,1,\n2026-11-24,7:05,2,Poppy,1,\n`)
    expect(till.days().map(({ items }) => items.get('poppy')?.offered)).toEqual([false, true])
  })

  it('[Q69] given a journal that tells of the day anew, when asked again, then that day is made by it', async () => {
    const gone = {
      id: 'sesame',
      sold: [],
      allotted: [],
      kitchen: [],
      unseen: 0,
      gone: [{ fromMinute: 360, toMinute: 900 }],
    }
    const items = [{ ...gone, baked: 0, left: 0, wasted: 0, given: 0, ordered: null }]
    const known: JournalDay = {
      date: '2026-11-24',
      openMinute: 360,
      closeMinute: 900,
      isClosed: false,
      items,
      wanted: [],
    }
    let told: JournalDay | null = null
    const till = await TillBooks.made({ journalDay: () => told })
    await till.take(file('7:05,1,Half dozen,4,'))
    till.books.mean([{ name: 'Half dozen', meaning: { kind: 'unnamed', pieces: 6, among: [sesame, poppy] } }])
    expect(sold(till)).toEqual([[425, 12]])
    told = known
    expect([sold(till), sold(till, 'poppy')]).toEqual([undefined, [[425, 24]]])
  })
})
