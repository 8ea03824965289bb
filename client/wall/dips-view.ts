import type { Need } from '../../shared-core/line/dips.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { TitleView } from './kettle-view.ts'
import { titleOf } from './kettle-view.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'

/** The next dips of the planned loads, for a shop whose kettle nobody taps. */
export interface DipsView {
  readonly dips: readonly DipView[]
  /** The words for when none is planned; "" otherwise. */
  readonly none: string
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
export function dipsView({ needs, words, wall, box, sizes }: DipsInput): DipsView {
  const { minPx, actPx, labelPx } = sizes
  let leftPx = box.height - headingHeight(minPx)
  const dips: DipView[] = []
  for (const need of needs) {
    const stuff = { doughId: need.doughId, varietyId: need.varietyId, pieces: need.pieces }
    const title = titleOf(stuff, words, sizes, box.width)
    const namePx = title.isOneLine ? 0 : title.nameLines.length * labelPx
    leftPx -= (namePx + actPx + minPx) * LINE
    if (leftPx < 0) break
    leftPx -= GAP * minPx
    const becomes = need.lines.map((line) => wall.become(line))
    dips.push({
      key: `${need.expected.planned.id} ${need.varietyId ?? need.doughId} ${need.dipsLeft}`,
      title,
      becomes: fitList(becomes, { roomPx: box.width * 0.98, fontPx: minPx }, wall.more),
    })
  }
  return { dips, none: needs.length === 0 ? wall.noDips : '' }
}

/** The dips among needs that are worked back from the planned loads. */
export function boiledNeeds(needs: readonly Need[]): readonly Need[] {
  return needs.filter((need) => need.boiled)
}
