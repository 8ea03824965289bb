import type { State } from '../../shared-core/day/state.ts'
import type { PlannedId } from '../../shared-core/ids.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { boardsNow } from '../../shared-core/line/boards.ts'
import { needsAhead } from '../../shared-core/line/dips.ts'
import type { NextDip } from '../../shared-core/line/kettle.ts'
import { kettleNow } from '../../shared-core/line/kettle.ts'
import { boilsAgainAt } from '../../shared-core/line/kettle-care.ts'
import type { LookAhead } from '../../shared-core/line/look-ahead.ts'
import { lookAhead } from '../../shared-core/line/look-ahead.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import { shelfKeys } from '../../shared-core/line/shelf-keys.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { firstDipText, reasonTexts } from './advice-texts.ts'
import type { DipsView } from './dips-view.ts'
import { boiledNeeds, dipsView } from './dips-view.ts'
import type { KettleView } from './kettle-view.ts'
import { kettleView } from './kettle-view.ts'
import type { OvenView } from './oven-view.ts'
import { ovenView } from './oven-view.ts'
import { careText } from './shift-view.ts'
import { widthOf } from './text-lines.ts'
import type { Setting } from './view.ts'

export interface HeadingNote {
  readonly text: string
  readonly isTrouble: boolean
}

/** The line at work: kettle on the left, oven on the right. */
export interface LineView {
  readonly kettleHeading: string
  readonly kettleNote: string
  /** The note asks for something: the water's care, or that it boils again. */
  readonly isCareNote: boolean
  /** `ring`: somebody taps the kettle, or something boils; `dips`: the plan is all that is known. */
  readonly kettle:
    | { readonly form: 'ring'; readonly view: KettleView }
    | { readonly form: 'dips'; readonly view: DipsView }
  readonly ovenHeading: string
  /** Beside the oven's heading: wet boards, shelves that have no room, what stands at a rotating oven's door. */
  readonly ovenNotes: readonly HeadingNote[]
  readonly oven: OvenView
  readonly onShow: readonly string[]
}

export function lineView(state: State, shop: Shop, set: Setting & { readonly acts: readonly LineActDue[] }): LineView {
  const { nowMs, wall, layout, sizes } = set
  const ahead = lookAhead(state, nowMs)
  const keys = shelfKeys(state, nowMs)
  const oven = ovenView({ ...set, keys, loads: state.loads, box: layout.oven })
  const boards = boardsNow(state, nowMs)
  const boardsText = boards.over > 0 ? wall.boardsShort(boards.over) : wall.boardsFree(boards.free)
  const kettle = kettleOf(state, shop, ahead, set)
  const headingPx = layout.kettle.width - widthOf(wall.kettle, sizes.minPx, 'strong') - sizes.minPx
  const careNote = careText(state, nowMs, {
    shift: set.shift,
    nextDoughId: kettleNow(state, nowMs).next?.doughId ?? null,
    room: { roomPx: headingPx, fontPx: sizes.minPx, weight: 'strong' },
  })
  const nextId = kettleNow(state, nowMs).next?.plannedId ?? null
  const nextNote =
    kettle.view.form === 'dips' && kettle.view.view.dips.length > 0 ? nextText(nextId, headingPx, set) : ''
  const notes = [
    { text: boardsText, isTrouble: boards.over > 0 },
    { text: oven.others, isTrouble: false },
    { text: doorText(keys, set), isTrouble: false },
  ]
  return {
    kettleHeading: wall.kettle,
    kettleNote: careNote === '' ? nextNote : careNote,
    isCareNote: careNote !== '',
    kettle: kettle.view,
    ovenHeading: wall.oven,
    ovenNotes: notesThatFit(notes, layout.oven.width - widthOf(wall.oven, sizes.minPx, 'strong'), sizes.minPx),
    oven,
    onShow: [...oven.onShow, ...kettle.onShow],
  }
}

/** Where nobody taps the kettle: when the next load's dips begin, by the plan, else that they come next. */
function nextText(id: PlannedId | null, roomPx: number, set: Setting): string {
  const text = firstDipText(id, set)
  return text !== '' && widthOf(text, set.sizes.minPx) <= roomPx ? text : set.wall.next
}

function kettleOf(state: State, shop: Shop, ahead: LookAhead | null, set: Parameters<typeof lineView>[2]) {
  const { nowMs, layout, acts } = set
  const now = kettleNow(state, nowMs)
  const isTapped = ahead !== null && (ahead.tapped.has('dip') || ahead.tapped.has('lift'))
  if (!isTapped && now.in.length === 0) {
    const needs = ahead === null ? [] : boiledNeeds(needsAhead(state, shop, ahead.allotments, nowMs))
    const reason = reasonTexts(needs[0]?.expected.planned.id ?? null, needs[0]?.lines ?? [], set)
    return {
      view: { form: 'dips', view: dipsView({ ...set, needs, reason, box: layout.kettle }) } as const,
      onShow: [],
    }
  }
  const rack = standingNow(state, nowMs).filter((one) => one.stage === 'rack')
  const recovery = { atMs: boilsAgainAt(state, nowMs), wholeMs: shop.kettle.recoverMs }
  const reason = reasonTexts(now.next?.plannedId ?? null, now.next?.becomes ?? [], set)
  const view = kettleView({ ...set, now, rack, recovery, reason, cycleMs: shop.kettle.cycleMs, box: layout.kettle })
  const [boiling] = now.in
  const isShown = (act: LineActDue) =>
    boiling === undefined
      ? act.act === 'dip' && isDip(act, now.next)
      : act.act === 'lift' && act.batchId === boiling.batchId
  return {
    view: { form: 'ring', view } as const,
    onShow: acts
      .filter(isShown)
      .slice(0, 1)
      .map(({ key }) => key),
  }
}

function isDip({ doughId, varietyId, pieces }: LineActDue, next: NextDip | null): boolean {
  return next !== null && doughId === next.doughId && varietyId === next.varietyId && pieces === next.pieces
}

function doorText(keys: readonly ShelfKey[], { wall }: Setting): string {
  const door = keys.find((key) => key.atDoor)
  return door === undefined ? '' : wall.atDoor(door.shelfName)
}

/** Space before each note, in parts of its size. */
export const NOTE_GAP = 0.8

/** As many of the notes as fit beside the heading, in their order. */
function notesThatFit(notes: readonly HeadingNote[], roomPx: number, fontPx: number): readonly HeadingNote[] {
  let leftPx = roomPx
  return notes.filter(({ text }) => {
    const neededPx = widthOf(text, fontPx) + NOTE_GAP * fontPx
    if (text === '' || neededPx > leftPx) return false
    leftPx -= neededPx
    return true
  })
}
