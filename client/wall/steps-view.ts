import type { StepList } from '../../shared-core/day/step-list.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { StepView } from '../parts/step-view.ts'
import { stepView } from '../parts/step-view.ts'
import type { ShiftWords } from '../words/shift.ts'
import type { Words } from '../words/words.ts'
import type { Box } from './layout.ts'
import { shortened, widthOf } from './text-lines.ts'

/** The opening or the changeover as a list across the room: what is not done, soonest first, as much as there is room for. */
export interface StepsView {
  /** What it counts to: "first load in 42 min". */
  readonly title: string
  readonly titlePx: number
  readonly progress: string
  readonly rows: readonly StepRow[]
  readonly rowPx: number
  readonly namePx: number
  /** "2 more"; "" when all are shown. */
  readonly rest: string
  /** What was done last, with who and when, in one line; "" when nothing was. */
  readonly done: string
}

export interface StepRow {
  readonly key: string
  readonly tone: 'plain' | 'act' | 'late'
  readonly name: string
  readonly who: string
  readonly when: string
}

export interface StepsInput {
  readonly list: StepList
  readonly which: 'opening' | 'changeover'
  readonly nowMs: EpochMs
  readonly words: Words
  readonly shift: ShiftWords
  readonly box: Box
  readonly sizes: TextSizes
}

/** Heights in parts of a font size; spaces in parts of the small one. */
const ROW = 1.3
const TITLE = 1.25
const SMALL = 1.3
const GAP = 0.6
/** Mark before a row's words, with the space after it, and the stripes right of a late one, in sizes of acts. */
export const MARK = { width: 0.9, stripe: 0.85 } as const

export function stepsView(input: StepsInput): StepsView {
  const { list, which, nowMs, shift, box, sizes } = input
  const { actPx, labelPx, minPx } = sizes
  const views = list.lines.map((line) => stepView(line, input))
  const open = views.filter(({ tone }) => tone !== 'done')
  const done = doneText(views, input)
  const title = shift.steps.toZero(which, list.zeroAtMs, nowMs)
  const isTitleWide = widthOf(title, actPx, 'strong') > box.width
  const titlePx = isTitleWide ? labelPx : actPx
  const rowPx = Math.round(actPx * ROW)
  const roomPx = box.height - titlePx * TITLE - (done === '' ? 0 : minPx * SMALL)
  const all = Math.floor(roomPx / rowPx)
  const most = open.length <= all ? open.length : Math.max(0, Math.floor((roomPx - minPx * SMALL) / rowPx))
  const shown = open.slice(0, most)
  const isNarrow = shown.some((view) => rowWidth(view, actPx, sizes) > box.width)
  const namePx = isNarrow ? labelPx : actPx
  return {
    title,
    titlePx,
    progress: progressThatFits(input, widthOf(title, titlePx, 'strong')),
    rows: shown.map((view) => rowOf(view, namePx, input)),
    rowPx,
    namePx,
    rest: open.length > shown.length ? shift.steps.more(open.length - shown.length) : '',
    done,
  }
}

function progressThatFits({ list, shift, box, sizes }: StepsInput, takenPx: number): string {
  const { doneCount, lines } = list
  const text = doneCount === lines.length ? shift.steps.allDone : shift.steps.progress(doneCount, lines.length)
  return widthOf(text, sizes.minPx) + sizes.minPx * 2 + takenPx <= box.width ? text : ''
}

function rowWidth({ name, who, whenShort }: StepView, namePx: number, { actPx, minPx }: TextSizes): number {
  const whoPx = who === '' ? 0 : widthOf(who, minPx) + GAP * minPx
  return namesLeft(actPx, minPx) + widthOf(name, namePx, 'strong') + whoPx + widthOf(whenShort, actPx)
}

/** What a row takes besides its words. */
function namesLeft(actPx: number, minPx: number): number {
  return (MARK.width + MARK.stripe) * actPx + 2 * GAP * minPx
}

/** Who it is gives way before the step's own name loses its end. */
function rowOf({ key, tone, name, who, whenShort }: StepView, namePx: number, { box, sizes }: StepsInput): StepRow {
  const { actPx, minPx } = sizes
  const roomPx = box.width - namesLeft(actPx, minPx) - widthOf(whenShort, actPx)
  const whoPx = who === '' ? 0 : widthOf(who, minPx) + GAP * minPx
  const isBoth = widthOf(name, namePx, 'strong') + whoPx <= roomPx
  return {
    key,
    tone: tone === 'done' ? 'plain' : tone,
    name: isBoth ? name : shortened(name, { roomPx, fontPx: namePx, weight: 'strong' }),
    who: isBoth ? who : '',
    when: whenShort,
  }
}

function doneText(views: readonly StepView[], { shift, box, sizes }: StepsInput): string {
  const texts = views
    .filter(({ tone }) => tone === 'done')
    .sort((one, other) => (other.line.doneAtMs ?? 0) - (one.line.doneAtMs ?? 0))
    .map(({ name, when, who }) => [`${name} ${when}`, who].filter((text) => text !== '').join(' '))
  const roomPx = box.width * 0.98
  // A number alone would read as if so many were still to do.
  if (widthOf(texts[0] ?? '', sizes.minPx) > roomPx) return ''
  return fitList(texts, { roomPx, fontPx: sizes.minPx }, shift.steps.more)
}
