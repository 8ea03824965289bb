import { useState } from 'preact/hooks'
import type { Note } from '../../shared-core/day/said.ts'
import type { NoteId } from '../../shared-core/ids.ts'
import type { NoteWords } from '../words/notes.ts'
import { Key } from './key.tsx'
import { NoteRow } from './note-row.tsx'
import { NotesSheet } from './notes-sheet.tsx'

export interface NotesStripProps {
  /** Oldest first. */
  readonly notes: readonly Note[]
  readonly words: NoteWords
  readonly onClear: (noteId: NoteId) => void
  readonly onWrite: (text: string) => void
  /** How many there is room for; the others are in the sheet. 3 when left out. */
  readonly most?: number | undefined
}

const MOST = 3

/** Notes from the last shift, each cleared by a touch, and the key to write one. The sheet that it opens lies over the page. */
export function NotesStrip({ notes, words, onClear, onWrite, most = MOST }: NotesStripProps) {
  const [isOpen, setOpen] = useState(false)
  const shown = notes.slice(0, most)
  const rest = notes.length - shown.length
  return (
    <section class="notes-strip" aria-label={words.title}>
      {shown.map((note) => (
        <NoteRow key={note.id} note={note} words={words} onClear={onClear} />
      ))}
      <div class="key-group">
        <Key label={words.write} detail={rest === 0 ? undefined : words.more(rest)} onPress={() => setOpen(true)} />
      </div>
      {isOpen && (
        <NotesSheet notes={notes} words={words} onClear={onClear} onWrite={onWrite} onClose={() => setOpen(false)} />
      )}
    </section>
  )
}
