import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import type { Welcome } from '../../shared-core/live/protocol.ts'

/** How taking something in went: `gap` when entries are missing, `fault` when one does not fit what is here. */
export type Folded = 'done' | 'gap' | 'fault'

/** The state that the server has confirmed: the fold of its journal, on this screen. */
export class Confirmed {
  #state: State | null = null
  #journalId: string | null = null
  #course: string | null = null
  #version = 0

  get state(): State | null {
    return this.#state
  }

  get journalId(): string | null {
    return this.#journalId
  }

  get course(): string | null {
    return this.#course
  }

  /** What a tap says that this screen was showing. */
  get seen(): Pick<Command, 'seenSeq' | 'seenCourse'> {
    return { seenSeq: this.#state?.seq ?? 0, ...(this.#course ? { seenCourse: this.#course } : {}) }
  }

  /** Whether the state here is of the journal and the course that the server has. */
  isOf({ journalId, course }: Welcome): boolean {
    return journalId === this.#journalId && course === this.#course
  }

  /** Changes whenever the state does. */
  get version(): number {
    return this.#version
  }

  /** Takes in what the server says at the beginning of a contact: the state of another journal or course goes first. */
  welcome({ journalId, course, state, entries, seq }: Welcome): Folded {
    if (journalId !== this.#journalId || course !== this.#course) this.#state = null
    this.#journalId = journalId
    this.#course = course
    this.#version += 1
    if (state !== null) this.#state = fromJson(state)
    this.#state ??= emptyState()
    const folded = this.fold(entries)
    if (folded !== 'done') return folded
    return this.#state.seq === seq ? 'done' : 'gap'
  }

  /** Applies the entries that are new; those known already are passed over. */
  fold(entries: readonly Entry[]): Folded {
    const state = this.#state
    if (state === null) return 'gap'
    if (entries.length > 0) this.#version += 1
    for (const entry of entries) {
      if (entry.seq <= state.seq) continue
      if (entry.seq > state.seq + 1) return 'gap'
      try {
        applyEntry(state, entry)
      } catch {
        return 'fault'
      }
    }
    return 'done'
  }

  /** Whether the server's hash is this state's; null when it is of another moment. */
  agrees(seq: number, hash: string): boolean | null {
    if (this.#state === null || this.#state.seq !== seq) return null
    return hashState(this.#state) === hash
  }
}
