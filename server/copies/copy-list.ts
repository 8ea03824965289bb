import { existsSync, readdirSync, statSync } from 'node:fs'
import { basename, join, resolve } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { epochMs } from '../../shared-core/units.ts'
import { aboutOf } from '../journal/open-file.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import type { Verified } from '../journal/verify.ts'
import { verifyJournal } from '../journal/verify.ts'
import { localDate } from '../live/shop-clock.ts'
import { ARCHIVE_NAME } from './archiver.ts'
import { COPY_FILE } from './copy-folder.ts'

/** What `npm run backup` calls its files. */
export const BACKUP_NAME = /^backup-\d{4}-\d{2}-\d{2}-\d{6}(-\d+)?\.sqlite$/

/** A copy that was found to be whole. */
export interface GoodCopy extends Extract<Verified, { ok: true }> {
  readonly file: string
  /** When its last entry was recorded; null where it has none. */
  readonly lastAtMs: number | null
  readonly zone: string
}

export interface Candidate {
  readonly file: string
  /** Null: it is good. */
  readonly why: string | null
}

/**
 * Files that a journal can be put back from, in the order in which they are tried: the running copy, then archives and
 * backups, newest first. Of a file just that one.
 * @throws when there is neither file nor folder
 */
export function candidatesIn(path: string): readonly string[] {
  if (!statSync(path).isDirectory()) return [resolve(path)]
  const dated = (name: string) => /\d{4}-\d{2}-\d{2}(-\d{6})?/.exec(name)?.[0] ?? ''
  const others = readdirSync(path)
    .filter((name) => ARCHIVE_NAME.test(name) || BACKUP_NAME.test(name))
    .sort((one, other) => (dated(one) < dated(other) ? 1 : -1))
  const all = [COPY_FILE, ...others].map((name) => resolve(join(path, name)))
  return all.filter((file) => existsSync(file))
}

/**
 * Looks at a copy from end to end.
 * @returns what it holds, or why it will not do, as a sentence
 */
export async function readCopy(sqlite: Sqlite, file: string): Promise<GoodCopy | { readonly why: string }> {
  try {
    takeBackHalfCommit(sqlite, file)
    const verified = await verifyJournal(sqlite, file)
    if (!verified.ok) return verified
    const db = new sqlite.DatabaseSync(file, { readOnly: true })
    try {
      if (aboutOf(db, 'kind') !== 'shop') return { why: `${basename(file)} is no real shop's journal.` }
      return { ...verified, file, ...lastOf(db) }
    } finally {
      db.close()
    }
  } catch (error) {
    return { why: error instanceof Error ? error.message : String(error) }
  }
}

/** A copy whose server was killed in the middle of a commit: SQLite takes it back where the file may be written. */
function takeBackHalfCommit(sqlite: Sqlite, file: string): void {
  if (!existsSync(`${file}-journal`)) return
  const db = new sqlite.DatabaseSync(file)
  try {
    db.prepare('SELECT count(*) FROM about').get()
  } finally {
    db.close()
  }
}

function lastOf(db: DatabaseSyncInstance): Pick<GoodCopy, 'lastAtMs' | 'zone'> {
  const text = db.prepare('SELECT entry FROM entries ORDER BY seq DESC LIMIT 1').get()?.entry
  const state = db.prepare('SELECT state FROM snapshots ORDER BY seq DESC LIMIT 1').get()?.state
  return { lastAtMs: text === undefined ? null : JSON.parse(String(text)).recordedAtMs, zone: zoneIn(db, state) }
}

/** The shop's zone as the newest set-up that can be found says it; UTC where none does. */
function zoneIn(db: DatabaseSyncInstance, state: unknown): string {
  const fromState = state === undefined ? undefined : JSON.parse(String(state)).shop?.profile?.zone
  if (typeof fromState === 'string') return fromState
  const first = db
    .prepare('SELECT entry FROM entries WHERE instr(entry, \'"type":"setUp\') > 0 ORDER BY seq DESC')
    .all()
  for (const { entry } of first) {
    const zone = /"zone":"([^"]+)"/.exec(String(entry))?.[1]
    if (zone !== undefined) return zone
  }
  return 'UTC'
}

/**
 * Up to where a copy goes, for a person.
 * @example upTo({ seq: 12345, lastAtMs: Date.parse('2026-11-26T12:42:00Z'), zone: 'America/Chicago' }) // 'entry 12,345 of 2026-11-26, 6:42 am'
 */
export function upTo({ seq, lastAtMs, zone }: Pick<GoodCopy, 'seq' | 'lastAtMs' | 'zone'>): string {
  if (lastAtMs === null) return 'its beginning, without an entry'
  const time = new Intl.DateTimeFormat('en-US', { timeZone: zone, hour: 'numeric', minute: '2-digit' })
    .format(lastAtMs)
    .replace(/\s?([AP])M$/, (_all, half: string) => ` ${half.toLowerCase()}m`)
  return `entry ${seq.toLocaleString('en-US')} of ${localDate(zone, epochMs(lastAtMs))}, ${time}`
}
