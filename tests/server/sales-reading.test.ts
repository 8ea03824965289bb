import { describe, expect, it } from 'vitest'
import { guessDates } from '../../server/sales/guess-dates.ts'
import { LocalTimes } from '../../server/sales/local-times.ts'
import { MomentReader } from '../../server/sales/read-moment.ts'
import { numberOf, RowReader, standing } from '../../server/sales/read-row.ts'
import type { DateForm, Mapping } from '../../shared-core/live/sales-import.ts'
import { epochMs } from '../../shared-core/units.ts'
import { TillBooks } from './support/till-books.ts'

const CHICAGO = new LocalTimes('America/Chicago')
/** Days since 1970, by another way than the code's. */
const day = (date: string) => Math.round(new Date(`${date}T12:00:00Z`).getTime() / 86_400_000 - 0.5)
const clock = (hour: number, minute: number, second = 0) => hour * 3_600 + minute * 60 + second

describe('dates and times of a till', () => {
  it.each<[DateForm, string, string | null, string, number]>([
    ['y-m-d', '2026-11-24 08:05', null, '2026-11-24', clock(8, 5)],
    ['y-m-d', '2026-11-24T08:05:30.250', null, '2026-11-24', clock(8, 5, 30)],
    ['y-m-d', '20261124', '8:05', '2026-11-24', clock(8, 5)],
    ['m-d-y', '11/24/2026', '8:05 PM', '2026-11-24', clock(20, 5)],
    ['m-d-y', '1/2/26 12:07 am', null, '2026-01-01', clock(24, 7)],
    ['m-d-y', '11/24/2026 12:00pm', null, '2026-11-24', clock(12, 0)],
    ['d-m-y', '24.11.2026', '8.05', '2026-11-24', clock(8, 5)],
    ['d-m-y', '24/11/2026 8:05 a. m.', null, '2026-11-24', clock(8, 5)],
    ['d-m-y', '5 ene 2026', '13:45', '2026-01-05', clock(13, 45)],
    ['m-d-y', 'Tue, Nov 24, 2026', '8:05', '2026-11-24', clock(8, 5)],
    ['y-m-d', '2026-11-24', null, '2026-11-24', -1],
    // 8:05 in Chicago is 14:05 UTC in winter and 13:05 in summer.
    ['y-m-d', '2026-11-24T14:05:00Z', null, '2026-11-24', clock(8, 5)],
    ['y-m-d', '2026-07-24T13:05:00Z', null, '2026-07-24', clock(8, 5)],
    ['y-m-d', '2026-11-24T08:05:00-06:00', null, '2026-11-24', clock(8, 5)],
    ['epoch-s', '1795529100', null, '2026-11-24', clock(8, 5)],
    ['epoch-ms', '1795529100000', null, '2026-11-24', clock(8, 5)],
    // The bar's last bill: of the evening before.
    ['y-m-d', '2026-11-25 01:30', null, '2026-11-24', clock(25, 30)],
  ])('[Q62] given %s and "%s" at "%s", when read, then it is %s, second %s', (form, date, time, on, second) => {
    expect(new MomentReader(form, CHICAGO).read(date, time)).toEqual({ day: day(on), second })
  })

  it.each<[DateForm, string, string | null, string]>([
    ['m-d-y', '24/11/2026 8:05', null, 'no-date'],
    ['d-m-y', '31/11/2026', '8:05', 'no-date'],
    ['y-m-d', '1926-11-24', '8:05', 'no-date'],
    ['y-m-d', 'Total', '8:05', 'no-date'],
    ['y-m-d', '2026-11-24 25:05', null, 'no-time'],
    ['y-m-d', '2026-11-24', '', 'no-time'],
    ['y-m-d', '2026-11-24', '13:05 pm', 'no-time'],
    ['y-m-d', '2026-11-24', '805', 'no-time'],
  ])('[Q63] given %s and "%s" at "%s", when read, then it says %s', (form, date, time, fault) => {
    expect(new MomentReader(form, CHICAGO).read(date, time)).toBe(fault)
  })

  it('[Q62] given a reader, when days come in any order, then each is read as by itself', () => {
    const texts = ['1/2/2026', '1/22/2026', '1/2/2026', '11/2/2026', '1/2/2027']
    const one = new MomentReader('m-d-y', CHICAGO)
    for (const text of texts)
      expect(one.read(text, '8:05')).toEqual(new MomentReader('m-d-y', CHICAGO).read(text, '8:05'))
  })

  const hints = { today: day('2026-11-26'), isDayFirst: false }
  it.each<[string, readonly string[], DateForm, boolean]>([
    ['a day after the 12th', ['03/04/2026', '25/04/2026'], 'd-m-y', false],
    ['a month’s days in order', ['03/01/2026', '03/02/2026', '03/03/2026', '03/04/2026'], 'm-d-y', true],
    // By the other reading the rows would go back four times.
    [
      'five months’ first weeks',
      [1, 2, 3, 4, 5].flatMap((m) => [1, 5, 9].map((d) => `${d}/${m}/2026`)),
      'd-m-y',
      false,
    ],
    ['dates that would lie ahead', ['05/12/2026', '06/12/2026', '07/12/2026', '08/12/2026'], 'm-d-y', false],
    ['dots', ['03.04.2026', '03.05.2026'], 'd-m-y', true],
    ['both the same', ['05/05/2026'], 'm-d-y', false],
    ['year first', ['2026/03/04'], 'y-m-d', false],
  ])('[Q62] given %s, when guessed, then it is %s of %s, in doubt: %s', (_what, texts, form, isInDoubt) => {
    const guess = guessDates(texts, hints)
    expect([guess?.form, guess?.inDoubt !== null]).toEqual([form, isInDoubt])
  })

  it.each([
    ['3', '.', 3],
    ['-2', '.', -2],
    ['(2)', '.', -2],
    ['2-', '.', -2],
    ['+2', '.', 2],
    ['2.000', '.', 2],
    ['2,000', ',', 2],
    ['1.234', ',', 1234],
    ['1,234', '.', 1234],
    ['2 x', '.', 2],
    ['', '.', null],
    ['two', '.', null],
  ] as const)('[Q63] given "%s" with %s, when read as a number, then %s', (text, decimal, value) => {
    expect(numberOf(text, decimal)).toBe(value)
  })

  it('[Q63] given a file of the evening of the 24th, when a row is of the 25th, then it is told that no sale can be', () => {
    const mapping = { dateForm: 'y-m-d', decimal: '.', date: 0, item: 1, clock: null, detail: null, pieces: null }
    const rest = { transaction: null, line: null, voided: null, skip: 0, hasHeader: true, delimiter: ',', quote: '"' }
    const reader = new RowReader({ ...mapping, ...rest } as Mapping, CHICAGO, epochMs(Date.UTC(2026, 10, 25, 2)))
    expect(reader.read(['2026-11-24 19:59', 'Sesame']).row).toMatchObject({ day: day('2026-11-24') })
    expect(reader.read(['2026-11-26 02:00', 'Sesame']).fault).toMatchObject({
      code: 'to-come',
      params: { text: '2026-11-26 02:00', column: 1 },
    })
  })

  it.each([
    ['', 'sold'],
    ['Completed', 'sold'],
    ['no', 'sold'],
    ['0', 'sold'],
    ['Visa', 'sold'],
    ['VOID', 'voided'],
    ['Anulado', 'voided'],
    ['true', 'voided'],
    ['Refunded', 'returned'],
    ['Devolución', 'returned'],
  ] as const)('[Q67] given "%s" in a column of voids, then it is %s', (text, what) => {
    expect(standing(text)).toBe(what)
  })
})

