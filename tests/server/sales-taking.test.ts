import { readFileSync, writeFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { badRowsAfter, mendRows } from '../../server/sales/bad-rows.ts'
import { ImportDesk } from '../../server/sales/import-desk.ts'
import '../fixed-seed.ts'
import { TillBooks } from './support/till-books.ts'

const HEADER = 'Date,Time,Receipt,Item,Qty'
const file = (rows: readonly string[]) => `${HEADER}\n${rows.join('\n')}\n`
/** Two days of a till, several blocks of a file. */
const ROWS = Array.from({ length: 40 }, (_, n) => {
  const item = ['Sesame', 'Poppy', 'Plain'][n % 3]
  return `2026-11-${20 + Math.floor(n / 25)},${7 + Math.floor((n % 25) / 5)}:${10 + (n % 5)},${Math.floor(n / 2)},${item},${1 + (n % 2)}`
})

describe('a file that is taken', () => {
  it('[Q65] given a file, when it comes again, or parts of it in others, then nothing is added', async () => {
    const once = await TillBooks.made()
    await once.take(file(ROWS))
    const again = await TillBooks.made()
    await again.take(file(ROWS.slice(0, 25)))
    expect(await again.take(file(ROWS))).toMatchObject({ rows: 40, taken: 40, doubled: 25 })
    expect(await again.take(file(ROWS.slice(10)))).toMatchObject({ taken: 30, doubled: 30 })
    expect(again.plainDays()).toEqual(once.plainDays())
    expect(once.days().map(({ date }) => date)).toEqual(['2026-11-20', '2026-11-21'])
    expect(again.books.tillNames().map(({ name, rows }) => [name, rows])).toEqual(
      once.books.tillNames().map(({ name, rows }) => [name, rows]),
    )
  })

  it('[Q65] given two rows that say the same, when they have no id, then they are two; with one id, one', async () => {
    const same = '2026-11-20,7:05,1,Sesame,1'
    const two = await TillBooks.made()
    expect(await two.take(file([same, same]))).toMatchObject({ taken: 2, doubled: 0 })
    expect(await two.take(file([same]))).toMatchObject({ doubled: 1 })
    expect(two.sold('sesame')).toBe(2)
    const one = await TillBooks.made()
    const text = `Row Id,${HEADER}\nA1,${same}\nA1,${same}\n`
    expect(await one.take(text, { line: 0 })).toMatchObject({ taken: 2, doubled: 1 })
    expect(one.sold('sesame')).toBe(1)
  })

  it('[Q65] given files that overlap, when taken in any order and one taken out, then the days are those of the others', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.integer({ min: 0, max: ROWS.length - 1 }), { minLength: 1, maxLength: 8 }), {
          minLength: 2,
          maxLength: 4,
        }),
        fc.nat(),
        async (picks, draw) => {
          const texts = picks.map((pick) => file([...new Set(pick)].map((n) => ROWS[n] ?? '')))
          const [all, turned, fewer] = [await TillBooks.made(), await TillBooks.made(), await TillBooks.made()]
          for (const text of texts) await all.take(text)
          for (const text of [...texts].reverse()) await turned.take(text)
          expect(turned.plainDays()).toEqual(all.plainDays())
          const out = draw % texts.length
          for (const [n, text] of texts.entries()) if (n !== out) await fewer.take(text)
          await all.books.remove(all.row(out + 1))
          expect(all.plainDays()).toEqual(fewer.plainDays())
          expect(all.books.tillNames()).toEqual(fewer.books.tillNames())
        },
      ),
      { numRuns: 12 },
    )
  })

  it('[Q66] given a stop after any block, when the server is there again, then it goes on and comes to the same', async () => {
    const whole = await TillBooks.made()
    const { rows, taken, bad } = await whole.take(file([...ROWS, 'x']))
    let blocks = 0
    for (let stop = 0; stop <= blocks; stop += 1) {
      const cut = await TillBooks.made({ file: 'sales.sqlite' })
      const id = await cut.begin(file([...ROWS, 'x']))
      for (let block = 0; block < stop; block += 1) cut.books.step()
      cut.again()
      let left = 0
      while (cut.books.step() !== null) left += 1
      blocks = Math.max(blocks, left)
      expect(cut.row(id)).toMatchObject({ state: 'taken', rows, taken, bad, doubled: 0 })
      expect(cut.plainDays()).toEqual(whole.plainDays())
      cut.books.close()
    }
    expect(blocks).toBeGreaterThan(4)
  })

  it('[Q66] given a title, notes over two lines and an open mark, when stopped anywhere, then it comes to the same', async () => {
    const noted = (n: number) => `2026-11-20,7:0${n},${n},"Sesame\nsliced",1`
    const text = `Sales\n\n${file([noted(1), 'x', '2026-11-20,7:05,1,"open', noted(2), 'x,"open', noted(3), ...ROWS])}`
    const whole = await TillBooks.made()
    const id = await whole.begin(text, { skip: 2 })
    while (whole.books.step() !== null);
    expect(whole.books.tillNames().find(({ name }) => name === 'Sesame sliced')).toMatchObject({ rows: 3 })
    const told = badRowsAfter(whole.books, id, 0)
    expect(told.bad.map(({ line }) => line)).toEqual([6, 7, 10])
    for (let stop = 1; stop < 12; stop += 1) {
      const cut = await TillBooks.made({ file: 'sales.sqlite' })
      await cut.begin(text, { skip: 2 })
      for (let block = 0; block < stop; block += 1) cut.books.step()
      cut.again()
      while (cut.books.step() !== null);
      expect(badRowsAfter(cut.books, id, 0)).toEqual(told)
      expect(cut.plainDays()).toEqual(whole.plainDays())
      cut.books.close()
    }
  })

  it('[Q66] given a disk that fails in the middle of a block, when it is well again, then nothing is twice and nothing missing', async () => {
    const whole = await TillBooks.made()
    await whole.take(file(ROWS))
    const cut = await TillBooks.made({ file: 'sales.sqlite' })
    const id = await cut.begin(file(ROWS))
    cut.books.db.exec(
      "CREATE TRIGGER fails BEFORE INSERT ON rows WHEN new.purchase = '9' BEGIN SELECT RAISE(ABORT, 'disk'); END",
    )
    expect(() => {
      while (cut.books.step() !== null);
    }).toThrow('disk')
    expect(cut.row(id).taken).toBeLessThan(18)
    cut.books.db.exec('DROP TRIGGER fails')
    while (cut.books.step() !== null);
    expect(cut.row(id)).toMatchObject({ taken: 40, doubled: 0 })
    expect(cut.plainDays()).toEqual(whole.plainDays())
    cut.books.close()
  })

  it('[Q66] given a disk that takes nothing, when gone on with, then that is said until it goes on again', async () => {
    let isFull = true
    const ask = async (kind: string) => {
      if (isFull) throw new Error('database or disk is full')
      return kind === 'salesToNote' ? [] : null
    }
    const room = { failure: null, state: { shop: {} }, submit: async () => [] }
    const log = { error: () => undefined }
    const desk = new ImportDesk({ work: { ask: ask as never, onBegun: (run) => run() }, room: room as never, log })
    desk.tick()
    await expect.poll(() => desk.isStuck).toBe(true)
    isFull = false
    desk.goOn()
    await expect.poll(() => desk.isStuck).toBe(false)
    await desk.close()
  })

  it('[Q72] given past sales with bad pages in the middle, when the server starts, then it is told at once', async () => {
    const cut = await TillBooks.made({ file: 'sales.sqlite' })
    await cut.take(file(Array.from({ length: 2_000 }, (_, n) => `2026-11-20,7:05,${n},Sesame,1`)))
    expect(() => cut.again((path) => writeFileSync(path, readFileSync(path).fill(0x5a, 12 * 4096, 16 * 4096)))).toThrow(
      /cannot be used: .*(damaged|malformed).* npm run restore/,
    )
  })
})

