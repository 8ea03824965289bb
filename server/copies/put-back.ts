import { existsSync, mkdirSync, renameSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { archivesOf } from '../journal/archives.ts'
import { giveNewCourse } from '../journal/give-new-course.ts'
import { JournalError } from '../journal/journal.ts'
import { syncFolder } from '../journal/open-file.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import { verifyJournal } from '../journal/verify.ts'
import { wake } from '../shop/wake.ts'
import type { Carried } from './carry-over.ts'
import { carryOver } from './carry-over.ts'
import { COPY_FILE, DEVICES_FILE } from './copy-folder.ts'
import type { GoodCopy } from './copy-list.ts'
import {
  bringWhole,
  copyWhole,
  filesOf,
  freeName,
  moveWhole,
  nameOfInstant,
  openToRead,
  putInPlace,
  removeFile,
} from './journal-file.ts'
import { lastSum } from './running-copy.ts'
import { bringYearly } from './yearly.ts'

/**
 * A copy put back in the place of a broken journal. What will be the journal is made beside it and read from end to end
 * before anything is touched; then it gets the name `journal.sqlite.restored`, and from there on nothing can be lost by
 * a kill: run again, what is left is moved aside and the new file gets its place. No server opens the folder meanwhile
 * (`refuseHalfPutBack`).
 */

export interface PutBackParts {
  readonly sqlite: Sqlite
  /** The shop's, taken for this process alone. */
  readonly folder: string
  readonly nowMs: number
  /** Called with the name of each step that is done; a test stops there. */
  readonly onStep?: (step: PutBackStep) => void
}

export type PutBackStep = 'copied' | 'carried' | 'verified' | 'ready' | 'log aside' | 'aside' | 'in place'

export interface Prepared extends Carried {
  readonly seq: number
  readonly hash: string
}

const journalFile = (folder: string) => join(folder, 'journal.sqlite')
/** Open with a log while things are carried over, and so not what gets its place in the end. */
const workFile = (folder: string) => `${journalFile(folder)}.carrying`
const freshFile = (folder: string) => `${journalFile(folder)}.restoring`
const readyFile = (folder: string) => `${journalFile(folder)}.restored`

/**
 * Makes what will be the journal: the copy, with what the broken file can still give.
 * @param isOnly nothing is carried over from the broken file
 * @throws JournalError when it does not verify: then everything is as it was
 */
export async function prepare(copy: GoodCopy, isOnly: boolean, parts: PutBackParts): Promise<Prepared> {
  const { sqlite, folder, onStep = () => undefined } = parts
  const work = workFile(folder)
  const fresh = freshFile(folder)
  const source = openToRead(sqlite, copy.file)
  let sum: number | null
  try {
    sum = lastSum(source)
    await bringArchives(copy.file, parts)
    await copyWhole(sqlite, source, work)
  } finally {
    source.close()
  }
  onStep('copied')
  const carried = isOnly ? { entries: 0, lost: null } : await carriedInto(work, sum, parts)
  giveNewCourse(sqlite, work)
  await moveWhole(sqlite, work, fresh)
  onStep('carried')
  const verified = await verifyJournal(sqlite, fresh)
  if (!verified.ok) throw new JournalError(`What was to be put back is not good; nothing was changed. ${verified.why}`)
  onStep('verified')
  putInPlace(fresh, readyFile(folder))
  onStep('ready')
  return { ...carried, seq: verified.seq, hash: verified.hash }
}

/**
 * What an earlier run made ready and did not put in its place.
 * @returns null when there is none; what is not good is taken away
 */
export async function preparedBefore({ sqlite, folder }: PutBackParts) {
  const ready = readyFile(folder)
  for (const left of [workFile(folder), freshFile(folder)]) removeFile(left)
  if (!existsSync(ready)) return null
  const verified = await verifyJournal(sqlite, ready)
  if (verified.ok) return verified
  removeFile(ready)
  return null
}

/**
 * Moves what is there aside and puts what was made ready in its place. Can be repeated from any step.
 * @returns the folder that keeps what was there; null when nothing was
 */
export async function finish(copiesFolder: string | null, parts: PutBackParts): Promise<string | null> {
  const { folder, nowMs, onStep = () => undefined } = parts
  const journal = journalFile(folder)
  const aside = freeName(join(folder, `set-aside-${nameOfInstant(nowMs)}`))
  // A log that stays behind would be taken for the new file's own: the files beside the journal go first.
  const old = [...filesOf(join(folder, 'history.sqlite')), ...filesOf(journal)]
  moveInto(aside, old.slice(0, -1))
  onStep('log aside')
  moveInto(aside, old.slice(-1))
  onStep('aside')
  await bringDevices(copiesFolder, aside, parts)
  putInPlace(readyFile(folder), journal)
  onStep('in place')
  return existsSync(aside) ? aside : null
}

/**
 * @throws JournalError when a restore was cut short, or when there are copies of a journal and no journal: a new shop
 * must not be begun in its place
 */
export function refuseHalfPutBack(folder: string, copiesFolder: string): void {
  const again = `npm run restore -- --shop ${folder}`
  if (existsSync(readyFile(folder)))
    throw new JournalError(`A restore of ${folder} was cut short. Run it again, then start: ${again}`)
  if (!existsSync(journalFile(folder)) && existsSync(join(copiesFolder, COPY_FILE)))
    throw new JournalError(
      `There is no journal in ${folder}, but ${copiesFolder} holds a copy of one. Put it back: ${again}. For a new shop choose a folder of its own, and one for its copies.`,
    )
}

async function carriedInto(file: string, sum: number | null, { sqlite, folder }: PutBackParts): Promise<Carried> {
  const journal = new SqliteJournal(sqlite, file, 'shop')
  try {
    const state = await wake(journal, () => undefined)
    const workFolder = join(folder, 'carrying-work')
    return await carryOver({ sqlite, broken: journalFile(folder), workFolder, journal, state, sum })
  } finally {
    journal.close()
  }
}

/** Entries of past years lie beside the journal; those of the shop's folder that are not as the copy says go aside. */
async function bringArchives(copyFile: string, { sqlite, folder, nowMs }: PutBackParts): Promise<void> {
  const db = openToRead(sqlite, copyFile)
  try {
    const setAside = (file: string) => moveInto(freeName(join(folder, `set-aside-${nameOfInstant(nowMs)}`)), [file])
    const archives = archivesOf(db)
    await bringYearly({ sqlite, archives, from: dirname(copyFile), to: folder, look: 'all', setAside })
  } finally {
    db.close()
  }
}

/** Who may come in is put back only where it is lost: an older list would let in again whom the desk has shown out. */
async function bringDevices(copiesFolder: string | null, aside: string, { sqlite, folder }: PutBackParts) {
  const file = join(folder, DEVICES_FILE)
  const copy = join(copiesFolder ?? folder, DEVICES_FILE)
  if (isWhole(sqlite, file) || copiesFolder === null || !isWhole(sqlite, copy)) return
  moveInto(aside, filesOf(file))
  await bringWhole(sqlite, copy, file)
}

function isWhole(sqlite: Sqlite, file: string): boolean {
  try {
    const db = openToRead(sqlite, file)
    try {
      return db.prepare('PRAGMA integrity_check(1)').get()?.integrity_check === 'ok'
    } finally {
      db.close()
    }
  } catch {
    return false
  }
}

function moveInto(aside: string, files: readonly string[]): void {
  if (files.length === 0) return
  mkdirSync(aside, { recursive: true })
  for (const file of files) renameSync(file, join(aside, basename(file)))
  syncFolder(aside)
  syncFolder(dirname(aside))
}
