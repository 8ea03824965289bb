import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Mapping, NamedMeaning, Preview, SalesFile, TillName } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { BLOCK_BYTES } from './csv-walk.ts'
import type { DayCacheParts } from './day-cache.ts'
import { DayCache } from './day-cache.ts'
import { encodingOf, makeUtf8 } from './encoding.ts'
import { isDayFirst } from './guess-dates.ts'
import { LocalTimes } from './local-times.ts'
import { openCsv } from './open-csv.ts'
import { previewOf, signatureBy } from './preview.ts'
import type { FileRow } from './sales-files.ts'
import { SalesFiles, toldFile } from './sales-files.ts'
import { SalesNames } from './sales-names.ts'
import { countAgain, RowWriter } from './sales-rows.ts'
import { openSalesTables } from './sales-tables.ts'
import { ownMeaning } from './suggest-meaning.ts'
import { Taking } from './taking.ts'

export interface BooksParts extends Pick<DayCacheParts, 'shop' | 'journalDay'> {
  readonly sqlite: Sqlite
  /** ":memory:" for one that is gone with the process. */
  readonly file: string
  /** Where files lie while they wait or are taken; made when it is needed. */
  readonly folder: string
  /** Of a file that are taken in one commit; left out: some thousands of rows. */
  readonly blockBytes?: number
  /** Lets others have a turn. */
  readonly breathe: () => Promise<unknown>
}

export interface Uploaded {
  /** Where it was put; it is taken away from there. */
  readonly path: string
  readonly name: string
  readonly sha256: string
  readonly atMs: EpochMs
}

/** Past sales of tills: what comes in, what its names mean, and what days come out. Lives in the thread for advice. */
export class SalesBooks {
  readonly db: DatabaseSyncInstance
  readonly files: SalesFiles
  readonly names: SalesNames
  readonly days: DayCache
  readonly writer: RowWriter
  readonly #parts: BooksParts
  #taking: { readonly id: number; readonly taking: Taking } | null = null
  #times: { readonly zone: string; readonly times: LocalTimes } | null = null

  /** @throws Error with a sentence when its file cannot be used */
  constructor(parts: BooksParts) {
    this.#parts = parts
    this.db = openSalesTables(parts.sqlite, parts.file)
    this.files = new SalesFiles(this.db)
    this.names = new SalesNames(this.db)
    const { shop, journalDay } = parts
    this.days = new DayCache({ db: this.db, meanings: () => this.names.meanings(), shop, journalDay })
    this.writer = new RowWriter(this.db, (name) => {
      const own = ownMeaning(name, varietiesOf(shop()))
      return own === null ? null : JSON.stringify(own)
    })
    this.#tidy()
  }

  get shop(): Shop | null {
    return this.#parts.shop()
  }

