import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { DeviceId } from '../../shared-core/ids.ts'
import { stationId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import type { DeviceRecord } from './device-record.ts'
import { expiryOf, isLive } from './device-record.ts'

/** Far more than the screens, tills and sensors of a large shop. */
export const DEVICES_MAX = 200
/** A browser's stored ids: one for each page, and new ones after its store was cleared. */
const IDS_PER_DEVICE_MAX = 64
/** Browsers keep no cookie longer (RFC 6265bis, section 5.5): after that nobody can show such a token any more. */
const DEAD_KEPT_MS = 400 * 86_400_000
/** When a device was last seen is written at most so often, and never while somebody waits for it. */
const SEEN_WRITTEN_EVERY_MS = 300_000

const FORM = 1
const TABLES = `
  CREATE TABLE devices (
    id TEXT PRIMARY KEY, token_hash TEXT NOT NULL UNIQUE, kind TEXT NOT NULL, name TEXT NOT NULL, role TEXT NOT NULL,
    station_id TEXT, joined_at_ms INTEGER NOT NULL, seen_at_ms INTEGER, script_ends_at_ms INTEGER,
    ended_by TEXT, ended_at_ms INTEGER
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE device_ids (
    device_id TEXT PRIMARY KEY, owner TEXT NOT NULL REFERENCES devices (id) ON DELETE CASCADE
  ) STRICT, WITHOUT ROWID;`

/**
 * The devices that have joined, in a small SQLite file of their own: who may come in is no part of the shop's history,
 * and a token's end must hold even where the journal is put back to yesterday. All of it is held in memory as well, so
 * that whoever knocks costs no look at the disk; what changes is on disk before it is answered.
 */
export class DeviceRegister {
  readonly #db: DatabaseSyncInstance
  readonly #now: () => EpochMs
  readonly #byId = new Map<string, DeviceRecord>()
  readonly #idByHash = new Map<string, string>()
  readonly #ownerOf = new Map<DeviceId, string>()
  readonly #seenWrittenMs = new Map<string, number>()

  /** @throws JournalError when the file is of a newer release or cannot be read */
  constructor(sqlite: Sqlite, file: string, now: () => EpochMs) {
    this.#now = now
    this.#db = open(sqlite, file)
    this.#forgetDead()
    for (const row of this.#db.prepare('SELECT * FROM devices').all()) this.#hold(recordOf(row))
    for (const { device_id, owner } of this.#db.prepare('SELECT device_id, owner FROM device_ids').all()) {
      this.#ownerOf.set(String(device_id) as DeviceId, String(owner))
    }
  }

  /** Whose token has this hash, alive or not; null: nobody's. */
  byTokenHash(hash: string): DeviceRecord | null {
    return this.byId(this.#idByHash.get(hash) ?? '')
  }

  byId(id: string): DeviceRecord | null {
    return this.#byId.get(id) ?? null
  }

  /** Those whose token lets them in, in the order in which they joined. */
  live(): readonly DeviceRecord[] {
    const nowMs = this.#now()
    return [...this.#byId.values()]
      .filter((record) => isLive(record, nowMs))
      .sort((one, other) => one.joinedAtMs - other.joinedAtMs || (one.id < other.id ? -1 : 1))
  }

  get isFull(): boolean {
    return this.live().length >= DEVICES_MAX
  }

  /** A new device, or one that is there already with what is new about it. On disk when this returns. */
  save(record: DeviceRecord): DeviceRecord {
    const { id, tokenHash, kind, name, role, joinedAtMs, seenAtMs, scriptEndsAtMs, ended } = record
    this.#db
      .prepare(`INSERT INTO devices VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        ON CONFLICT (id) DO UPDATE SET token_hash = excluded.token_hash, name = excluded.name, role = excluded.role,
          station_id = excluded.station_id, seen_at_ms = excluded.seen_at_ms, ended_by = excluded.ended_by,
          ended_at_ms = excluded.ended_at_ms, script_ends_at_ms = excluded.script_ends_at_ms`)
      .run(
        ...[id, tokenHash, kind, name, role, record.stationId, joinedAtMs, seenAtMs, scriptEndsAtMs],
        ...[ended?.by ?? null, ended?.atMs ?? null],
      )
    this.#hold(record)
    return record
  }

  /** In memory at once, on disk with the next `flush`. */
  saw(id: string): void {
    const record = this.#byId.get(id)
    const nowMs = this.#now()
    if (record === undefined || nowMs <= (record.seenAtMs ?? 0)) return
    this.#byId.set(id, { ...record, seenAtMs: nowMs })
  }

  /**
   * Who did what is told by the id that a screen made itself. It belongs to the device that used it first; one that was
   * shown out or has gone leaves its ids to whoever comes next with them.
   * @returns false when it is another's
   */
  claim(deviceId: DeviceId, id: string): boolean {
    const owner = this.#ownerOf.get(deviceId)
    if (owner === id) return true
    const other = owner === undefined ? null : this.byId(owner)
    if (other !== null && isLive(other, this.#now())) return false
    const owned = [...this.#ownerOf.values()].filter((one) => one === id).length
    if (owned >= IDS_PER_DEVICE_MAX) return false
    this.#db.prepare('INSERT OR REPLACE INTO device_ids (device_id, owner) VALUES (?, ?)').run(deviceId, id)
    this.#ownerOf.set(deviceId, id)
    return true
  }

  /** Writes when devices were last seen, of those for which it is some minutes newer than what is on disk. */
  flush(everyMs = SEEN_WRITTEN_EVERY_MS): void {
    const due = [...this.#byId.values()].filter(
      ({ id, seenAtMs }) => (seenAtMs ?? 0) - (this.#seenWrittenMs.get(id) ?? 0) >= everyMs,
    )
    if (due.length === 0) return
    const write = this.#db.prepare('UPDATE devices SET seen_at_ms = ? WHERE id = ?')
    this.#db.exec('BEGIN IMMEDIATE')
    try {
      for (const { id, seenAtMs } of due) write.run(seenAtMs, id)
      this.#db.exec('COMMIT')
    } finally {
      // Left open, it would take in all that is answered as written from here on, and lose it with the process.
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
    }
    for (const { id, seenAtMs } of due) this.#seenWrittenMs.set(id, seenAtMs ?? 0)
  }

  close(): void {
    try {
      this.flush(1)
      // All in one file: who copies a stopped shop may copy that one alone.
      this.#db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    } finally {
      this.#db.close()
    }
  }

  #hold(record: DeviceRecord): void {
    const before = this.#byId.get(record.id)
    if (before !== undefined) this.#idByHash.delete(before.tokenHash)
    this.#byId.set(record.id, record)
    this.#idByHash.set(record.tokenHash, record.id)
    this.#seenWrittenMs.set(record.id, record.seenAtMs ?? 0)
  }

  #forgetDead(): void {
    const beforeMs = this.#now() - DEAD_KEPT_MS
    const remove = this.#db.prepare('DELETE FROM devices WHERE id = ?')
    for (const record of this.#db.prepare('SELECT * FROM devices').all().map(recordOf)) {
      const deadSinceMs = record.ended?.atMs ?? expiryOf(record)
      if (deadSinceMs !== null && deadSinceMs < beforeMs) remove.run(record.id)
    }
  }
}

function open(sqlite: Sqlite, file: string): DatabaseSyncInstance {
  try {
    const db = new sqlite.DatabaseSync(file)
    db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;')
    const form = Number(db.prepare('PRAGMA user_version').get()?.user_version)
    if (form > FORM) throw new JournalError('It was written by a newer release of Boilboard.')
    if (form < FORM) db.exec(`BEGIN IMMEDIATE; ${TABLES} PRAGMA user_version = ${FORM}; COMMIT`)
    return db
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new JournalError(
      `The list of devices ${file} cannot be read: ${why} Put back a copy of it, or take the file away: then all devices join again.`,
    )
  }
}

type Row = Readonly<Record<string, unknown>>

function recordOf(row: Row): DeviceRecord {
  const instant = (column: string) => (row[column] === null ? null : epochMs(Number(row[column])))
  const endedAtMs = instant('ended_at_ms')
  return {
    id: String(row.id),
    kind: row.kind === 'script' || row.kind === 'calendar' ? row.kind : 'screen',
    tokenHash: String(row.token_hash),
    name: String(row.name),
    role: roleOf(row.role),
    stationId: row.station_id === null ? null : stationId(String(row.station_id)),
    joinedAtMs: epochMs(Number(row.joined_at_ms)),
    seenAtMs: instant('seen_at_ms'),
    scriptEndsAtMs: instant('script_ends_at_ms'),
    ended: endedAtMs === null ? null : { by: row.ended_by === 'itself' ? 'itself' : 'desk', atMs: endedAtMs },
  }
}

/** What no release of ours wrote has the fewest rights. */
function roleOf(raw: unknown): DeviceRecord['role'] {
  return raw === 'bench' || raw === 'counter' || raw === 'desk' ? raw : 'wall'
}
