import type { Load } from '../../shared-core/day/state.ts'
import type { LoadId } from '../../shared-core/ids.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import type { Box } from './layout.ts'
import type { RowText } from './oven-row.ts'
import { rowText } from './oven-row.ts'
import type { SetRows } from './rows-fit.ts'
import { rowsThatFit, rowWidth, TEXT_GAPS } from './rows-fit.ts'

/** The oven as the wall paints it: as many shelves as there is room for, those that need somebody first. */
export interface OvenView extends SetRows {
  /** Shelves that there is no room for, in words; "" when all are shown. */
  readonly others: string
  /** The acts on show, by the keys of the core's acts; loads that nobody calls for have none. */
  readonly onShow: readonly string[]
}

export interface OvenInput {
  readonly keys: readonly ShelfKey[]
  readonly loads: ReadonlyMap<LoadId, Load>
  readonly nowMs: EpochMs
  readonly words: Words
  readonly wall: WallWords
  readonly naming: Naming
  readonly box: Box
  readonly sizes: TextSizes
}

export function ovenView(input: OvenInput): OvenView {
  const { keys } = input
  const rows = rowTexts(input)
  // A hearth's loads lie on one floor and are told apart by what is in them only.
  const needContents = new Set(keys.map((key) => key.shelfId)).size < keys.length
  const { shown, ...set } = rowsThatFit(
    rows,
    keys.map(({ atMs }) => atMs),
    input,
    needContents,
  )
  return {
    ...set,
    others: othersText(keys, shown, input),
    onShow: shown.flatMap((index) => actKeyOf(keys[index])),
  }
}

/** A name that leaves no room for its ring and time gives way to the shelf's; what is in it then stands below all the same. */
function rowTexts(input: OvenInput): readonly RowText[] {
  const { keys, box, sizes } = input
  const named = keys.map((key) => rowText(key, input))
  const roomPx = box.width - sizes.actPx * (NAMED_RING + TEXT_GAPS)
  const isRoom = named.every((row) => rowWidth(row, 'wide', sizes.actPx) <= roomPx)
  return isRoom ? named : keys.map((key) => rowText(key, { ...input, naming: 'shelf' }))
}

const NAMED_RING = 1.9

function othersText(keys: readonly ShelfKey[], shown: readonly number[], { words, wall, nowMs }: OvenInput) {
  const hidden = keys.filter((_, index) => !shown.includes(index))
  if (hidden.length === 0) return ''
  const times = hidden.flatMap(({ atMs }) => atMs ?? [])
  const first = times.reduce<EpochMs | null>((least, atMs) => (least === null || atMs < least ? atMs : least), null)
  const when = first === null ? '' : words.times.when({ atMs: first, status: first > nowMs ? 'coming' : 'due' }, nowMs)
  return wall.otherShelves(hidden.length, when)
}

/** The act that the core calls by this key; see `nextActs`. */
function actKeyOf(key: ShelfKey | undefined): readonly string[] {
  if (key === undefined) return []
  if (key.act !== 'load') return key.loadId === null ? [] : [`${key.act}:${key.loadId}`]
  return key.plannedId === null || key.atMs === null ? [] : [`load:${key.plannedId}`]
}
