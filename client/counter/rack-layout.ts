import { epochMs } from '../../shared-core/units.ts'
import type { Weight } from '../parts/text-width.ts'
import { textWidthPx } from '../parts/text-width.ts'
import type { CounterRodWords, CounterWords } from '../words/counter.ts'
import type { CounterSizes } from './counter-sizes.ts'

/** Where rods stand, from the glass and the names alone: a count that changes must not move a rod. */
export interface RackLayout {
  /** `glass`: pages with arrow keys. `long`: one page that is longer than the glass. */
  readonly form: 'glass' | 'long'
  readonly columns: number
  readonly rows: number
  readonly perPage: number
  readonly pages: number
  readonly cellPx: number
  readonly rowPx: number
  readonly rowGapPx: number
  readonly padPx: number
  readonly rodPx: { readonly width: number; readonly height: number }
  readonly maxRings: number
  readonly plankPx: number
  readonly nameLines: 1 | 2
  /** Where the arrow keys stand: beside the rack, on a phone under it. */
  readonly pagesLie: 'down' | 'across'
}

export interface RackRoom {
  readonly widthPx: number
  readonly heightPx: number
  readonly form: 'glass' | 'long'
}

const COLUMNS_MAX = 8
/** Lower rods are no picture any more. In sizes of a name. */
const ROD_LEAST = 4
/** Higher ones say no more. */
const ROD_MOST = 11
/** In sizes of a name. */
const ROD_WIDEST = 3.4
const LINE = 1.2
/** Line heights beside the rod; also in the style. */
const BESIDE_NUMBER_LINE = 1.02
const BESIDE_TEXT_LINE = 1.05
/** Between "about" and its number, in ems of the word; also in the style. */
const ABOUT_GAP = 0.35

/**
 * Lays the rack out: as many columns as the widest texts allow, as many rows as still leave rods to see; what does not
 * fit goes to another page. Fewer rods are spread evenly.
 * @param names of all rods, on every page
 */
export function rackLayout(
  names: readonly string[],
  room: RackRoom,
  sizes: CounterSizes,
  words: CounterWords,
): RackLayout {
  const onePage = layoutIn(names, room, { sizes, words })
  if (room.form === 'long' || onePage.pages === 1) return onePage
  const arrowsPx = sizes.keyPx + sizes.gapPx
  const less = sizes.isPhone ? { heightPx: room.heightPx - arrowsPx } : { widthPx: room.widthPx - arrowsPx }
  return layoutIn(names, { ...room, ...less }, { sizes, words })
}

interface Parts {
  readonly sizes: CounterSizes
  readonly words: CounterWords
}

function layoutIn(names: readonly string[], room: RackRoom, parts: Parts): RackLayout {
  const { sizes } = parts
  const padPx = Math.round(sizes.namePx * 0.25)
  const columnsMax = columnsThatFit(names, room, { ...parts, padPx })
  const rowGapPx = Math.round(sizes.namePx * 0.35)
  const leastPx = heightOf(Math.max(Math.round(sizes.namePx * ROD_LEAST), besideHeight(sizes)), 2, sizes)
  const rowsMax = Math.max(1, Math.floor((room.heightPx + rowGapPx) / (leastPx + rowGapPx)))
  const count = Math.max(1, names.length)
  const rowsAll = Math.ceil(count / columnsMax)
  const rows = room.form === 'long' ? rowsAll : Math.min(rowsMax, rowsAll)
  const columns = rowsAll <= rows ? Math.ceil(count / rows) : columnsMax
  const cellPx = Math.floor(room.widthPx / columns)
  const nameLines = names.every((name) => wide(name, sizes.namePx, 'strong') <= cellPx - 2 * padPx) ? 1 : 2
  const evenPx = Math.floor((room.heightPx - (rows - 1) * rowGapPx) / rows)
  const mostPx = heightOf(Math.round(sizes.namePx * ROD_MOST), nameLines, sizes)
  const rowPx = room.form === 'long' ? leastPx : Math.min(evenPx, mostPx)
  const rodHeight = rowPx - heightOf(0, nameLines, sizes)
  return {
    form: room.form,
    columns,
    rows,
    perPage: columns * rows,
    pages: Math.ceil(count / (columns * rows)),
    cellPx,
    rowPx,
    rowGapPx,
    padPx,
    rodPx: { width: rodWidthIn(cellPx, padPx, parts), height: rodHeight },
    maxRings: Math.min(12, Math.max(6, Math.floor(rodHeight / (sizes.namePx * 0.5)))),
    plankPx: plankOf(sizes),
    nameLines,
    pagesLie: sizes.isPhone ? 'across' : 'down',
  }
}

function rodWidth({ namePx }: CounterSizes): number {
  return Math.round(namePx * 2.3)
}

