import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import type { DueStatus, LineActDue } from '../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import { capitalised } from '../words/joined.ts'
import type { WallWords } from '../words/wall.ts'
import type { WallDoughWords } from '../words/wall-dough.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import type { Words } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import { actInSentence } from './act-name.ts'
import type { Box } from './layout.ts'
import type { RoomNames } from './room-act-name.ts'
import { roomActInSentence } from './room-act-name.ts'
import { fits, widthOf } from './text-lines.ts'
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
  /** Of the dough room. */
  readonly room: readonly RoomAct[]
  /** Of the kitchen. */
  readonly kitchenActs: readonly KitchenActDue[]
  readonly made: Pick<WallKitchenWords, 'acts'>
  readonly dough: WallDoughWords
  readonly shown: RoomNames | null
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
  const { flash, wall, box, sizes, nowMs, words } = input
  const roomPx = box.width - barMarkPx(sizes) - sizes.minPx
  if (flash !== null) {
    const fontPx = widthOf(flash, sizes.headlinePx, 'strong') <= roomPx ? sizes.headlinePx : sizes.actPx
    return { state: 'done', lines: [{ strong: flash, rest: '' }], fontPx, after: '', onShow: [] }
  }
  const [next, ...following] = saidActs(input)
  if (next === undefined) {
    return {
      state: 'none',
      lines: [{ strong: '', rest: wall.bar.nothing }],
      fontPx: sizes.actPx,
      after: '',
      onShow: [],
    }
  }
  const rest =
    next.status === 'coming' && next.atMs - nowMs > FAR_MS ? words.times.at(next.atMs) : words.times.when(next, nowMs)
  const set = setNamed(next, rest, roomPx, sizes)
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

/** An act of the line or of the dough room, as the bar says it. */
interface SaidInBar {
  readonly key: string
  readonly name: string
  /** The same in fewer words, where there are such. */
  readonly short: string
  /** What a guest must not get; "" nearly always. */
  readonly allergy: string
  readonly atMs: EpochMs
  readonly status: DueStatus
}

/** Whoever is due on the line within so long is not sent to the dough room; what is further ahead there waits too. */
const LINE_FIRST_MS = 2 * 60_000
const ROOM_AHEAD_MS = 15 * 60_000

/**
 * The line's acts and those of the second menu's oven as they come; what is to be done in the dough room and by hand in
 * the kitchen after those of the next two minutes. A quiet line leaves the bar to them.
 */
function saidActs(input: BarInput): readonly SaidInBar[] {
  const { acts, room, dough, shown, words, naming, nowMs } = input
  const line = acts.map((act): SaidInBar => {
    const name = actInSentence(act, words, naming)
    return { ...act, name, short: name, allergy: '' }
  })
  if (shown === null) return line
  const hot = withOven(line, acts, input)
  const near = acts.length === 0 ? room : room.filter(({ atMs }) => atMs - nowMs <= ROOM_AHEAD_MS)
  const said = near.map((act): SaidInBar => {
    const name = roomActInSentence(act, shown, dough)
    return { ...act, name, short: name, allergy: '' }
  })
  const place = hot.findIndex(({ atMs }) => atMs > nowMs + LINE_FIRST_MS)
  const before = place < 0 ? hot : hot.slice(0, place)
  const after = [...hot.slice(before.length), ...said, ...saidOfKitchen(input, (act) => !isOfOven(act))]
  return [...before, ...after.sort((one, other) => roomed(one, nowMs) - roomed(other, nowMs))]
}

/** The second menu's oven is the line's: its acts stand among the line's, what burns by its time. */
function withOven(line: readonly SaidInBar[], acts: readonly LineActDue[], input: BarInput): readonly SaidInBar[] {
  const oven = saidOfKitchen(input, isOfOven)
  if (oven.length === 0) return line
  const waiting = new Set([
    ...acts.filter(({ act }) => !LINE_BURNS.has(act)).map(({ key }) => key),
    ...input.kitchenActs.filter(({ act }) => act === 'in').map(({ key }) => key),
  ])
  const handsAtMs = ({ key, atMs }: SaidInBar) =>
    waiting.has(key) ? Math.max(atMs, input.nowMs + HANDS_BUSY_MS) : atMs
  return [...line, ...oven].sort((one, other) => handsAtMs(one) - handsAtMs(other))
}

const LINE_BURNS: ReadonlySet<LineActDue['act']> = new Set<LineActDue['act']>(['lift', 'flip', 'out'])
/** As the core orders the line's acts: hands that begin something else are not back before. */
const HANDS_BUSY_MS = 30_000

function isOfOven({ act }: KitchenActDue): boolean {
  return act === 'in' || act === 'turn' || act === 'move' || act === 'out'
}

function saidOfKitchen(
  { kitchenActs, made }: BarInput,
  isMeant: (act: KitchenActDue) => boolean,
): readonly SaidInBar[] {
  return kitchenActs.filter(isMeant).map((act): SaidInBar => {
    const [name, short] = made.acts.act(act)
    return { ...act, name, short, allergy: made.acts.allergy(act) }
  })
}

/** Late and due alike, in the order in which they came. */
function roomed({ atMs }: SaidInBar, nowMs: EpochMs): number {
  return Math.max(atMs, nowMs)
}

export function barMarkPx({ headlinePx }: TextSizes): number {
  return Math.round(headlinePx * 1.5)
}

/**
 * An act with its allergy: all in one line, else the allergy in a line of its own below it, as large as acts are. Only what
 * is wider than the bar gives way to fewer words, and an allergy to how many others there are.
 */
function setNamed(next: SaidInBar, rest: string, roomPx: number, sizes: TextSizes) {
  const { allergy, status } = next
  const strongOf = (text: string) => (status === 'late' ? `${capitalised(text)},` : capitalised(text))
  const named = (text: string) => (allergy === '' ? strongOf(text) : `${capitalised(text)} – ${allergy}`)
  const whole = setNext({ strong: named(next.name), rest }, roomPx, sizes)
  if (whole.widthPx <= roomPx && (allergy === '' || whole.lines.length === 1)) return whole
  if (allergy === '') return setNext({ strong: strongOf(next.short), rest }, roomPx, sizes)
  const fontPx = sizes.actPx
  const line = { roomPx, fontPx, weight: 'strong' } as const
  const long = { strong: strongOf(next.name), rest }
  const act = fits(`${long.strong} ${rest}`, line) ? long : { strong: strongOf(next.short), rest }
  const said = fitList(allergy.split(', '), line, (count) => `+${count}`)
  const lines = [act, { strong: said, rest: '' }]
  const widthPx = Math.max(...lines.map(({ strong, rest: when }) => widthOf(`${strong} ${when}`, fontPx, 'strong')))
  return { lines, fontPx, widthPx }
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

function followingText(acts: readonly SaidInBar[], { wall }: BarInput, room: { roomPx: number; fontPx: number }) {
  let after = ''
  let count = 0
  for (const act of acts.slice(0, FOLLOWING_MAX)) {
    const said = wall.following(act.name)
    const longer = after === '' ? said : `${after}, ${said}`
    if (widthOf(longer, room.fontPx) > room.roomPx) break
    after = longer
    count += 1
  }
  return { after, count }
}
