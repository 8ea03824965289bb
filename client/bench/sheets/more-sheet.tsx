import type { State } from '../../../shared-core/day/state.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import { shelfKeys } from '../../../shared-core/line/shelf-keys.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { settingsWords } from '../../words/settings.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import type { OpenSheet } from './open-sheet.ts'

export interface MoreSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly open: (sheet: OpenSheet) => void
  /** Locks the glass so that it can be wiped. */
  readonly onWipe: () => void
}

/** What is not large on the line's own screen: all acts, what was not planned, and what went wrong. */
export function MoreSheet(props: MoreSheetProps) {
  const { words, sizes, room, open, nowMs, state, onWipe } = props
  const { more, pieces, done } = words.bench
  const { shift, notes } = words
  const { steps, care } = shift
  const { comfort } = settingsWords(words)
  const goes = (id: string, sheet: OpenSheet, label: string, detail?: string): GridItem => ({
    id,
    label,
    details: detail === undefined ? [] : [detail],
    onPress: () => open(sheet),
  })
  const items = [
    goes('line', { kind: 'on-line' }, more.line, more.lineDetail),
    goes('unplanned', { kind: 'unplanned' }, more.unplanned, more.unplannedDetail),
    goes('skip', { kind: 'skip' }, more.skip, more.skipDetail),
    goes('pull', { kind: 'dough', job: 'pull' }, pieces.pull, more.otherDough),
    goes('dip', { kind: 'dough', job: 'dip' }, pieces.dip, more.otherDough),
    goes('board', { kind: 'board', lines: [] }, pieces.board),
    goes('carry-in', { kind: 'dough', job: 'carryIn' }, pieces.carryIn, more.carryInDetail),
    goes('shape', { kind: 'dough', job: 'shape' }, pieces.shape, more.shapeDetail),
    goes('dough-room', { kind: 'dough-room' }, more.doughRoom, more.doughRoomDetail),
    ...(props.shop.kitchenStations.size === 0
      ? []
      : [goes('kitchen', { kind: 'kitchen' }, more.kitchen, more.kitchenDetail)]),
    goes('opening', { kind: 'opening' }, steps.opening),
    goes('kettle', { kind: 'kettle' }, care.title),
    goes('changeover', { kind: 'changeover' }, steps.changeover),
    goes('notes', { kind: 'notes' }, notes.title, notes.count(state.notes.size)),
    { id: 'wipe', label: comfort.wipe, details: [comfort.wipeDetail], onPress: onWipe },
    goes('done', { kind: 'done' }, done.title, done.others),
    goes('settings', { kind: 'settings' }, more.settings),
  ]
  return (
    <Sheet {...props} title={more.title} detail={words.times.clock(nowMs)}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
      />
    </Sheet>
  )
}

/** Something unplanned: first the shelf, then what is on it. */
export function UnplannedSheet(props: MoreSheetProps) {
  const { state, words, sizes, room, open, nowMs } = props
  const { more, contents } = words.bench
  const free = new Set(shelfKeys(state, nowMs).flatMap((key) => (key.act === 'load' ? [key.shelfId] : [])))
  const item = (shelfId: ShelfId): GridItem => ({
    id: shelfId,
    label: words.acts.name({ act: 'load', shelfId }),
    refusal: free.has(shelfId) ? undefined : contents.taken,
    onPress: () => open({ kind: 'contents', start: { shelfId, loadId: null, plannedId: null, lines: [] } }),
  })
  const shelves = [...new Set(shelfKeys(state, nowMs).map((key) => key.shelfId))]
  return (
    <Sheet {...props} title={more.whichShelf}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={shelves.map(item)}
      />
    </Sheet>
  )
}

export function columnsOf({ room }: Pick<SheetParts, 'room'>): number {
  return Math.max(2, Math.floor((room.widthPx + room.gapPx) / (2.35 * room.keyPx + room.gapPx)))
}
