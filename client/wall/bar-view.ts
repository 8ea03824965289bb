import type { LineActDue } from '../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import { actInSentence, actName } from './act-name.ts'
import type { Box } from './layout.ts'
import { widthOf } from './text-lines.ts'
import { FAR_MS } from './when-text.ts'

/** The bar across the room: the next act, and what follows as far as it fits. */
export interface BarView {
  readonly state: 'none' | 'act' | 'late' | 'done'
  /** One line, or the act and its time below each other. */
  readonly lines: readonly BarText[]
  readonly fontPx: number
  readonly after: string
  /** The keys of the acts on show here. */
  readonly onShow: readonly string[]
}

export interface BarText {
  readonly strong: string
  readonly rest: string
}

export interface BarInput {
  readonly acts: readonly LineActDue[]
  readonly nowMs: EpochMs
  /** What a pedal has just done, or why not; null most of the time. */
  readonly flash: string | null
  readonly words: Words
  readonly wall: WallWords
  readonly naming: Naming
  readonly box: Box
  readonly sizes: TextSizes
}

/** Acts named after the first one. */
const FOLLOWING_MAX = 3

export function barView(input: BarInput): BarView {
  const { acts, flash, wall, box, sizes, nowMs, words } = input
  const roomPx = box.width - barMarkPx(sizes) - sizes.minPx
  if (flash !== null) {
    const fontPx = widthOf(flash, sizes.headlinePx, 'strong') <= roomPx ? sizes.headlinePx : sizes.actPx
    return { state: 'done', lines: [{ strong: flash, rest: '' }], fontPx, after: '', onShow: [] }
  }
  const [next, ...following] = acts
  if (next === undefined) {
    return {
      state: 'none',
      lines: [{ strong: '', rest: wall.bar.nothing }],
      fontPx: sizes.actPx,
      after: '',
      onShow: [],
    }
  }
  const name = actName(next, words, input.naming)
  const strong = next.status === 'late' ? `${name},` : name
  const rest =
    next.status === 'coming' && next.atMs - nowMs > FAR_MS ? words.times.at(next.atMs) : words.times.when(next, nowMs)
  const set = setNext({ strong, rest }, roomPx, sizes)
  const { after, count } = followingText(following, input, {
    roomPx: roomPx - set.widthPx - sizes.minPx,
    fontPx: sizes.minPx,
  })
  return {
    state: next.status === 'late' ? 'late' : 'act',
    lines: set.lines,
    fontPx: set.fontPx,
    after,
    onShow: [next, ...following.slice(0, count)].map((act) => act.key),
  }
}

export function barMarkPx({ headlinePx }: TextSizes): number {
  return Math.round(headlinePx * 1.5)
}

/** The act as large as it goes: a headline, else one line at the size of acts, else two. Never smaller, never cut. */
function setNext({ strong, rest }: BarText, roomPx: number, { headlinePx, actPx }: TextSizes) {
  const width = (fontPx: number) => widthOf(strong, fontPx, 'strong') + widthOf(` ${rest}`, fontPx)
  for (const fontPx of [headlinePx, actPx]) {
    if (width(fontPx) <= roomPx) return { lines: [{ strong, rest }], fontPx, widthPx: width(fontPx) }
  }
  const fontPx = actPx
  const lines = [
    { strong, rest: '' },
    { strong: '', rest },
  ]
  return { lines, fontPx, widthPx: Math.max(widthOf(strong, fontPx, 'strong'), widthOf(rest, fontPx)) }
}

function followingText(
  acts: readonly LineActDue[],
  { words, wall, naming }: BarInput,
  room: { roomPx: number; fontPx: number },
) {
  let after = ''
  let count = 0
  for (const act of acts.slice(0, FOLLOWING_MAX)) {
    const said = wall.following(actInSentence(act, words, naming))
    const longer = after === '' ? said : `${after}, ${said}`
    if (widthOf(longer, room.fontPx) > room.roomPx) break
    after = longer
    count += 1
  }
  return { after, count }
}
