import type { Act } from '../../../shared-core/day/commands.ts'
import { notesWaiting } from '../../../shared-core/day/notes.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { NoteWriting } from '../../parts/notes-sheet.tsx'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'
import { RowKey } from './steps-sheet.tsx'

export interface NotesPageProps extends SheetParts {
  readonly state: State
  readonly send: (act: Act) => void
}

/** Notes to the next shift: written with the tablet's own keyboard, cleared by a touch. */
export function NotesPage(props: NotesPageProps) {
  const { state, words, room, send } = props
  const { notes: say } = words
  const notes = notesWaiting(state)
  const items = notes.map(({ id, text, atMs }) => ({ id, title: text, texts: [say.from(atMs)] }))
  return (
    <Sheet {...props} title={say.title} detail={notes.length === 0 ? undefined : say.count(notes.length)}>
      <div class="bench-notes">
        <NoteWriting words={say} onWrite={(text) => send({ type: 'writeNote', text })} />
        <ListRows
          {...props}
          room={{ ...room, rows: Math.max(2, room.rows - 2), rowPx: room.keyPx }}
          items={items}
          nothing={say.none}
          keysOf={({ id, title }) => (
            <RowKey
              {...props}
              label={say.clear}
              name={say.clearOf(title)}
              onPress={() => send({ type: 'clearNote', noteId: id })}
            />
          )}
        />
      </div>
    </Sheet>
  )
}
