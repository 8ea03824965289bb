import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { AfternoonAhead } from '../parts/afternoon.ts'
import { lastLoadTexts } from '../parts/afternoon.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import type { TextSizes } from '../parts/legibility.ts'
import { stepView } from '../parts/step-view.ts'
import { afternoonWords } from '../words/afternoon.ts'
import type { NoteWords } from '../words/notes.ts'
import type { ShiftWords } from '../words/shift.ts'
import type { EmptyKind } from '../words/wall.ts'
import type { WallDoughWords } from '../words/wall-dough.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import type { Words } from '../words/words.ts'
import type { AfternoonView } from './afternoon-view.ts'
import { afternoonView } from './afternoon-view.ts'
import type { DoughView } from './dough-view.ts'
import { doughView, isRoomBusy } from './dough-view.ts'
import type { Box, WallLayout } from './layout.ts'
import type { LineView } from './line-view.ts'
import { lineView } from './line-view.ts'
import type { MadeView } from './made-view.ts'
import { isKitchenBusy, madeView } from './made-view.ts'
import type { NotesView } from './notes-view.ts'
import { notesView } from './notes-view.ts'
import type { ShiftNow } from './shift-view.ts'
import { changeText } from './shift-view.ts'
import type { StandingView } from './standing-view.ts'
import { standingView } from './standing-view.ts'
import type { StatusView } from './status-view.ts'
import type { StepsView } from './steps-view.ts'
import { stepsView } from './steps-view.ts'
import { wrapText } from './text-lines.ts'
import type { Setting } from './view.ts'

/** What fills the middle of the wall. */
export type BodyView =
  | { readonly kind: 'line'; readonly line: LineView; readonly steps: StepsBeside | null }
  | { readonly kind: 'steps'; readonly box: Box; readonly steps: StepsView }
  | { readonly kind: 'afternoon'; readonly box: Box; readonly afternoon: AfternoonView }
  | { readonly kind: 'dough'; readonly dough: DoughView }
  | { readonly kind: 'kitchen'; readonly made: MadeView }
  | { readonly kind: 'standing'; readonly box: Box; readonly standing: StandingView }
  | {
      readonly kind: 'empty'
      readonly box: Box
      readonly ringPx: number
      readonly title: readonly string[]
      readonly text: readonly string[]
    }

/** A list beside the line, where kettle or oven have nothing to show. */
export interface StepsBeside {
  readonly place: 'kettle' | 'oven'
  readonly view: StepsView
}

export type BodySetting = Setting & {
  readonly acts: readonly LineActDue[]
  readonly ends: ShiftNow
  readonly room: readonly RoomAct[]
  readonly dough: WallDoughWords
  readonly kitchen: KitchenLook
  readonly made: WallKitchenWords
}

/** Dips and loads that are due sooner than this want kettle and oven on the wall, even while both are empty. */
const LINE_AHEAD_MS = 30 * 60_000

/**
 * The line as soon as anything is in the kettle, on boards or in the oven, or will soon be; before the first load the
 * opening list has the room of what has nothing to show yet. Else what is made to order, the list of the changeover,
 * what is left for the afternoon, what stands; else what to do first.
 */
export function bodyView(state: State, shop: Shop, set: BodySetting): BodyView {
  const { acts, nowMs, ends } = set
  const isBusy =
    state.loads.size > 0 || [...state.batches.values()].some(({ stage }) => stage === 'kettle' || stage === 'boards')
  const isNear = acts.some(({ act, atMs }) => act !== 'pull' && act !== 'board' && atMs - nowMs <= LINE_AHEAD_MS)
  const opening = ends.opening !== null && ends.opening.doneCount < ends.opening.lines.length ? ends.opening : null
  const box = besideNotes(set)
  if (opening !== null && !isBusy) {
    return { kind: 'steps', box, steps: stepsView({ ...set, list: opening, which: 'opening', box }) }
  }
  if (isBusy || isNear) return lineBody(state, shop, set)
  if (isKitchenBusy(set.kitchen, nowMs)) {
    return { kind: 'kitchen', made: madeView({ ...set, state, shop, box, padPx: set.layout.padPx }) }
  }
  if (ends.changeList !== null) {
    return { kind: 'steps', box, steps: stepsView({ ...set, list: ends.changeList, which: 'changeover', box }) }
  }
  if (isRoomBusy(state, set.room, nowMs)) return { kind: 'dough', dough: doughView({ ...set, state, shop, box }) }
  if (ends.afternoon !== null) {
    return { kind: 'afternoon', box, afternoon: afternoonView({ ...set, change: ends.afternoon, box }) }
  }
  const standing = standingNow(state, nowMs)
  if (standing.length > 0) return { kind: 'standing', box, standing: standingView({ ...set, standing, box }) }
  return emptyBody(state.day === null ? 'no-day' : 'idle', set, box)
}

