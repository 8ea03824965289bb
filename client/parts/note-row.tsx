import type { Note } from '../../shared-core/day/said.ts'
import type { NoteId } from '../../shared-core/ids.ts'
import type { NoteWords } from '../words/notes.ts'
import { Key } from './key.tsx'

export interface NoteRowProps {
  readonly note: Note
  readonly words: NoteWords
  readonly onClear: (noteId: NoteId) => void
}

/** A note, when it was written, and the key that clears it. */
export function NoteRow({ note, words, onClear }: NoteRowProps) {
  return (
    <div class="note-row" data-note={note.id}>
      <div class="note-text">
        {note.text}
        <span class="note-from">{words.from(note.atMs)}</span>
      </div>
      <div class="note-clear">
        <Key label={words.clear} name={words.clearOf(note.text)} onPress={() => onClear(note.id)} />
      </div>
    </div>
  )
}
