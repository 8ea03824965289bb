import type { NoteId } from '../../shared-core/ids.ts'
import type { NotesView } from './notes-view.ts'
import { NOTE_PAD } from './notes-view.ts'

export interface NotesPaneProps {
  readonly view: NotesView
  readonly onClear: (noteId: NoteId) => void
}

/** Notes on the wall, each of them a key that clears it. */
export function NotesPane({ view, onClear }: NotesPaneProps) {
  const style = {
    padding: `calc(${NOTE_PAD.up / 2} * var(--size-min)) calc(${NOTE_PAD.across / 2} * var(--size-min))`,
    marginBottom: `calc(${NOTE_PAD.between} * var(--size-min))`,
  }
  return (
    <>
      <h2 class="wall-heading">{view.title}</h2>
      {view.items.map(({ id, lines, name }) => (
        <button
          key={id}
          type="button"
          class="wall-one-note"
          style={style}
          aria-label={name}
          onClick={() => onClear(id)}
        >
          {lines.map((line) => (
            <span key={line} class="wall-one-note-line">
              {line}
            </span>
          ))}
        </button>
      ))}
      {view.rest !== '' && <div class="wall-quiet">{view.rest}</div>}
    </>
  )
}
