import { createHash } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { loadSqlite } from '../../../server/journal/sqlite.ts'
import { SalesBooks } from '../../../server/sales/sales-books.ts'
import type { FileRow } from '../../../server/sales/sales-files.ts'
import type { JournalDay } from '../../../shared-core/demand/journal-day.ts'
import type { SalesDay } from '../../../shared-core/demand/sales-day.ts'
import type { Mapping, Preview } from '../../../shared-core/live/sales-import.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { shopWith } from '../../core/support/shop.ts'
import { tempFolder } from './temp-folder.ts'

const NOW = epochMs(Date.parse('2026-11-26T18:00:00Z'))
/** Some rows: a file of a test has several blocks. */
const BLOCK_BYTES = 200

/** Past sales as the thread for advice keeps them, without a thread. */
export class TillBooks {
  books: SalesBooks
  readonly #folder: string
  readonly #open: () => SalesBooks

  private constructor(folder: string, open: () => SalesBooks) {
    this.#folder = folder
    this.#open = open
    this.books = open()
  }

  static async made(
    more: { shop?: Shop; journalDay?: (date: string) => JournalDay | null; file?: string } = {},
  ): Promise<TillBooks> {
    const sqlite = await loadSqlite()
    const folder = tempFolder()
    const { shop = shopWith(), journalDay = () => null, file = ':memory:' } = more
    const open = () =>
      new SalesBooks({
        ...{ sqlite, folder: join(folder, 'sales-in'), blockBytes: BLOCK_BYTES, shop: () => shop, journalDay },
        file: file === ':memory:' ? file : join(folder, file),
        breathe: async () => undefined,
      })
    return new TillBooks(folder, open)
  }

  /** As after a stop of the server. @param meanwhile with the file of past sales */
  again(meanwhile: (file: string) => void = () => undefined): void {
    this.books.close()
    meanwhile(join(this.#folder, 'sales.sqlite'))
    this.books = this.#open()
  }

  async preview(text: string | Buffer, name = 'sales.csv'): Promise<Preview> {
    mkdirSync(this.#folder, { recursive: true })
    const path = join(this.#folder, 'upload')
    writeFileSync(path, text)
    const sha256 = createHash('sha256').update(text).digest('hex')
    return await this.books.receive({ path, name, sha256, atMs: NOW })
  }

  /** Begins to take a file. */
  async begin(text: string | Buffer, change: Partial<Mapping> = {}): Promise<number> {
    const { file, mapping } = await this.preview(text)
    this.books.take(this.row(file.id), { ...mapping, ...change })
    return file.id
  }

  async take(text: string | Buffer, change: Partial<Mapping> = {}): Promise<FileRow> {
    const id = await this.begin(text, change)
    while (this.books.step() !== null);
    return this.row(id)
  }

  row(id: number): FileRow {
    const row = this.books.files.find(id)
    if (row === null) throw new Error(`no file ${id}`)
    return row
  }

  days(): readonly SalesDay[] {
    return this.books.days.days('2000-01-01', '2099-12-31')
  }

  /** Days as plain values. */
  plainDays(): unknown {
    return this.days().map((day) => ({ ...day, items: [...day.items] }))
  }

  /** Pieces of an item on the only day, timed and not. */
  sold(id: string): number {
    const item = this.days()[0]?.items.get(id)
    return item === undefined ? 0 : item.sold.reduce((sum, { pieces }) => sum + pieces, item.unseen)
  }
}