/** Wider where the cell has room beside it for the longest text in one line. */
function rodWidthIn(cellPx: number, padPx: number, { sizes, words: { counter } }: Parts): number {
  const known = counter.rod.known({ how: 'counted', atMs: SOME_TIME, isNow: false })
  const knownPx = wide(known, sizes.quietPx) + Math.ceil(LONGER_HOUR * sizes.quietPx)
  const besidePx = Math.max(knownPx, aboutWidth(counter.rod, sizes))
  const spare = cellPx - 3 * padPx - besidePx
  return Math.max(rodWidth(sizes), Math.min(spare, Math.round(sizes.namePx * ROD_WIDEST)))
}

/** Beside a rod stand what is kept, the number, and how it is known in two lines. */
function besideHeight({ numberPx, quietPx }: CounterSizes): number {
  return Math.ceil(numberPx * BESIDE_NUMBER_LINE + 3 * quietPx * BESIDE_TEXT_LINE)
}

function plankOf({ namePx }: CounterSizes): number {
  return Math.round(namePx * 0.36)
}

/** A rod, the plank, the name, and two lines of text. */
function heightOf(rodPx: number, nameLines: 1 | 2, sizes: CounterSizes): number {
  const texts = nameLines * sizes.namePx * LINE + 2 * sizes.quietPx * LINE
  return rodPx + plankOf(sizes) + Math.ceil(texts + sizes.namePx * 0.4)
}

function columnsThatFit(
  names: readonly string[],
  room: RackRoom,
  { sizes, words, padPx }: Parts & { readonly padPx: number },
): number {
  const { namePx, quietPx, numberPx } = sizes
  const below = widestBelow(words).map(
    ({ text, weight, clocks = 1 }) => wide(text, quietPx, weight) + Math.ceil(clocks * LONGER_HOUR * quietPx),
  )
  const named = names.map((name) => Math.max(...nameLinesOf(name, namePx).map((line) => wide(line, namePx, 'strong'))))
  const { rod } = words.counter
  const known = [rod.known({ how: 'counted', atMs: SOME_TIME, isNow: false }), rod.kept(88), rod.dayOld(88)]
  const besideTexts = known.flatMap((text) => text.split(' '))
  const beside = [
    aboutWidth(rod, sizes),
    wide('888', numberPx, 'strong'),
    ...besideTexts.map((word) => wide(word, quietPx)),
  ]
  const leastPx = Math.max(...below, ...named, rodWidth(sizes) + padPx + Math.max(...beside)) + 2 * padPx
  return Math.min(COLUMNS_MAX, Math.max(1, Math.floor(room.widthPx / leastPx)))
}

/** A number of two digits that is not known to the piece, in one line. */
function aboutWidth(rod: CounterRodWords, { quietPx, numberPx }: CounterSizes): number {
  return wide(rod.about, quietPx) + Math.ceil(ABOUT_GAP * quietPx) + wide('88', numberPx)
}

/** Some instant, to measure what is said of one: its clock time has at least one digit of the hour. */
const SOME_TIME = epochMs(0)
/** "12:59" has a digit more than "6:00". In ems; digits are all as wide. */
const LONGER_HOUR = 0.632

function widestBelow({ counter: { rod } }: CounterWords): readonly { text: string; weight: Weight; clocks?: number }[] {
  const quiet = [rod.mayBeGone, rod.mayNotReach, rod.lastsToClose, rod.aboutLeft(88), rod.none]
  const timed = [rod.goneAbout(SOME_TIME), rod.soldOut(SOME_TIME), rod.mayRunOut(SOME_TIME)]
  const strong = [
    rod.noMore,
    ...(['cooling', 'oven', 'planned'] as const).map((from) => rod.coming(144, SOME_TIME, from)),
  ]
  return [
    { text: rod.noneBetween(SOME_TIME, SOME_TIME), weight: 'regular', clocks: 2 },
    ...[...quiet, ...timed].map((text) => ({ text, weight: 'regular' as const })),
    ...strong.map((text) => ({ text, weight: 'strong' as const })),
  ]
}

/** A name in one line or two, parted where the longer line is shortest. @example "Multigrain 1" / "with more" */
export function nameLinesOf(name: string, fontPx: number): readonly string[] {
  const words = name.split(' ')
  const splits = words
    .slice(1)
    .map((_, index) => [words.slice(0, index + 1).join(' '), words.slice(index + 1).join(' ')])
  const widest = (lines: readonly string[]) => Math.max(...lines.map((line) => wide(line, fontPx, 'strong')))
  return splits.reduce<readonly string[]>((best, lines) => (widest(lines) < widest(best) ? lines : best), [name])
}

function wide(text: string, fontPx: number, weight: Weight = 'regular'): number {
  return Math.ceil(textWidthPx(text, fontPx, weight))
}
