import type { ChangeoverNow } from '../../shared-core/day/changeover.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { ShiftWords } from '../words/shift.ts'
import type { Words } from '../words/words.ts'
import type { Box } from './layout.ts'
import { shortened, widthOf, wrapText } from './text-lines.ts'

/** What is left for the afternoon, in words; the rods stand below as ever. */
export interface AfternoonView {
  readonly title: readonly string[]
  /** In columns, filled one after the other. */
  readonly columns: readonly (readonly AfternoonItem[])[]
  readonly columnPx: number
  readonly itemPx: number
  readonly rest: string
  /** That none is baked after this. */
  readonly note: readonly string[]
}

export interface AfternoonItem {
  readonly key: string
  readonly name: string
  readonly count: string
}

export interface AfternoonInput {
  readonly change: Pick<ChangeoverNow, 'left'>
  readonly words: Words
  readonly shift: ShiftWords
  readonly box: Box
  readonly sizes: TextSizes
}

const ROW = 1.25
const LINE = 1.2
const COLUMN_GAP = 1.2
/** Columns as wide as a name and a count of usual length, in sizes of acts. */
const COLUMN_EMS = 9

/** As many varieties as there is room for, those of which most are left first where not all fit. */
export function afternoonView({ change, words, shift, box, sizes }: AfternoonInput): AfternoonView {
  const { left, noneAfter, nothingLeft } = shift.change
  const { actPx, labelPx, minPx } = sizes
  const isNothing = change.left.length === 0
  const title = wrapText(isNothing ? nothingLeft : left, { roomPx: box.width, fontPx: actPx, weight: 'strong' })
  const note = wrapText(noneAfter, { roomPx: box.width, fontPx: labelPx })
  const itemPx = Math.round(actPx * ROW)
  const roomPx = box.height - title.length * actPx * ROW - note.length * labelPx * LINE
  const columns = Math.max(1, Math.min(3, Math.floor(box.width / (COLUMN_EMS * actPx))))
  const columnPx = Math.floor((box.width - (columns - 1) * COLUMN_GAP * minPx) / columns)
  const rowsAll = Math.max(0, Math.floor(roomPx / itemPx))
  const isAll = change.left.length <= rowsAll * columns
  const rows = isAll ? rowsAll : Math.max(0, Math.floor((roomPx - minPx * LINE) / itemPx))
  const most = rows * columns
  const ordered = isAll ? change.left : [...change.left].sort((one, other) => other.pieces - one.pieces).slice(0, most)
  const items = ordered.map(({ varietyId, pieces }) => {
    const count = String(pieces)
    const room = { roomPx: columnPx - widthOf(` ${count}`, actPx, 'strong'), fontPx: actPx, weight: 'strong' } as const
    return { key: varietyId, name: shortened(words.names.variety(varietyId), room), count }
  })
  const perColumn = Math.max(1, Math.ceil(items.length / columns))
  return {
    title,
    columns: Array.from({ length: columns }, (_, n) => items.slice(n * perColumn, (n + 1) * perColumn)),
    columnPx,
    itemPx,
    rest: isAll ? '' : shift.steps.more(change.left.length - items.length),
    note,
  }
}
