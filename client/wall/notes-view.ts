import type { Note } from '../../shared-core/day/said.ts'
import type { NoteId } from '../../shared-core/ids.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { NoteWords } from '../words/notes.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { wrapText } from './text-lines.ts'

/** Notes of the last shift, oldest first, as many as there is room for; a touch clears one. */
export interface NotesView {
  readonly box: Box
  readonly title: string
  readonly items: readonly NoteItem[]
  readonly rest: string
}

export interface NoteItem {
  readonly id: NoteId
  readonly lines: readonly string[]
  /** For those who listen. */
  readonly name: string
}

export interface NotesInput {
  readonly notes: readonly Note[]
  readonly words: NoteWords
  readonly box: Box
  readonly sizes: TextSizes
}

const LINE = 1.2
/** Around a note's words, both sides together, in sizes of small text; the styles have the same. */
export const NOTE_PAD = { up: 0.7, across: 1, between: 0.35 } as const

export function notesView({ notes, words, box, sizes }: NotesInput): NotesView {
  const { labelPx, minPx } = sizes
  const room = { roomPx: box.width - NOTE_PAD.across * minPx, fontPx: labelPx, weight: 'strong' } as const
  const items = notes.map(({ id, text }) => ({ id, lines: wrapText(text, room), name: words.clearOf(text) }))
  const heightOf = ({ lines }: NoteItem) => lines.length * labelPx * LINE + (NOTE_PAD.up + NOTE_PAD.between) * minPx
  let leftPx = box.height - headingHeight(minPx)
  let shown = 0
  for (const item of items) {
    const restPx = shown + 1 < items.length ? minPx * LINE : 0
    if (heightOf(item) + restPx > leftPx) break
    leftPx -= heightOf(item)
    shown += 1
  }
  const rest = items.length - shown
  return { box, title: words.title, items: items.slice(0, shown), rest: rest === 0 ? '' : words.more(rest) }
}
