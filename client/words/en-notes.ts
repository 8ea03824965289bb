import type { NoteWords } from './notes.ts'
import type { Words } from './words.ts'

export function enNotes({ times }: Words): NoteWords {
  return {
    title: 'Notes',
    count: (notes) => `${notes} ${notes === 1 ? 'note' : 'notes'}`,
    from: (atMs) => `from ${times.clock(atMs)}`,
    none: 'No notes. What the next shift should know goes here.',
    write: 'Write a note',
    field: 'For the next shift, e.g. rye slow',
    leave: 'Leave the note',
    empty: 'nothing written yet',
    caution: 'No customers’ names or phone numbers here: everybody reads it, and it stays on record.',
    clear: 'Clear',
    clearOf: (text) => `Clear: ${text}`,
    back: 'Back',
    more: (notes) => `${notes} more`,
  }
}