  times(): LocalTimes {
    const zone = this.shop?.profile.zone ?? 'UTC'
    if (this.#times?.zone !== zone) this.#times = { zone, times: new LocalTimes(zone) }
    return this.#times.times
  }

  /** Takes a file in: it waits for its mapping. */
  async receive({ path, name, sha256, atMs }: Uploaded): Promise<Preview> {
    const encoding = await encodingOf(path, this.#parts.breathe)
    const bytes = await makeUtf8(path, encoding, this.#parts.breathe)
    const file = this.files.add({ name, sha256, encoding, bytes, addedAtMs: atMs })
    mkdirSync(this.#parts.folder, { recursive: true })
    renameSync(path, this.#pathOf(file.id))
    return this.preview(file, null, atMs)
  }

  /** @param file one that is waiting @param chosen null: guessed, or remembered from an earlier file */
  preview(file: FileRow, chosen: Mapping | null, nowMs: EpochMs): Preview {
    const csv = openCsv(this.#pathOf(file.id))
    const twin = this.files
      .list()
      .find(
        ({ id, sha256, state }) =>
          id !== file.id && sha256 === file.sha256 && state !== 'waiting' && state !== 'failed',
      )
    const { day } = this.times().of(nowMs)
    const profile = this.shop?.profile ?? { language: 'en', zone: 'UTC' }
    try {
      return previewOf({
        csv,
        file: toldFile(file),
        encoding: file.encoding,
        twin: twin === undefined ? null : toldFile(twin),
        times: this.times(),
        hints: { today: day, isDayFirst: isDayFirst(profile) },
        remembered: (signature) => this.#rememberedFor(signature),
        chosen,
      })
    } finally {
      csv.close()
    }
  }

  /** Begins to take a file that waits; `step` does it. */
  take(file: FileRow, mapping: Mapping): void {
    this.files.begin(file.id, mapping)
  }

  /**
   * Takes a block of the oldest file that is being taken.
   * @returns what came of it so far; null: none is being taken
   */
  step(): SalesFile | null {
    const file = this.files.list().findLast(({ state }) => state === 'taking')
    if (file === undefined) return null
    try {
      if (this.#taking?.id !== file.id) {
        this.#stop()
        this.#taking = { id: file.id, taking: this.#begin(file) }
      }
      this.#taking.taking.step()
    } catch (error) {
      this.#stop()
      if (existsSync(this.#pathOf(file.id))) throw error
      this.files.fail(file.id, `The file is not there any more. Put it in again.`)
    }
    const now = this.files.find(file.id)
    if (now === null) return null
    if (now.state === 'taken') this.#taken(now)
    return toldFile(now)
  }

  /** Takes out a file and all that only it brought. */
  async remove(file: FileRow): Promise<void> {
    if (this.#taking?.id === file.id) this.#stop()
    this.db
      .prepare(
        "UPDATE files SET state = 'failed', why = 'Taking it out was cut short. Take it out again.' WHERE id = ?",
      )
      .run(file.id)
    for (let day = file.fromDay ?? 0; file.toDay !== null && day <= file.toDay; day += DAYS_A_BREATH) {
      this.db
        .prepare('DELETE FROM rows WHERE day BETWEEN ? AND ? AND file = ?')
        .run(day, day + DAYS_A_BREATH - 1, file.id)
      await this.#parts.breathe()
    }
    for (const table of ['bad_rows', 'name_counts']) this.db.prepare(`DELETE FROM ${table} WHERE file = ?`).run(file.id)
    this.files.remove(file.id)
    countAgain(this.db, file)
    rmSync(this.#pathOf(file.id), { force: true })
    if (file.fromDay !== null && file.toDay !== null) this.days.rowsChanged(file.fromDay, file.toDay)
  }

  tillNames(): readonly TillName[] {
    return this.names.list(varietiesOf(this.shop))
  }

  /** Says what names mean. */
  mean(meanings: readonly NamedMeaning[]): void {
    this.names.mean(meanings)
    this.days.allChanged()
  }

  close(): void {
    this.#stop()
    // All in one file.
    this.db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    this.db.close()
  }

  #begin(file: FileRow): Taking {
    const { db, files, writer } = this
    const { blockBytes = BLOCK_BYTES } = this.#parts
    return new Taking(file, { db, files, writer, times: this.times(), path: this.#pathOf(file.id), blockBytes })
  }

  #taken(file: FileRow): void {
    this.#stop()
    this.#remember(file)
    rmSync(this.#pathOf(file.id), { force: true })
    if (file.fromDay !== null && file.toDay !== null) this.days.rowsChanged(file.fromDay, file.toDay)
  }

  #stop(): void {
    this.#taking?.taking.close()
    this.#taking = null
  }

  /** For the next file with that header; what could not read most of its rows is no good for that one either. */
  #remember({ id, mapping, rows, bad }: FileRow): void {
    if (mapping === null || !existsSync(this.#pathOf(id))) return
    const csv = openCsv(this.#pathOf(id))
    try {
      const isWrong = bad * 2 > rows
      const sql = isWrong
        ? 'DELETE FROM mappings WHERE header = ? AND mapping = ?'
        : 'INSERT INTO mappings VALUES (?, ?) ON CONFLICT DO UPDATE SET mapping = excluded.mapping'
      this.db.prepare(sql).run(signatureBy(csv, mapping), JSON.stringify(mapping))
    } finally {
      csv.close()
    }
  }

  #rememberedFor(signature: string): Mapping | null {
    const text = this.db.prepare('SELECT mapping FROM mappings WHERE header = ?').get(signature)?.mapping
    return text === undefined ? null : JSON.parse(String(text))
  }

  #pathOf(id: number): string {
    return join(this.#parts.folder, `${id}.csv`)
  }

  /** What a stop left behind: uploads that nobody was told of, and rows of files that are gone. */
  #tidy(): void {
    const { folder } = this.#parts
    const needed = new Set<string>()
    for (const { id, state } of this.files.list()) {
      if (state === 'waiting' && !existsSync(this.#pathOf(id))) this.files.remove(id)
      else if (state === 'waiting' || state === 'taking') needed.add(`${id}.csv`)
    }
    if (!existsSync(folder)) return
    for (const name of readdirSync(folder)) if (!needed.has(name)) rmSync(join(folder, name), { force: true })
  }
}
const DAYS_A_BREATH = 7

export function varietiesOf(shop: Shop | null) {
  return [...(shop?.varieties.values() ?? [])].filter(({ retired }) => !retired)
}
