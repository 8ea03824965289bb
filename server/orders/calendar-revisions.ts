import { createHash } from 'node:crypto'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Revision } from './calendar.ts'

/** More are forgotten, the oldest first: an open order or a standing one is asked for each time. */
const KEPT_MAX = 10_000

/**
 * Which revision of an event a calendar gets: another number whenever what it says has changed, and never a lower one.
 * The numbers are the journal's, so that they go on rising over a restart, at which all events get a new one.
 */
export class CalendarRevisions {
  readonly #kept = new Map<string, Revision & { readonly content: string }>()

  /** @param seq of the journal's last entry */
  of(uid: string, content: string, { seq, nowMs }: { readonly seq: number; readonly nowMs: EpochMs }): Revision {
    const hash = createHash('sha256').update(content).digest('base64')
    const known = this.#kept.get(uid)
    if (known?.content === hash) return known
    const revision = { sequence: seq, atMs: nowMs, content: hash }
    this.#kept.delete(uid)
    this.#kept.set(uid, revision)
    const [oldest] = this.#kept.keys()
    if (this.#kept.size > KEPT_MAX && oldest !== undefined) this.#kept.delete(oldest)
    return revision
  }
}
