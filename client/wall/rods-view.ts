import type { Line } from '../../shared-core/day/state.ts'
import type { RodAhead } from '../../shared-core/stock/prospect.ts'
import { isShort, rodsThatMatter } from '../../shared-core/stock/show.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Box } from './layout.ts'
import { fits, nameLines, widthOf } from './text-lines.ts'

/** The few rods that change a decision, as many as there is room for, and how many others are fine. */
export interface RodsView {
  readonly rods: readonly RodView[]
  readonly rodPx: { readonly width: number; readonly height: number }
  readonly gapPx: number
  /** Lines of words beside each rod, besides its count; a name may take two of them. */
  readonly lines: number
  /** Two lines at the right end; empty when there are no others. */
  readonly others: readonly string[]
  /** In place of drawn rods: what matters in one line of words, or that there is nothing; "" otherwise. */
  readonly text: string
}

export interface RodView {
  readonly key: string
  readonly nameLines: readonly string[]
  readonly pieces: number
  /** What comes next, as the text says. */
  readonly onTheWay: number
  /** They are dough still. */
  readonly isPlanned: boolean
  readonly kept: number
  readonly isTrouble: boolean
  /** When it is gone, for how long where more comes too late, or that it is. */
  readonly detail: string
  /** What comes and when, or that nothing does; "" when there is nothing to say. */
  readonly more: string
  readonly textPx: number
  readonly spoken: string
}

export interface RodsInput {
  readonly rods: readonly RodAhead[]
  readonly nowMs: EpochMs
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
  readonly form: 'drawn' | 'line'
  /** Lines of words beside a rod, besides its count. */
  readonly lines: number
}

/** A rod that is gone sooner than this, with nothing coming before, is trouble. */
const TROUBLE_MS = 60 * 60_000
/** What is not sure to last this long is not called fine. */
const FINE_MS_MIN = 5 * 60_000
/** Rods are spread over the board they stand on, but not so far that they stop being a row. In sizes of small text. */
const SPREAD_MAX = 2.5
/** No screen shows more: the eye would have to look for the one that matters. */
const RODS_MAX = 8

export function rodsView(input: RodsInput): RodsView {
  const { rods, nowMs, box, sizes } = input
  const height = Math.round(box.height - sizes.minPx * 0.35)
  const rodPx = { width: Math.round(Math.min(height * 0.38, sizes.minPx * 2.1)), height }
  const gapPx = Math.round(sizes.minPx * 0.6)
  const shape = { rodPx, gapPx, lines: input.lines }
  if (input.form === 'line') return { ...shape, rods: [], others: [], text: lineText(input) }
  for (let most = RODS_MAX; most > 0; most--) {
    const chosen = rodsThatMatter(rods, nowMs, most)
    if (chosen.rods.length === 0) break
    const views = chosen.rods.map((rod) => rodView(rod, input))
    const others = othersLines(chosen.othersFine, input)
    const othersPx = others.length === 0 ? 0 : Math.max(...others.map((line) => widthOf(line, sizes.minPx))) + gapPx
    const rodsPx = views.reduce((sum, view) => sum + rodPx.width + sizes.minPx * 0.3 + view.textPx, 0)
    const spare = box.width - rodsPx - (views.length - 1) * gapPx - othersPx
    if (spare >= 0 || most === 1) {
      const wider = Math.floor(Math.min(Math.max(0, spare) / views.length, sizes.minPx * SPREAD_MAX))
      return { ...shape, gapPx: gapPx + wider, rods: views, others, text: '' }
    }
  }
  return { ...shape, rods: [], others: [], text: nothingText(input) }
}

function rodView(rod: RodAhead, input: RodsInput): RodView {
  const { nowMs, wall, sizes } = input
  const { name, forSale, likely, kept, onTheWay, goneSinceMs } = rod
  const { goneAtMs } = rod.ahead
  const [next] = onTheWay
  const coming = onTheWay.reduce((sum, { pieces }) => sum + pieces, 0)
  const isSoon = isShort(rod) && goneAtMs !== null && goneAtMs - nowMs < TROUBLE_MS
  const isGone = likely === 0 && (goneSinceMs !== null || forSale > 0)
  const isTrouble = isGone || (likely > 0 && isSoon)
  const detail = detailOf(rod, wall)
  const more = next === undefined ? (isTrouble ? wall.rods.noMore : '') : wall.rods.more(next.pieces, next.readyAtMs)
  const words = wordsThatFit({ name, detail, more, isGone: likely === 0 }, input)
  const { minPx, countPx } = sizes
  const textPx = Math.max(
    widthOf(String(likely), countPx, 'strong'),
    widthOf(words.detail, minPx),
    widthOf(words.more, minPx),
    ...words.nameLines.map((line) => widthOf(line, minPx, 'strong')),
  )
  const spoken = wall.rods.spoken(name, likely, coming)
  const drawn = { onTheWay: next?.pieces ?? 0, isPlanned: next?.from === 'planned' }
  return { key: rod.varietyId, ...words, ...drawn, pieces: likely, kept, isTrouble, textPx, spoken }
}

