import type { Command } from '../../shared-core/day/commands.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import { deviceId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { SavedText } from './saved-text.ts'
import { readJson } from './saved-text.ts'
import type { Notice } from './shop-store.ts'

/**
 * What a screen must not lose: its id, the number of its last tap, the taps that are not answered yet and the answers
 * that a person has not seen yet. Each tap has a key of its own, by journal: two pages of one browser add and remove
 * theirs without touching the other's, and taps for another shop lie apart by themselves.
 */
export class QueueStore {
  readonly #saved: SavedText
  readonly #role: Role
  readonly #prefix: string

  constructor(saved: SavedText, role: Role) {
    this.#saved = saved
    this.#role = role
    this.#prefix = `boilboard.${role}.`
  }

  /** This device's id; made and kept the first time. */
  deviceId(makeId: () => string): DeviceId {
    const key = deviceIdKey(this.#role)
    const known = this.#saved.read(key)
    if (known !== null && known !== '') return deviceId(known)
    const made = makeId()
    this.#saved.write(key, made)
    return deviceId(made)
  }

  /** The next tap's number. Read anew each time, as another page of this browser may have tapped meanwhile. */
  nextDeviceSeq(atLeast: number): number {
    const key = `${this.#prefix}device-seq`
    const last = Number(this.#saved.read(key))
    const next = Math.max(Number.isSafeInteger(last) ? last : 0, atLeast) + 1
    this.#saved.write(key, String(next))
    return next
  }

  /** @returns false when the device could not keep it */
  save(journalId: string, command: Command): boolean {
    return this.#saved.write(this.#queueKey(journalId, command.id), JSON.stringify(command))
  }

  remove(journalId: string, id: string): void {
    this.#saved.remove(this.#queueKey(journalId, id))
  }

  /** The taps for one shop's journal that are not answered, in the order in which they were made. */
  load(journalId: string): Command[] {
    const commands = this.#saved.keys(this.#queueKey(journalId, '')).flatMap((key) => {
      const value = readJson(this.#saved, key)
      return isCommand(value) ? [value] : []
    })
    return commands.sort((one, other) => one.deviceSeq - other.deviceSeq || (one.id < other.id ? -1 : 1))
  }

  /** Other journals for which taps lie here, with how many. */
  others(journalId: string | null): { readonly journalId: string; readonly commands: number }[] {
    const counts = new Map<string, number>()
    const prefix = `${this.#prefix}queue.`
    for (const key of this.#saved.keys(prefix)) {
      const journal = decodeURIComponent(key.slice(prefix.length).split('.')[0] ?? '')
      if (journal !== journalId) counts.set(journal, (counts.get(journal) ?? 0) + 1)
    }
    return [...counts].map(([journal, commands]) => ({ journalId: journal, commands }))
  }

  /** Throws the taps for a journal away: a person has decided that they are of no use. */
  forget(journalId: string): void {
    for (const key of this.#saved.keys(this.#queueKey(journalId, ''))) this.#saved.remove(key)
    for (const key of this.#saved.keys(this.#noticeKey(journalId, ''))) this.#saved.remove(key)
  }

  /** This device goes on as another screen: that one tells a person of what waits here. */
  leaveFor(role: Role): void {
    this.#saved.write(cameFromKey(role), this.#role)
  }

  /** The screen that this device was before, with the taps of it that wait; null: none, or nothing waits. */
  leftBehind(journalId: string): { readonly role: Role; readonly commands: number } | null {
    const role = ROLES.find((one) => one === this.#saved.read(cameFromKey(this.#role)))
    if (role === undefined) return null
    const commands = new QueueStore(this.#saved, role).load(journalId).length
    return commands === 0 ? null : { role, commands }
  }

  /** A person has read of it; the taps stay. */
  forgetCameFrom(): void {
    this.#saved.remove(cameFromKey(this.#role))
  }

  saveNotice(journalId: string, notice: Notice): void {
    this.#saved.write(this.#noticeKey(journalId, notice.id), JSON.stringify(notice))
  }

  /** Possible in a full store as well: what was answered must not come back with the next reload. */
  removeNotice(journalId: string, id: string): void {
    this.#saved.remove(this.#noticeKey(journalId, id))
  }

  loadNotices(journalId: string): Notice[] {
    const notices = this.#saved.keys(this.#noticeKey(journalId, '')).map((key) => readJson(this.#saved, key))
    return notices.filter(isNotice).sort((one, other) => one.atMs - other.atMs || (one.id < other.id ? -1 : 1))
  }

  #queueKey(journalId: string, id: string): string {
    return `${this.#prefix}queue.${keyPart(journalId)}.${id}`
  }

  #noticeKey(journalId: string, id: string): string {
    return `${this.#prefix}notice.${keyPart(journalId)}.${id}`
  }
}

const ROLES: readonly Role[] = ['wall', 'bench', 'counter', 'desk']

/** Where the id that a screen made for itself is kept. */
export function deviceIdKey(role: Role): string {
  return `boilboard.${role}.device-id`
}

function cameFromKey(role: Role): string {
  return `boilboard.${role}.came-from`
}

/** A journal's id as a part of a key: without the dot that parts are separated by. */
function keyPart(journalId: string): string {
  return encodeURIComponent(journalId).replaceAll('.', '%2E')
}

/** Only this code writes here; what an older version wrote is the server's to judge. */
function isCommand(value: unknown): value is Command {
  return (
    isRecord(value) &&
    typeof value.id === 'string' &&
    typeof value.deviceSeq === 'number' &&
    typeof value.type === 'string'
  )
}

function isNotice(value: unknown): value is Notice {
  return (
    isRecord(value) &&
    typeof value.id === 'string' &&
    (value.kind === 'refused' || value.kind === 'ask') &&
    isCommand(value.command)
  )
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
