import type { EpochMs } from '../../shared-core/units.ts'
import { enNotes } from './en-notes.ts'
import { esNotes } from './es-notes.ts'
import type { Words } from './words.ts'

/** What is said around notes from one shift to the next. */
export interface NoteWords {
  readonly title: string
  /** @example "2 notes" */
  count(notes: number): string
  /** When it was written. @example "from 2:40" */
  from(atMs: EpochMs): string
  readonly none: string
  readonly write: string
  /** What the field is for, for those who listen and as its first words. */
  readonly field: string
  /** The key that leaves it for the others. */
  readonly leave: string
  /** Nothing is written yet. */
  readonly empty: string
  readonly caution: string
  readonly clear: string
  /** For those who listen. @example "Clear: rye slow" */
  clearOf(text: string): string
  readonly back: string
  /** Notes that there is no room for. @example "2 more" */
  more(notes: number): string
}

export function noteWords(words: Words): NoteWords {
  return words.language === 'en' ? enNotes(words) : esNotes(words)
}