/** A name wider than this stands in two lines where there are three, so that three rods do not become two. */
const NAME_EMS = 6.5

/** Name, when it is gone, what comes: in the lines that there are, the one that says more stays. */
function wordsThatFit(
  { name, detail, more, isGone }: { name: string; detail: string; more: string; isGone: boolean },
  { sizes: { minPx }, lines }: RodsInput,
): Pick<RodView, 'nameLines' | 'detail' | 'more'> {
  const roomPx = Math.max(NAME_EMS * minPx, widthOf(detail, minPx), widthOf(more, minPx))
  const isLong = widthOf(name, minPx, 'strong') > roomPx
  const broken = nameLines(
    name,
    { roomPx: roomPx * 1.25, fontPx: minPx, weight: 'strong' },
    isLong && lines > 2 ? 2 : 1,
  )
  // One line only: a name that is cut could be another's, so it keeps its width.
  const names = broken.length === 1 && isLong ? [name] : broken
  const left = lines - names.length
  if (left >= 2) return { nameLines: names, detail, more }
  const isMoreTold = detail === '' || (isGone && more !== '')
  return isMoreTold ? { nameLines: names, detail: '', more } : { nameLines: names, detail, more: '' }
}

/** What lasts for sure is not said: from across the room only what changes an act is read. */
function detailOf({ forSale, likely, ahead, goneSinceMs, onTheWay: [next] }: RodAhead, { rods }: WallWords): string {
  if (likely === 0 && forSale > 0) return rods.mayBeGone
  if (likely === 0) return goneSinceMs === null ? rods.none : rods.goneSince(goneSinceMs)
  const { goneAtMs, isGap, doubt } = ahead
  if (goneAtMs !== null)
    return isGap && next !== undefined ? rods.noneFrom(goneAtMs, next.readyAtMs) : rods.goneAt(goneAtMs)
  if (doubt === null) return ''
  return doubt.before === 'more' ? rods.mayNotReach : rods.mayRunOut(doubt.fromMs)
}

function othersLines(
  { count, untilMs }: { count: number; untilMs: EpochMs | null },
  { nowMs, wall: { rods } }: RodsInput,
): readonly string[] {
  if (count === 0) return []
  if (untilMs === null) return [rods.others(count), rods.othersFine]
  return untilMs - nowMs < FINE_MS_MIN ? [rods.others(count)] : [rods.others(count), rods.fineTo(untilMs)]
}

function lineText(input: RodsInput): string {
  const { rods, nowMs, wall, box, sizes } = input
  const views = rodsThatMatter(rods, nowMs, RODS_MAX).rods.map((rod) => rodView(rod, input))
  if (views.length === 0) return nothingText(input)
  const texts = views.map(
    ({ nameLines: lines, pieces, detail }) => `${lines.join(' ')} ${pieces}${detail === '' ? '' : ` ${detail}`}`,
  )
  return fitList(texts, { roomPx: box.width, fontPx: sizes.minPx }, wall.rods.others)
}

function nothingText({ rods, wall, box, sizes }: RodsInput): string {
  const first = firstComing(rods)
  if (first === null) return wall.rods.nothingOut
  const text = `${wall.rods.nothingOut}, ${wall.rods.firstAt(first.line, first.atMs)}`
  return fits(text, { roomPx: box.width, fontPx: sizes.labelPx }) ? text : wall.rods.nothingOut
}

function firstComing(rods: readonly RodAhead[]): { readonly line: Line; readonly atMs: EpochMs } | null {
  const all = rods.flatMap(({ varietyId, onTheWay: [next] }) =>
    next === undefined ? [] : [{ line: { varietyId, pieces: next.pieces }, atMs: next.readyAtMs }],
  )
  return all.reduce<(typeof all)[number] | null>(
    (first, one) => (first === null || one.atMs < first.atMs ? one : first),
    null,
  )
}
