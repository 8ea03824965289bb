import type { Need } from '../../shared-core/line/dips.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { TitleView } from './kettle-view.ts'
import { titleOf } from './kettle-view.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { fits } from './text-lines.ts'

/** The next dips of the planned loads, for a shop whose kettle nobody taps. */
export interface DipsView {
  readonly dips: readonly DipView[]
  /** The words for when none is planned; "" otherwise. */
  readonly none: string
  /** Why the next load is called for, where there is room; "" else. */
  readonly why: string
}

export interface DipView {
  readonly key: string
  readonly title: TitleView
  /** What its pieces become, in one line. */
  readonly becomes: string
}

export interface DipsInput {
  /** Boiled ones, soonest first. */
  readonly needs: readonly Need[]
  /** Why the next dip's load is called for, from all of it to the shortest. */
  readonly reason: readonly string[]
  readonly words: Words
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
}

const LINE = 1.2
const GAP = 0.5

/**
 * As many dips as there is room for. When each is due is not said: nobody taps the kettle, so the board does not know
 * how far it is; the order and the amounts are what the plan can tell.
 */
export function dipsView(input: DipsInput): DipsView {
  const { needs, words, wall, box, sizes } = input
  const { minPx } = sizes
  const why = whyText(input)
  let leftPx = box.height - headingHeight(minPx) - (why === '' ? 0 : WHY * minPx)
  const dips: DipView[] = []
  for (const need of needs) {
    leftPx -= heightOf(need, input)
    if (leftPx < 0) break
    leftPx -= GAP * minPx
    const becomes = need.lines.map((line) => wall.become(line))
    dips.push({
      key: `${need.expected.planned.id} ${need.varietyId ?? need.doughId} ${need.dipsLeft}`,
      title: titleOf(need, words, sizes, box.width),
      becomes: fitList(becomes, { roomPx: box.width * 0.98, fontPx: minPx }, wall.more),
    })
  }
  return { dips, none: needs.length === 0 ? wall.noDips : '', why }
}

/** A line of it and the space below, in sizes of small text. */
const WHY = LINE + GAP

/** Where it leaves room for the dip that it is said of. */
function whyText(input: DipsInput): string {
  const { needs, reason, box, sizes } = input
  const [first] = needs
  const leftPx = box.height - headingHeight(sizes.minPx) - WHY * sizes.minPx
  if (first === undefined || heightOf(first, input) > leftPx) return ''
  return reason.find((text) => fits(text, { roomPx: box.width, fontPx: sizes.minPx })) ?? ''
}

function heightOf(need: Need, { words, sizes, box }: DipsInput): number {
  const title = titleOf(need, words, sizes, box.width)
  const namePx = title.isOneLine ? 0 : title.nameLines.length * sizes.labelPx
  return (namePx + sizes.actPx + sizes.minPx) * LINE
}

/** The dips among needs that are worked back from the planned loads. */
export function boiledNeeds(needs: readonly Need[]): readonly Need[] {
  return needs.filter((need) => need.boiled)
}