/** What stands in the columns, by name. */
const named = ({ date, clock: time, item, pieces, transaction, dateForm, delimiter, decimal }: Mapping) => ({
  ...{ date, time, item, pieces, transaction, dateForm, delimiter, decimal },
})

const foreignRow = (n: number) => {
  const [ware, pieces] = [['Sesam', 'Mohn', 'Natur', 'Salz', 'Zwiebel', 'Zimt'][n % 6], 1 + (n % 3)]
  const state = n % 30 === 29 ? 'VOID' : 'OK'
  return `24.11.2026 8:${10 + (n % 50)};${4100 + n};${ware};${pieces},00;${1 + n * 2},${n % 2}0;${state}`
}

describe('how a file is laid out', () => {
  it.each<[string, string | Buffer, Partial<ReturnType<typeof named>>, string]>([
    [
      'commas, US dates, a price beside the number',
      'Date,Time,Time Zone,Category,Item,Qty,Price,Transaction ID\n11/24/2026,8:05:10 am,Central,Bagels,Sesame,2,$3.00,T1\n11/24/2026,8:06:00 am,Central,Bagels,Plain,1,$1.50,T2\n',
      { date: 0, time: 1, item: 4, pieces: 5, transaction: 7, dateForm: 'm-d-y', delimiter: ',' },
      'Sesame',
    ],
    [
      'semicolons, decimal commas, Spanish names in Windows-1252',
      Buffer.from(
        'Fecha;Hora;Ticket;Artículo;Cantidad;Importe\n24/11/2026;8:05;17;Jalapeño;2,00;3,00\n25/11/2026;8:05;18;Ajonjolí;1,00;1,50\n',
        'latin1',
      ),
      { date: 0, time: 1, transaction: 2, item: 3, pieces: 4, dateForm: 'd-m-y', delimiter: ';', decimal: ',' },
      'Jalapeño',
    ],
    [
      'semicolons, decimal commas, names of columns that nobody knows, and a state of each row',
      ['Tag;Bon;Ware;Stück;Betrag;Stand', ...Array.from({ length: 90 }, (_, n) => foreignRow(n))].join('\n'),
      { date: 0, item: 2, pieces: 3, dateForm: 'd-m-y', delimiter: ';', decimal: ',' },
      'Sesam',
    ],
    [
      'a mark at its beginning, tabs, quotation marks',
      '\ufeff"sold at"\t"order"\t"product name"\t"quantity"\r\n"2026-11-24T08:05:00"\t"9"\t"Sesame ""big"" bagel"\t"2"\r\n',
      { date: 0, transaction: 1, item: 2, pieces: 3, time: null, dateForm: 'y-m-d', delimiter: '\t' },
      'Sesame "big" bagel',
    ],
    [
      'no header',
      '2026-11-24,8:05,1041,Sesame,2\n2026-11-24,8:06,1042,Plain,1\n2026-11-24,8:07,1043,Sesame,1\n2026-11-25,8:07,1044,Sesame,1\n',
      { date: 0, time: 1, transaction: 2, item: 3, pieces: 4, dateForm: 'y-m-d' },
      'Sesame',
    ],
    [
      'a title above its table, UTF-16',
      Buffer.from('\ufeffSales by item\n\nDate,Item,Count\n11/24/2026,Sesame,12\n11/25/2026,Plain,9\n', 'utf16le'),
      { date: 0, time: null, item: 1, pieces: 2, transaction: null, dateForm: 'm-d-y' },
      'Sesame',
    ],
  ])(
    '[Q61] given %s, when put in, then its columns are found and its first row understood',
    async (_what, text, columns, item) => {
      const till = await TillBooks.made()
      const { mapping, rows, doubts } = await till.preview(text)
      expect(named(mapping)).toMatchObject(columns)
      expect(rows[0]?.read).toMatchObject({ date: '2026-11-24', item })
      expect(rows.map(({ fault }) => fault)).toEqual(rows.map(() => null))
      expect(doubts.map(({ code }) => code)).not.toContain('many-bad')
      expect((await till.take(text)).bad).toBe(0)
    },
  )

  it.each([
    ['11/24/2026', '11/24/2026'],
    ['24/11/2026', '24/11/2026'],
    ['2026-11-24', '2026-11-24'],
  ])(
    '[Q63] given dates as %s, when a row has none, then it says how the others write theirs',
    async (date, example) => {
      const till = await TillBooks.made()
      const { rows } = await till.preview(`Date,Item,Qty\n${`${date},Sesame,1\n`.repeat(4)}Total,Plain,1\n`)
      expect(rows[4]?.fault).toMatchObject({ code: 'no-date', params: { example } })
      expect(rows[4]?.fault?.text).toContain(example)
    },
  )

  it('[Q61] given a mapping that somebody chose, when another file with that header comes, then it is remembered', async () => {
    const till = await TillBooks.made()
    const header = 'When,What,Kind,N,M\n'
    await till.take(`${header}2026-11-24 8:05,Sesame,bagel,1,7\n`, { detail: 2, pieces: 4 })
    const next = await till.preview(`${header}2026-11-25 8:05,Sesame,bagel,1,9\n`)
    expect(next).toMatchObject({ isRemembered: true, mapping: { detail: 2, pieces: 4 } })
    expect(next.rows[0]?.read).toMatchObject({ item: 'Sesame bagel', pieces: 9 })
    expect((await till.preview(`${header.toUpperCase()}2026-11-25 8:05,S,b,1,9\n`)).isRemembered).toBe(true)
    expect((await till.preview('When,What\n2026-11-25 8:05,Sesame\n')).isRemembered).toBe(false)
  })

  it('[Q61] given a mapping that could not read most rows, when another file with that header comes, then it is not remembered', async () => {
    const till = await TillBooks.made()
    const file = (day: string) => `When,What,Kind,N\n${day} 8:05,Sesame,3,2\n${day} 8:07,Poppy,4,2\n`
    const wrong = { date: 1, item: 0 }
    expect(await till.take(file('2026-11-24'), wrong)).toMatchObject({ rows: 2, bad: 2 })
    expect((await till.preview(file('2026-11-25'))).isRemembered).toBe(false)
    // It does not take the place of one that was good.
    await till.take(file('2026-11-26'), { pieces: 2 })
    await till.take(file('2026-11-27'), wrong)
    expect(await till.preview(file('2026-11-28'))).toMatchObject({ isRemembered: true, mapping: { pieces: 2 } })
    // The sender writes otherwise now: what was good is not any more.
    const other = file('11/29/2026').replaceAll(',3,', ',three,').replaceAll(',4,', ',four,')
    await till.take(other, { pieces: 2 })
    expect((await till.preview(other)).isRemembered).toBe(false)
  })

  it('[Q62] given dates that nothing decides, when put in, then both readings are shown', async () => {
    const till = await TillBooks.made()
    const { doubts } = await till.preview('Date,Item,Qty,Receipt\n03/04/2026,Sesame,1,1\n')
    expect(doubts).toMatchObject([
      { code: 'day-or-month', params: { text: '03/04/2026', one: '2026-03-04', other: '2026-04-03' } },
      { code: 'no-times' },
    ])
  })

  it('[Q60] given the same bytes again, when put in, then it is said', async () => {
    const till = await TillBooks.made()
    const text = 'Date,Item,Qty,Receipt\n2026-11-24 8:05,Sesame,1,1\n'
    await till.take(text)
    expect((await till.preview(text)).doubts).toMatchObject([{ code: 'same-file', params: { name: 'sales.csv' } }])
  })
})
