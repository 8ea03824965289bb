import { readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { aboutOf } from '../journal/open-file.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import type { Verified } from '../journal/verify.ts'
import { CopyError } from './copy-words.ts'
import { copyWhole, freeName, openToRead, putInPlace, removeFile } from './journal-file.ts'
import type { Archive } from './manifest.ts'
import { isThere, readManifest, sha256Of, writeManifest } from './manifest.ts'
import { outdated } from './retention.ts'

export interface ArchiverParts {
  readonly sqlite: Sqlite
  readonly folder: string
  /** See `verifyJournal`. */
  readonly verify: (file: string) => Promise<Verified>
  readonly nowMs: () => number
}

/** Daily archives in the copies' folder: made, verified, listed, looked at again now and then, and let go. */
export class Archiver {
  readonly #parts: ArchiverParts
  #archives: readonly Archive[]

  constructor(parts: ArchiverParts) {
    this.#parts = parts
    this.#archives = readManifest(parts.folder)
  }

  /** Oldest first. */
  get archives(): readonly Archive[] {
    return this.#archives
  }

  hasOf(date: string): boolean {
    return this.#archives.some((one) => one.date === date && one.isGood)
  }

  /**
   * The day's archive, where there is none yet; then one older archive is looked at again and what is outdated goes.
   * @param date the shop's, YYYY-MM-DD
   * @throws CopyError when the journal does not verify: then nothing goes either
   */
  async makeFor(date: string, source: DatabaseSyncInstance): Promise<void> {
    if (this.hasOf(date)) return
    const { sqlite, folder } = this.#parts
    await this.#adopt(aboutOf(source, 'journal_id'))
    if (this.hasOf(date)) return
    const file = `${date}.sqlite`
    const part = join(folder, `${file}.part`)
    await copyWhole(sqlite, source, part)
    const verified = await this.#parts.verify(part)
    if (!verified.ok) {
      removeFile(part)
      throw new CopyError(`today's archive of the journal is not good: ${verified.why}`)
    }
    const listed = await this.#describe(part, { file, date }, verified)
    this.#setAside(file)
    putInPlace(part, join(folder, file))
    this.#list([...this.#archives.filter((one) => one.file !== file), listed])
    await this.#lookAgain()
    this.#letGo()
  }

  /** Archives that no list names: one that was made right before a kill, or all of them when the list is gone. */
  async #adopt(journalId: string | null): Promise<void> {
    const { folder, sqlite } = this.#parts
    for (const file of readdirSync(folder).filter((name) => ARCHIVE_NAME.test(name))) {
      if (this.#archives.some((one) => one.file === file)) continue
      const path = join(folder, file)
      if (idOf(sqlite, path) !== journalId) continue
      const described = await this.#describe(path, { file, date: file.slice(0, 10) }, await this.#parts.verify(path))
      this.#list([...this.#archives, described])
    }
  }

  async #describe(path: string, named: Pick<Archive, 'file' | 'date'>, verified: Verified): Promise<Archive> {
    const { seq, hash } = verified.ok ? verified : { seq: 0, hash: '' }
    const { size: bytes, mtimeMs } = statSync(path)
    const sha256 = await sha256Of(path)
    return {
      ...named,
      ...{ atMs: Math.round(mtimeMs), bytes, seq, hash, sha256, checkedAtMs: this.#parts.nowMs(), isGood: verified.ok },
    }
  }

  /** The one that was not looked at for the longest time, each day one: a drive loses what it holds in silence. */
  async #lookAgain(): Promise<void> {
    const { folder, nowMs } = this.#parts
    const [oldest] = [...this.#archives].sort((one, other) => one.checkedAtMs - other.checkedAtMs)
    if (oldest === undefined) return
    const isGood = isThere(folder, oldest) && (await sha256Of(join(folder, oldest.file))) === oldest.sha256
    const looked = { ...oldest, isGood: oldest.isGood && isGood, checkedAtMs: nowMs() }
    this.#list(this.#archives.map((one) => (one === oldest ? looked : one)))
  }

  #letGo(): void {
    const { folder } = this.#parts
    const gone = this.#archives.filter((one) => !isThere(folder, one))
    const there = this.#archives.filter((one) => !gone.includes(one))
    const out = outdated(there)
    // First the list, so that it never names what is not there.
    this.#list(there.filter((one) => !out.includes(one)))
    for (const { file } of out) rmSync(join(folder, file), { force: true })
  }

  /** What has the day's name and is no good archive is kept under another one. */
  #setAside(file: string): void {
    const { folder } = this.#parts
    if (readdirSync(folder).includes(file)) renameSync(join(folder, file), freeName(join(folder, `set-aside-${file}`)))
  }

  #list(archives: readonly Archive[]): void {
    const sorted = [...archives].sort((one, other) => (one.date < other.date ? -1 : 1))
    writeManifest(this.#parts.folder, sorted)
    this.#archives = sorted
  }
}

/** @example ARCHIVE_NAME.test('2026-11-26.sqlite') // true */
export const ARCHIVE_NAME = /^\d{4}-\d{2}-\d{2}\.sqlite$/

function idOf(sqlite: Sqlite, path: string): string | null {
  try {
    const db = openToRead(sqlite, path)
    try {
      return aboutOf(db, 'journal_id')
    } finally {
      db.close()
    }
  } catch {
    return null
  }
}
