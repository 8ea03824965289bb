import { existsSync, renameSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { SafeCopies } from '../../shared-core/live/devices.ts'
import { epochMs } from '../../shared-core/units.ts'
import { archivesOf } from '../journal/archives.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import type { Verified } from '../journal/verify.ts'
import { DETAILS_FILE } from '../orders/details-table.ts'
import type { ShopFolder } from '../shop/folder.ts'
import { takeFolder } from '../shop/folder.ts'
import { Archiver } from './archiver.ts'
import { COPY_FILE, DEVICES_FILE, isSameDrive, makeCopiesFolder, noteOwnDrive, wasOnOwnDrive } from './copy-folder.ts'
import { CopyError, copyTrouble } from './copy-words.ts'
import {
  copyWhole,
  freeName,
  isDamage,
  isSound,
  nameOfInstant,
  openToRead,
  putInPlace,
  removeFile,
} from './journal-file.ts'
import { holdsNothingElse, RunningCopy, whyNotOurs } from './running-copy.ts'
import { SALES_FILE } from './sales-file.ts'
import { bringYearly } from './yearly.ts'

/** A folder that took nothing is tried again after this long: soon enough for a drive that was pulled out and put back. */
export const TRIED_AGAIN_MS = 10_000
/** A folder that did not take the day's archive; what was begun is begun anew each time. */
const ARCHIVE_TRIED_AGAIN_MS = 60_000
/** A journal that was not good: looking again costs a fold of everything. */
const JOURNAL_TRIED_AGAIN_MS = 3_600_000
/** Devices are seen all day long; what counts is who may come in, and whose name was deleted. */
const SMALL_COPIED_EVERY_MS = 60_000
/** They are copied whole: while a file of years is taken, not each second's part of it. */
const SALES_COPIED_EVERY_MS = 600_000

export interface CopyKeeperParts {
  readonly sqlite: Sqlite
  /** Of the running shop; only read. */
  readonly journalFile: string
  readonly folder: string
  readonly verify: (file: string) => Promise<Verified>
  readonly nowMs: () => number
}

/**
 * Keeps a second folder with what it takes to go on after the shop's own disk is gone: a copy of the journal that
 * follows it, an archive of each day, who may come in, whom orders are for. It reads the journal's file as any other program would, so that
 * it can do so in a thread of its own: a drive that is slow, full or gone is this thread's trouble and nobody else's.
 */
export class CopyKeeper {
  readonly #parts: CopyKeeperParts
  #open: Open | null = null
  #copy: SafeCopies['copy'] = null
  #archiver: Archiver | null = null
  #trouble: string | null = null
  #archiveTrouble: string | null = null
  #triedAtMs = Number.NEGATIVE_INFINITY
  #archiveNotBeforeMs = Number.NEGATIVE_INFINITY
  /** Whether they were ever on a drive of their own in this run. */
  #hadOwnDrive = false

  constructor(parts: CopyKeeperParts) {
    this.#parts = parts
  }

  standing(): SafeCopies {
    const { folder, journalFile } = this.#parts
    const archives = (this.#archiver?.archives ?? []).filter(({ isGood }) => isGood)
    return {
      folder,
      isSameDrive: isSameDrive(existsSync(folder) ? folder : dirname(folder), journalFile),
      copy: this.#copy,
      archives: archives
        .map(({ file, atMs, bytes, seq, hash }) => ({ file, atMs: epochMs(atMs), bytes, seq, hash }))
        .reverse(),
      trouble: this.#trouble ?? this.#archiveTrouble,
    }
  }

  /** To be called about once a second. Never throws: what is wrong stands in `standing()`. */
  async tick(): Promise<void> {
    const { nowMs, folder } = this.#parts
    if (this.#trouble !== null && nowMs() - this.#triedAtMs < TRIED_AGAIN_MS) return
    this.#triedAtMs = nowMs()
    try {
      this.#open ??= await this.#begin()
      await this.#follow(this.#open)
      this.#trouble = null
    } catch (error) {
      this.#trouble = copyTrouble(error, folder)
      this.#shut()
    }
  }

  /**
   * The archive of the shop's date, where there is none yet. To be called while nobody taps; not while a tick is under
   * way.
   */
  async archive(date: string): Promise<void> {
    const { nowMs, folder } = this.#parts
    if (this.#open === null || this.#archiver === null || nowMs() < this.#archiveNotBeforeMs) return
    try {
      if (!this.#archiver.hasOf(date)) await this.#copyYearly(this.#open.source, 'all')
      await this.#archiver.makeFor(date, this.#open.source)
      this.#archiveTrouble = null
    } catch (error) {
      this.#archiveTrouble = copyTrouble(error, folder)
      const afterMs = error instanceof CopyError ? JOURNAL_TRIED_AGAIN_MS : ARCHIVE_TRIED_AGAIN_MS
      this.#archiveNotBeforeMs = nowMs() + afterMs
    }
  }

  /** With the last entries in the copy, where its folder takes them. */
  async close(): Promise<void> {
    await this.tick()
    this.#shut()
  }

  async #begin(): Promise<Open> {
    const { sqlite, folder, journalFile } = this.#parts
    this.#refuseDriveGone()
    makeCopiesFolder(folder)
    if (!isSameDrive(folder, journalFile)) {
      this.#hadOwnDrive = true
      orSaid(() => noteOwnDrive(dirname(journalFile), folder))
    }
    const lock = takeFolder(sqlite, folder)
    let source: DatabaseSyncInstance | null = null
    try {
      source = openToRead(sqlite, journalFile)
      await this.#copyYearly(source, 'end')
      const file = join(folder, COPY_FILE)
      const aside = this.#setAsideUnlessOurs(source, file)
      if (!existsSync(file)) await this.#makeAnew(source, file)
      if (aside !== null) this.#letGoIfKnown(source, aside)
      this.#archiver = new Archiver(this.#parts)
      return {
        lock,
        source,
        copy: new RunningCopy(sqlite, source, file),
        versionCopied: null,
        devices: beside(DEVICES_FILE),
        details: beside(DETAILS_FILE),
        sales: beside(SALES_FILE),
      }
    } catch (error) {
      source?.close()
      lock.release()
      throw error
    }
  }

  /** Where a drive was mounted a folder is left behind: copies there would not outlive the journal's disk. */
  #refuseDriveGone(): void {
    const { folder, journalFile } = this.#parts
    const hadOwnDrive = this.#hadOwnDrive || wasOnOwnDrive(dirname(journalFile), folder)
    if (!hadOwnDrive || !isSameDrive(existsSync(folder) ? folder : dirname(folder), journalFile)) return
    throw new CopyError(
      `${folder} was on a drive of its own. Is that plugged in? For copies on this drive choose another folder with --copies.`,
    )
  }

  async #follow(open: Open): Promise<void> {
    const { nowMs } = this.#parts
    const { source, copy } = open
    if (!copy.isInPlace()) throw new CopyError(`${this.#parts.folder} is gone, or its copy was taken away.`)
    const atMs = epochMs(nowMs())
    // Asked before the copying: what comes meanwhile is copied again at the next tick, never missed.
    const version = Number(source.prepare('PRAGMA data_version').get()?.data_version)
    if (version !== open.versionCopied) copy.catchUp()
    open.versionCopied = version
    this.#copy = { seq: copy.seq, atMs }
    await this.#copyBeside(open.devices, SMALL_COPIED_EVERY_MS)
    await this.#copyBeside(open.details, SMALL_COPIED_EVERY_MS)
    await this.#copyBeside(open.sales, SALES_COPIED_EVERY_MS)
  }

  /** @returns where what was there is now; null when it can go on, or nothing was there */
  #setAsideUnlessOurs(source: DatabaseSyncInstance, file: string): string | null {
    if (!existsSync(file)) return null
    const { sqlite, nowMs } = this.#parts
    if (orSaid(() => withFile(sqlite, file, (copy) => whyNotOurs(source, copy))) === null) return null
    const aside = freeName(join(dirname(file), `set-aside-${nameOfInstant(nowMs())}-${basename(file)}`))
    renameSync(file, aside)
    // Half a commit belongs to that very file.
    if (existsSync(`${file}-journal`)) renameSync(`${file}-journal`, `${aside}-journal`)
    return aside
  }

  async #makeAnew(source: DatabaseSyncInstance, file: string): Promise<void> {
    const { sqlite, verify } = this.#parts
    const part = `${file}.part`
    await copyWhole(sqlite, source, part)
    const verified = await verify(part)
    if (!verified.ok) {
      removeFile(part)
      throw new CopyError(`the journal is not good: ${verified.why}`)
    }
    putInPlace(part, file)
  }

  /** What was set aside only for its form holds nothing that would be missed. */
  #letGoIfKnown(source: DatabaseSyncInstance, aside: string): void {
    const { sqlite } = this.#parts
    if (orSaid(() => withFile(sqlite, aside, (copy) => holdsNothingElse(source, copy))) === true) removeFile(aside)
  }

  async #copyYearly(source: DatabaseSyncInstance, look: 'end' | 'all'): Promise<void> {
    const { sqlite, folder, journalFile, nowMs } = this.#parts
    const setAside = (file: string) =>
      renameSync(file, freeName(join(folder, `set-aside-${nameOfInstant(nowMs())}-${basename(file)}`)))
    await bringYearly({ sqlite, archives: archivesOf(source), from: dirname(journalFile), to: folder, look, setAside })
  }

  /** One that is damaged neither takes the place of its good copy nor holds up the journal's; its own reader tells. */
  async #copyBeside(one: Beside, everyMs: number): Promise<void> {
    const { sqlite, folder, journalFile, nowMs } = this.#parts
    const file = join(dirname(journalFile), one.name)
    if (nowMs() - one.atMs < everyMs || (one.db === null && !existsSync(file))) return
    const part = join(folder, `${one.name}.part`)
    try {
      one.db ??= openToRead(sqlite, file)
      const version = Number(one.db.prepare('PRAGMA data_version').get()?.data_version)
      if (version === one.version) return
      await copyWhole(sqlite, one.db, part)
      if (withFile(sqlite, part, isSound)) putInPlace(part, join(folder, one.name))
      one.version = version
    } catch (error) {
      if (!isDamage(error)) throw error
    }
    removeFile(part)
    one.atMs = nowMs()
  }

  #shut(): void {
    const open = this.#open
    this.#open = null
    const all = [open?.copy, open?.source, open?.devices.db, open?.details.db, open?.sales.db]
    for (const one of all) orSaid(() => one?.close())
    orSaid(() => open?.lock.release())
  }
}

interface Open {
  readonly lock: Pick<ShopFolder, 'release'>
  readonly source: DatabaseSyncInstance
  readonly copy: RunningCopy
  /** SQLite's count of others' commits (`data_version`) as of the last copying. */
  versionCopied: number | null
  readonly devices: Beside
  readonly details: Beside
  readonly sales: Beside
}

/** A small database beside the journal, copied whole when it has changed. */
interface Beside {
  readonly name: string
  /** Null until there is one. */
  db: DatabaseSyncInstance | null
  version: number | null
  atMs: number
}

function beside(name: string): Beside {
  return { name, db: null, version: null, atMs: Number.NEGATIVE_INFINITY }
}

/** @throws when it cannot be read */
function withFile<Result>(sqlite: Sqlite, file: string, look: (db: DatabaseSyncInstance) => Result): Result {
  // Not only to read: a commit that a kill cut off is first taken back.
  const db = new sqlite.DatabaseSync(file)
  try {
    return look(db)
  } finally {
    db.close()
  }
}

/** @returns the sentence of what was thrown, where something was */
function orSaid<Result>(work: () => Result): Result | string {
  try {
    return work()
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}
