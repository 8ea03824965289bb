import type { State } from '../../shared-core/day/state.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Rod } from '../../shared-core/stock/left.ts'
import { rods } from '../../shared-core/stock/left.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { clockText } from '../live/clock-text.ts'
import type { LiveState } from '../live/shop-store.ts'
import type { Panel, TextSizes } from '../parts/legibility.ts'
import { farthestDistanceM, wallSizes } from '../parts/legibility.ts'
import { rulerOfDay } from '../parts/ruler-of-day.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { SoundState } from '../parts/use-sound.ts'
import type { EmptyKind, WallWords } from '../words/wall.ts'
import { wallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import { namingOf } from './act-name.ts'
import type { BarView } from './bar-view.ts'
import { barView } from './bar-view.ts'
import type { WallLayout } from './layout.ts'
import { roomySizes, wallLayout } from './layout.ts'
import type { LineView } from './line-view.ts'
import { lineView } from './line-view.ts'
import type { RodsView } from './rods-view.ts'
import { rodsView } from './rods-view.ts'
import type { StandingView } from './standing-view.ts'
import { standingView } from './standing-view.ts'
import type { StatusView } from './status-view.ts'
import { statusView } from './status-view.ts'
import { widthOf, wrapText } from './text-lines.ts'

/** All that the wall shows at an instant: texts set into lines, lengths in CSS pixels. Pure; tests need no browser. */
export interface WallView {
  readonly sizes: TextSizes
  readonly layout: WallLayout
  readonly clock: string
  /** Below the clock: that this is a demo, that sound needs a touch. */
  readonly note: string
  readonly status: StatusView | null
  readonly ruler: RulerDay | null
  readonly body: BodyView
  readonly rods: RodsView | null
  readonly bar: BarView
  /** Soonest first, whether on show or not: what sounds. */
  readonly acts: readonly LineActDue[]
  /** The keys of the acts that can be read on the wall now: what a pedal may do. */
  readonly onShow: readonly string[]
}

export type BodyView =
  | { readonly kind: 'line'; readonly line: LineView }
  | { readonly kind: 'standing'; readonly standing: StandingView }
  | {
      readonly kind: 'empty'
      readonly ringPx: number
      readonly title: readonly string[]
      readonly text: readonly string[]
    }

export interface WallInput {
  readonly live: Pick<LiveState, 'shown' | 'connection' | 'notices' | 'nowMs' | 'shopClock' | 'demo' | 'settings'>
  /** What changes slowly, see `slowView`. */
  readonly slow: SlowView
  readonly localTime: (atMs: EpochMs) => string
  readonly panel: Panel
  /** The page's own size in CSS pixels: in full screen the panel's. */
  readonly page: { readonly widthPx: number; readonly heightPx: number }
  /** What a pedal has just done. */
  readonly flash: string | null
  readonly sound: SoundState
}

/** Stock and the day: they cost half of all the reckoning and change by the minute, so they need not follow every tick. */
export interface SlowView {
  readonly rods: readonly Rod[]
  readonly day: RulerDay | null
}

/** How often stock and day are reckoned while nothing happens. */
export const SLOW_MS = 5_000

export type SlowInput = Pick<LiveState, 'shown' | 'shopClock' | 'nowMs' | 'settings'>

export function slowView({ shown, shopClock, nowMs, settings }: SlowInput): SlowView {
  if (shown === null) return { rods: [], day: null }
  const atMs = epochMs(nowMs - (nowMs % SLOW_MS))
  const language = languageOf(settings.language, shown.shop)
  const clockTime = (ms: EpochMs) =>
    shopClock === null ? '' : clockText(shopClock, ms, shown.shop?.profile.clock ?? 12)
  const wall = wallWords(wordsFor(language, shown.shop, clockTime))
  return { rods: rods(shown, atMs), day: shopClock === null ? null : rulerOfDay(shown, atMs, shopClock, wall.ruler) }
}

export function wallView(input: WallInput): WallView {
  const { live, page, flash, slow } = input
  const { shown, nowMs, settings } = live
  const shop = shown?.shop ?? null
  const words = wordsFor(languageOf(settings.language, shop), shop, input.localTime)
  const wall = wallWords(words)
  const sizes = sizesOf(input)
  const status = statusView({ ...live, words, wall, widthPx: page.widthPx, sizes })
  const note = noteText(input, wall)
  const layout = wallLayout({ ...page, sizes, hasStatus: status !== null, noteWidthPx: widthOf(note, sizes.minPx) })
  const acts = shown === null || live.connection.phase === 'stale' ? [] : nextActs(shown, nowMs)
  const set = { nowMs, words, wall, layout, sizes, acts, naming: namingOf(shop) }
  const body =
    shown === null || shop === null
      ? emptyBody(shown === null ? 'connecting' : 'no-set-up', set)
      : bodyView(shown, shop, set)
  const bar = barView({ ...set, flash, box: layout.bar })
  return {
    sizes,
    layout,
    clock: words.times.clock(nowMs),
    note,
    status,
    ruler: layout.ruler === null ? null : slow.day,
    body,
    rods:
      shown === null || shop === null || layout.rods === null
        ? null
        : rodsView({
            ...set,
            rods: slow.rods,
            box: layout.rods,
            form: layout.rodsForm,
            lines: layout.rodLines,
          }),
    bar,
    acts,
    onShow: [...new Set([...bar.onShow, ...(body.kind === 'line' ? body.line.onShow : [])])],
  }
}

/**
 * Never smaller than the distance asks for; larger where the device says so, or where there is room to spare. From
 * farther away than a screen supports nothing could be shown at all: then it is as from its farthest, and the settings
 * say that it hangs too far.
 */
function sizesOf({ live, panel, page }: WallInput): TextSizes {
  const { viewingMetres, textPercent } = live.settings
  const shelves = [...(live.shown?.shop?.shelves.values() ?? [])].filter((shelf) => !shelf.retired).length
  const distanceM = Math.min(viewingMetres * Math.max(1, textPercent / 100), farthestDistanceM(panel))
  return roomySizes(page, shelves, (scale) => wallSizes({ ...panel, distanceM: distanceM * scale }))
}

export interface Setting {
  readonly nowMs: EpochMs
  readonly words: Words
  readonly wall: WallWords
  readonly naming: Naming
  readonly layout: WallLayout
  readonly sizes: TextSizes
}

/** Dips and loads that are due sooner than this want kettle and oven on the wall, even while both are empty. */
const LINE_AHEAD_MS = 30 * 60_000

/**
 * The line as soon as anything is in the kettle, on boards or in the oven, or will soon be; else what stands; else what
 * to do first.
 */
function bodyView(state: State, shop: Shop, set: Setting & { readonly acts: readonly LineActDue[] }): BodyView {
  const isBusy =
    state.loads.size > 0 || [...state.batches.values()].some(({ stage }) => stage === 'kettle' || stage === 'boards')
  const isNear = set.acts.some(
    ({ act, atMs }) => act !== 'pull' && act !== 'board' && atMs - set.nowMs <= LINE_AHEAD_MS,
  )
  if (isBusy || isNear) return { kind: 'line', line: lineView(state, shop, set) }
  const standing = standingNow(state, set.nowMs)
  if (standing.length > 0) {
    return { kind: 'standing', standing: standingView({ ...set, standing, box: set.layout.middle }) }
  }
  return emptyBody(state.day === null ? 'no-day' : 'idle', set)
}

function emptyBody(kind: EmptyKind, { wall, layout, sizes }: Setting): BodyView {
  const { title, text } = wall.empty[kind]
  const ringPx = Math.round(layout.middle.height * EMPTY_RING)
  const roomPx = layout.middle.width - ringPx - sizes.labelPx * EMPTY_GAP_EMS
  return {
    kind: 'empty',
    ringPx,
    title: wrapText(title, { roomPx, fontPx: sizes.headlinePx, weight: 'strong' }),
    text: wrapText(text, { roomPx, fontPx: sizes.labelPx }),
  }
}

/** The empty wall's ring in parts of its place, and the space right of it. */
const EMPTY_RING = 0.6
const EMPTY_GAP_EMS = 1.2

function noteText({ live, sound }: WallInput, wall: WallWords): string {
  const ofSound = { on: '', 'needs-touch': wall.touchForSound, off: wall.soundOff, 'quiet-hours': wall.quietHours }[
    sound
  ]
  return [live.demo === null ? '' : wall.demo, ofSound].filter((part) => part !== '').join(' · ')
}