describe('rows that cannot be read', () => {
  it('[Q64] given bad rows anywhere, when taken, then every good row is there and each bad one has its line and reason', async () => {
    const spoilt = [
      'Total,,,,40',
      '2026-11-20,7:05,1,,1',
      '2026-11-20,7:05,1,"Sesame,1',
      '31/31/2026,7:05,1,Sesame,1',
      '2026-11-20,7:05,1,Sesame,1.5',
      'x',
    ]
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat({ max: ROWS.length }), fc.nat({ max: spoilt.length - 1 })), { maxLength: 6 }),
        async (places) => {
          const clean = await TillBooks.made()
          await clean.take(file(ROWS))
          const mixed: string[] = [...ROWS]
          for (const [place, what] of places) mixed.splice(place, 0, spoilt[what] ?? '')
          const dirty = await TillBooks.made()
          const id = await dirty.begin(file(mixed), MAPPED)
          while (dirty.books.step() !== null);
          expect(dirty.row(id)).toMatchObject({ taken: 40, bad: places.length })
          expect(dirty.plainDays()).toEqual(clean.plainDays())
          const { bad } = badRowsAfter(dirty.books, id, 0)
          expect(bad.map(({ line, text }) => [line, text])).toEqual(
            mixed.flatMap((text, n) => (spoilt.includes(text) ? [[n + 2, text]] : [])),
          )
        },
      ),
      { numRuns: 15 },
    )
  })

  it('[Q64] given any bytes at all, when taken, then it comes to an end, and each line that says something is taken or told', async () => {
    const bytes = fc.array(
      fc.constantFrom('"', '""', ',', '\n', '\r\n', '\r', ' ', 'x', '7', '\u0000', 'é', '2026-11-20,7:05,1,Sesame,2\n'),
      {
        maxLength: 60,
      },
    )
    await fc.assert(
      fc.asyncProperty(bytes, async (parts) => {
        const till = await TillBooks.made()
        const text = `${HEADER}\n${parts.join('')}`
        const id = await till.begin(text, MAPPED)
        // Each step takes a line at the least.
        for (let left = text.length; till.books.step() !== null; left -= 1) expect(left).toBeGreaterThan(0)
        const { rows, taken, bad, bytesRead, bytes: size } = till.row(id)
        expect([taken + bad, bytesRead]).toEqual([rows, size])
        const { bad: told } = badRowsAfter(till.books, id, 0)
        expect(told.every(({ line }) => line > 1 && line <= text.split('\n').length)).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('[Q64] given bad rows, when corrected, then they are taken or told again why, and an empty one is let go', async () => {
    const till = await TillBooks.made()
    const row = await till.take(
      file(['2026-11-20,7:05,1,Sesame,2', 'Total,,,,2', '2026-11-20,7h,2,Poppy,1', '2026-11-20,7:07,3,Plain,x']),
      MAPPED,
    )
    expect(row).toMatchObject({ taken: 1, bad: 3 })
    const lines = [
      { line: 3, text: '' },
      { line: 4, text: '2026-11-20,7:06,2,Poppy,1' },
      { line: 5, text: '2026-11-20,7:07,3,Plain,y' },
      { line: 77, text: '2026-11-20,7:07,3,Plain,9' },
    ]
    const mended = mendRows(till.books, row, lines)
    expect(mended).toMatchObject({
      taken: 1,
      doubled: 0,
      bad: [{ line: 5, fault: { code: 'no-pieces', params: { text: 'y' } } }],
    })
    expect(till.row(row.id)).toMatchObject({ taken: 2, bad: 1 })
    expect([till.sold('sesame'), till.sold('poppy'), till.sold('plain')]).toEqual([2, 1, 0])
  })
})

const MAPPED = {
  date: 0,
  clock: 1,
  transaction: 2,
  item: 3,
  pieces: 4,
  dateForm: 'y-m-d',
  skip: 0,
  hasHeader: true,
  detail: null,
  line: null,
  voided: null,
} as const
