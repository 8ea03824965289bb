import type { State } from '../../shared-core/day/state.ts'
import { boardsNow } from '../../shared-core/line/boards.ts'
import { needsAhead } from '../../shared-core/line/dips.ts'
import { kettleNow } from '../../shared-core/line/kettle.ts'
import type { LookAhead } from '../../shared-core/line/look-ahead.ts'
import { lookAhead } from '../../shared-core/line/look-ahead.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import { shelfKeys } from '../../shared-core/line/shelf-keys.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { DipsView } from './dips-view.ts'
import { boiledNeeds, dipsView } from './dips-view.ts'
import type { KettleView } from './kettle-view.ts'
import { kettleView } from './kettle-view.ts'
import type { OvenView } from './oven-view.ts'
import { ovenView } from './oven-view.ts'
import { fits } from './text-lines.ts'
import type { Setting } from './view.ts'

/** The line at work: kettle on the left, oven on the right. */
export interface LineView {
  readonly kettleHeading: string
  /** `ring`: somebody taps the kettle, or something boils; `dips`: the plan is all that is known. */
  readonly kettle:
    | { readonly form: 'ring'; readonly view: KettleView }
    | { readonly form: 'dips'; readonly view: DipsView }
  readonly ovenHeading: string
  /** Beside the oven's heading: wet boards, what stands at a rotating oven's door, shelves that have no room. */
  readonly ovenNote: string
  readonly boardsShort: boolean
  readonly oven: OvenView
  readonly onShow: readonly string[]
}

export function lineView(state: State, shop: Shop, set: Setting): LineView {
  const { nowMs, wall, layout, sizes } = set
  const ahead = lookAhead(state, nowMs)
  const keys = shelfKeys(state, nowMs)
  const oven = ovenView({ ...set, keys, box: layout.oven })
  const boards = boardsNow(state, nowMs)
  const boardsText = boards.over > 0 ? wall.boardsShort(boards.over) : wall.boardsFree(boards.free)
  const kettle = kettleOf(state, shop, ahead, set)
  const door = doorText(keys, set)
  const room = { roomPx: layout.oven.width, fontPx: sizes.minPx }
  const notes = [boardsText, door, oven.others].filter((text) => text !== '')
  return {
    kettleHeading: wall.kettle,
    kettle: kettle.view,
    ovenHeading: wall.oven,
    ovenNote: notesThatFit(notes, oven.others, (text) => fits(`${wall.oven}   ${text}`, room)),
    boardsShort: boards.over > 0,
    oven,
    onShow: [...oven.onShow, ...kettle.onShow],
  }
}

function kettleOf(state: State, shop: Shop, ahead: LookAhead | null, set: Setting) {
  const { nowMs, layout } = set
  const now = kettleNow(state, nowMs)
  const isTapped = ahead !== null && (ahead.tapped.has('dip') || ahead.tapped.has('lift'))
  if (!isTapped && now.in.length === 0) {
    const needs = ahead === null ? [] : boiledNeeds(needsAhead(state, shop, ahead.allotments))
    return { view: { form: 'dips', view: dipsView({ ...set, needs, box: layout.kettle }) } as const, onShow: [] }
  }
  const rack = standingNow(state, nowMs).filter((one) => one.stage === 'rack')
  const view = kettleView({ ...set, now, rack, cycleMs: shop.kettle.cycleMs, box: layout.kettle })
  const [boiling] = now.in
  return { view: { form: 'ring', view } as const, onShow: boiling === undefined ? [] : [`lift:${boiling.batchId}`] }
}

function doorText(keys: readonly ShelfKey[], { wall }: Setting): string {
  const door = keys.find((key) => key.atDoor)
  return door === undefined ? '' : wall.atDoor(door.shelfName)
}

/** As many of the notes as fit beside the heading; that shelves are left out is said before all else. */
function notesThatFit(notes: readonly string[], others: string, isFitting: (text: string) => boolean): string {
  const join = (some: readonly string[]) => some.join(' · ')
  for (let count = notes.length; count > 0; count--) {
    const some = others === '' ? notes.slice(0, count) : [...notes.slice(0, count - 1), others]
    if (isFitting(join(some))) return join(some)
  }
  return ''
}
