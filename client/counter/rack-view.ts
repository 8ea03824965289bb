import type { VarietyId } from '../../shared-core/ids.ts'
import { textWidthPx } from '../parts/text-width.ts'
import type { CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'
import type { CounterSizes } from './counter-sizes.ts'
import type { Hand } from './hand.ts'
import type { RackLayout } from './rack-layout.ts'
import { nameLinesOf } from './rack-layout.ts'
import type { RodText, RodTime } from './rod-text.ts'
import { rodText } from './rod-text.ts'

/** One rod as it is painted. */
export interface RodCell extends RodText {
  readonly varietyId: VarietyId
  readonly nameLines: readonly string[]
  /** What is likely for sale. */
  readonly pieces: number
  readonly keptPieces: number
  /** What comes next: the dashed rings are the pieces of which the text under them tells the time. */
  readonly onTheWay: number
  /** They are dough still. */
  readonly isPlanned: boolean
  readonly inHand: number
  /** While it is in hand this stands in place of how the number is known; "" otherwise. */
  readonly inHandText: string
  readonly spoken: string
}

export interface RackView {
  readonly cells: readonly RodCell[]
  readonly page: number
  readonly pages: number
}

export interface RackInput {
  readonly rods: readonly CounterRod[]
  readonly time: RodTime
  readonly hand: Hand
  readonly layout: RackLayout
  readonly sizes: CounterSizes
  readonly words: CounterWords
  /** A page that no longer exists counts as the last one. */
  readonly page: number
}

/** The rods of one page, in the order of the set-up: each has its place. */
export function rackView(input: RackInput): RackView {
  const { rods, layout } = input
  const page = Math.min(layout.pages - 1, Math.max(0, input.page))
  const shown = rods.slice(page * layout.perPage, (page + 1) * layout.perPage)
  return { cells: shown.map((rod) => rodCell(rod, input)), page, pages: layout.pages }
}

function rodCell(rod: CounterRod, { time, hand, layout, sizes, words }: RackInput): RodCell {
  const { varietyId, name, likely, within, kept } = rod
  const sumOf = (all: CounterRod['onTheWay']) => all.reduce((sum, { pieces }) => sum + pieces, 0)
  const planned = sumOf(rod.onTheWay.filter(({ from }) => from === 'planned'))
  const onTheWay = sumOf(rod.onTheWay) - planned
  const inHand = hand.find((line) => line.varietyId === varietyId)?.pieces ?? 0
  const isOneLine = textWidthPx(name, sizes.namePx, 'strong') <= layout.cellPx - 2 * layout.padPx
  const text = rodText(rod, time, words)
  return {
    ...text,
    varietyId,
    nameLines: isOneLine ? [name] : nameLinesOf(name, sizes.namePx),
    pieces: likely,
    keptPieces: kept,
    onTheWay: rod.onTheWay[0]?.pieces ?? 0,
    isPlanned: rod.onTheWay[0]?.from === 'planned',
    inHand,
    inHandText: inHand === 0 ? '' : words.counter.hand.inHand(inHand),
    spoken: words.counter.rod.spoken({ name, likely, within, kept, onTheWay, planned, known: text.known }),
  }
}
