import { randomUUID } from 'node:crypto'
import { mkdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import { badRowsAfter, mendRows } from '../sales/bad-rows.ts'
import { feedSales } from '../sales/feed.ts'
import { orderMappings, rememberOrderMapping } from '../sales/order-mappings.ts'
import { SalesBooks } from '../sales/sales-books.ts'
import type { FileRow } from '../sales/sales-files.ts'
import { toldFile } from '../sales/sales-files.ts'
import type { Handlers } from './questions.ts'
import type { OfFile, SalesQuestions } from './sales-questions.ts'
import type { Work } from './work.ts'

export function salesHandlers(work: Work): Handlers<SalesQuestions> {
  const { books, folder } = openBooks(work)
  const settle = () => settleDays(work, books)
  const ofFile = <Value>(id: number, fits: (file: FileRow) => boolean, then: (file: FileRow) => Value) =>
    answerOf(books.files.find(id), fits, then)
  const any = () => true
  return {
    salesFolder: () => {
      // Not before it is needed, so that one that is never ended leaves nothing behind.
      mkdirSync(folder, { recursive: true, mode: 0o700 })
      return folder
    },
    salesReceive: (uploaded) => books.receive(uploaded),
    salesPreview: ({ id, mapping, nowMs }) => ofFile(id, isWaiting, (file) => books.preview(file, mapping, nowMs)),
    salesTake: ({ id, mapping }) => {
      const file = books.files.find(id)
      if (file?.state === 'taking') return { ok: true, value: toldFile(file) }
      if (file !== null && isWaiting(file) && mapping === null) return { ok: false, why: 'no-mapping' }
      return ofFile(id, isWaiting, (waiting) => {
        if (mapping !== null) books.take(waiting, mapping)
        return toldFile({ ...waiting, state: 'taking' })
      })
    },
    salesStep: async () => {
      const file = books.step()
      if (file?.state === 'taken') await settle()
      return file
    },
    salesToNote: () =>
      books.files
        .list()
        .filter(({ state, isNoted }) => state === 'taken' && !isNoted)
        .map(toldFile),
    salesNoted: ({ id }) => books.files.noted(id),
    salesFiles: () => books.files.list().map(toldFile),
    salesFile: ({ id }) => ofFile(id, any, toldFile),
    salesBad: ({ id, after }) => ofFile(id, any, () => badRowsAfter(books, id, after)),
    salesMend: async ({ id, lines }) => {
      const mended = ofFile(
        id,
        ({ state }) => state === 'taken',
        (file) => mendRows(books, file, lines),
      )
      if (mended.ok && mended.value.taken > 0) await settle()
      return mended
    },
    salesRemove: async ({ id }) => {
      const file = books.files.find(id)
      if (file === null) return { ok: false, why: 'no-file' }
      await books.remove(file)
      await settle()
      return { ok: true, value: null }
    },
    salesNames: () => books.tillNames(),
    salesMean: async ({ meanings }) => {
      books.mean(meanings)
      await settle()
    },
    salesMeanings: ({ names }) =>
      new Map(
        names.flatMap((name): [string, Meaning][] => {
          const meaning = books.names.meaningOf(name)
          return meaning === null ? [] : [[name, meaning]]
        }),
      ),
    salesFeed: async ({ sales }) => {
      const taken = feedSales(books, sales)
      if (taken > 0) await settle()
      return taken
    },
    ...orderFileHandlers(books),
  }
}

function orderFileHandlers({
  db,
}: SalesBooks): Handlers<Pick<SalesQuestions, 'orderMappings' | 'rememberOrderMapping'>> {
  return {
    orderMappings: () => orderMappings(db),
    rememberOrderMapping: (said) => rememberOrderMapping(db, said),
  }
}

function openBooks({ start, sqlite, book, breathe, atEnd }: Work) {
  const isInMemory = start.salesFile === ':memory:'
  const folder = isInMemory
    ? join(tmpdir(), `boilboard-sales-${randomUUID()}`)
    : join(dirname(start.salesFile), 'sales-in')
  const journalDay = (date: string) => book.journalDay(date)
  const books = new SalesBooks({ sqlite, file: start.salesFile, folder, breathe, shop: () => book.shop, journalDay })
  book.setTill({ range: () => books.days.range(), salesDays: (from, to) => books.days.days(from, to) })
  atEnd(() => {
    books.close()
    if (isInMemory) rmSync(folder, { recursive: true, force: true })
  })
  return { books, folder }
}

/** Makes the days that have changed, then lets them teach. */
async function settleDays({ book, breathe }: Work, { days }: SalesBooks): Promise<void> {
  while (!days.step()) await breathe()
  book.tillChanged()
}

function isWaiting({ state }: FileRow): boolean {
  return state === 'waiting'
}

function answerOf<Value>(
  file: FileRow | null,
  fits: (file: FileRow) => boolean,
  then: (file: FileRow) => Value,
): OfFile<Value> {
  if (file === null) return { ok: false, why: 'no-file' }
  return fits(file) ? { ok: true, value: then(file) } : { ok: false, why: 'wrong-state' }
}
