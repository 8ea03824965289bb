import { useState } from 'preact/hooks'
import { NOTE_CHARACTERS_MAX } from '../../../shared-core/day/note-text.ts'
import { notesWaiting } from '../../../shared-core/day/notes.ts'
import type { DeskWords } from '../../words/desk.ts'
import { noteWords } from '../../words/notes.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'

/** Notes from one shift to the next: written, read, cleared. */
export function NotesPanel(parts: DeskParts) {
  return (
    <Panel part="notes" title={noteWords(parts.words).title}>
      <Notes {...parts} />
    </Panel>
  )
}

export function Notes({ store, state, words }: DeskParts) {
  const say = noteWords(words)
  const notes = notesWaiting(state)
  return (
    <>
      {notes.length === 0 ? (
        <p class="desk-quiet">{say.none}</p>
      ) : (
        <ul class="desk-notes">
          {notes.map(({ id, text, atMs }) => (
            <li key={id}>
              <span class="desk-note">
                {text} <span class="desk-quiet">{say.from(atMs)}</span>
              </span>
              <button
                type="button"
                aria-label={say.clearOf(text)}
                onClick={() => store.send({ type: 'clearNote', noteId: id })}
              >
                {say.clear}
              </button>
            </li>
          ))}
        </ul>
      )}
      <NoteForm words={words} onWrite={(text) => store.send({ type: 'writeNote', text }) !== null} />
      <p class="desk-quiet">{say.caution}</p>
    </>
  )
}

function NoteForm({ words, onWrite }: { readonly words: DeskWords; readonly onWrite: (text: string) => boolean }) {
  const say = noteWords(words)
  const [text, setText] = useState('')
  const isEmpty = text.trim() === ''
  return (
    <form
      class="desk-line"
      onSubmit={(event) => {
        event.preventDefault()
        if (!isEmpty && onWrite(text.trim())) setText('')
      }}
    >
      <input
        class="desk-long"
        value={text}
        maxLength={NOTE_CHARACTERS_MAX}
        placeholder={say.field}
        aria-label={say.field}
        autocomplete="off"
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" disabled={isEmpty}>
        {say.leave}
      </button>
    </form>
  )
}