/** The line; with a list in place of an oven before its first load, or of a kettle after its last dip. */
function lineBody(state: State, shop: Shop, set: BodySetting): BodyView {
  const { ends, layout, acts } = set
  const line = lineView(state, shop, set)
  const { opening, changeList } = ends
  const isKettleIdle =
    ![...state.batches.values()].some(({ stage }) => stage === 'kettle') && !acts.some(({ act }) => act === 'dip')
  if (opening !== null && state.loads.size === 0 && opening.doneCount < opening.lines.length) {
    const view = stepsView({ ...set, list: opening, which: 'opening', box: belowHeading(layout.oven, set) })
    return { kind: 'line', line: without(line, line.oven.onShow), steps: { place: 'oven', view } }
  }
  if (changeList !== null && isKettleIdle) {
    const view = stepsView({ ...set, list: changeList, which: 'changeover', box: belowHeading(layout.kettle, set) })
    const ofKettle = line.onShow.filter((key) => !line.oven.onShow.includes(key))
    return { kind: 'line', line: without(line, ofKettle), steps: { place: 'kettle', view } }
  }
  return { kind: 'line', line, steps: null }
}

/** What cannot be read is not on show: no pedal does it. */
function without(line: LineView, hidden: readonly string[]): LineView {
  return { ...line, onShow: line.onShow.filter((key) => !hidden.includes(key)) }
}

function belowHeading(box: Box, { sizes }: Setting): Box {
  const headPx = Math.round(sizes.minPx * HEADING)
  return { ...box, top: box.top + headPx, height: box.height - headPx }
}

/** A heading's height in sizes of small text; the styles have the same. */
const HEADING = 1.3

/** The notes' share of the middle. */
const NOTES_SHARE = 0.36

function besideNotes({ layout: { middle, padPx }, ends }: BodySetting): Box {
  if (ends.notes.length === 0) return middle
  return { ...middle, width: Math.round(middle.width * (1 - NOTES_SHARE)) - padPx }
}

/** Notes that are to be read now, right of whatever the wall shows; the line itself keeps all of the room. */
export function notesBeside(
  body: BodyView,
  ends: ShiftNow | null,
  { layout, sizes, say }: { readonly layout: WallLayout; readonly sizes: TextSizes; readonly say: NoteWords },
): NotesView | null {
  if (ends === null || ends.notes.length === 0 || body.kind === 'line') return null
  const { middle } = layout
  const width = Math.round(middle.width * NOTES_SHARE)
  const box = { ...middle, left: middle.left + middle.width - width, width }
  return notesView({ notes: ends.notes, words: say, box, sizes })
}

interface StatusParts {
  /** What the whole room should know of the plan, see `roomTexts`. */
  readonly told: readonly string[]
  readonly ahead: AfternoonAhead | null
  readonly nowMs: EpochMs
  readonly words: Words
  readonly shift: ShiftWords
  readonly page: { readonly widthPx: number }
  readonly sizes: TextSizes
}

/** The changeover in one line across the wall, while it is near. */
export function changeStatus(
  ends: ShiftNow | null,
  { nowMs, words, shift, page, sizes, ahead, told }: StatusParts,
): StatusView | null {
  if (ends === null || ends.change === null) return null
  const room = { roomPx: page.widthPx - 2.4 * sizes.minPx, fontPx: sizes.minPx, weight: 'strong' } as const
  const line = ends.changeList?.lines.find(({ status }) => status !== 'done')
  const step = line === undefined ? null : stepView(line, { words, shift, nowMs })
  const next = step === null ? '' : `${step.name} ${step.whenShort}`
  const wanted = ahead === null || ahead.more.length === 0 ? [] : lastLoadTexts(ahead, afternoonWords(words))
  const more = told.length > 0 ? told : wanted
  return { text: changeText(ends.change, next, { shift, nowMs, room, more }), isTrouble: false }
}

export function emptyBody(kind: EmptyKind, { wall, sizes }: Setting, box: Box): BodyView {
  const { title, text } = wall.empty[kind]
  const ringPx = Math.round(Math.min(box.height, box.width) * EMPTY_RING)
  const roomPx = box.width - ringPx - sizes.labelPx * EMPTY_GAP_EMS
  return {
    kind: 'empty',
    box,
    ringPx,
    title: wrapText(title, { roomPx, fontPx: sizes.headlinePx, weight: 'strong' }),
    text: wrapText(text, { roomPx, fontPx: sizes.labelPx }),
  }
}

/** The empty wall's ring in parts of its place, and the space right of it. */
const EMPTY_RING = 0.6
const EMPTY_GAP_EMS = 1.2
