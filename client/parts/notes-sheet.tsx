import { useState } from 'preact/hooks'
import { NOTE_CHARACTERS_MAX } from '../../shared-core/day/note-text.ts'
import { Key } from './key.tsx'
import { NoteRow } from './note-row.tsx'
import type { NotesStripProps } from './notes-strip.tsx'

export interface NotesSheetProps extends Omit<NotesStripProps, 'most'> {
  readonly onClose: () => void
}

/** All notes that wait, and a line to write one with the device's own keyboard. It lies over the page. */
export function NotesSheet({ notes, words, onClear, onWrite, onClose }: NotesSheetProps) {
  return (
    <section class="notes-sheet" role="dialog" aria-modal="true" aria-label={words.title}>
      <div class="notes-head">
        <h1>{words.title}</h1>
        <Key label={words.back} tone="strong" onPress={onClose} />
      </div>
      <NoteWriting words={words} onWrite={onWrite} />
      {notes.length === 0 && <p class="note-from">{words.none}</p>}
      {notes.map((note) => (
        <NoteRow key={note.id} note={note} words={words} onClear={onClear} />
      ))}
    </section>
  )
}

/** The line to write in, its caution, and the key that leaves the note; what was left is gone from the line. */
export function NoteWriting({ words, onWrite }: Pick<NotesSheetProps, 'words' | 'onWrite'>) {
  const [text, setText] = useState('')
  const isEmpty = text.trim() === ''
  const leave = () => {
    if (isEmpty) return
    onWrite(text.trim())
    setText('')
  }
  return (
    <form
      class="note-writing"
      onSubmit={(event) => {
        event.preventDefault()
        leave()
      }}
    >
      <input
        class="note-field"
        value={text}
        maxLength={NOTE_CHARACTERS_MAX}
        placeholder={words.field}
        aria-label={words.field}
        autocomplete="off"
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <Key label={words.leave} refusal={isEmpty ? words.empty : undefined} onPress={leave} />
      <p class="note-caution">{words.caution}</p>
    </form>
  )
}
