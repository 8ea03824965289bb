import type { Ruler } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import { roomActs, roomActsAt } from '../../shared-core/dough/room-acts.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import { rods } from '../../shared-core/stock/left.ts'
import type { RodAhead } from '../../shared-core/stock/prospect.ts'
import { withProspects } from '../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { clockText, localDate } from '../live/clock-text.ts'
import type { LiveState } from '../live/shop-store.ts'
import { standsStill } from '../live/stands-still.ts'
import { planNow } from '../parts/advice.ts'
import type { AfternoonAhead } from '../parts/afternoon.ts'
import { afternoonAhead, isNear } from '../parts/afternoon.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import { actsAt, NO_KITCHEN } from '../parts/kitchen-calls.ts'
import type { Panel, TextSizes } from '../parts/legibility.ts'
import { farthestDistanceM, wallSizes } from '../parts/legibility.ts'
import { outlookNow } from '../parts/outlook-now.ts'
import { rulerNow, rulerOfDay } from '../parts/ruler-of-day.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { SoundState } from '../parts/use-sound.ts'
import { adviceWords } from '../words/advice.ts'
import { noteWords } from '../words/notes.ts'
import type { ShiftWords } from '../words/shift.ts'
import { shiftWords } from '../words/shift.ts'
import type { WallWords } from '../words/wall.ts'
import { wallWords } from '../words/wall.ts'
import { wallDoughWords } from '../words/wall-dough.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import { wallKitchenWords } from '../words/wall-kitchen.ts'
import type { Words } from '../words/words.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import { namingOf } from './act-name.ts'
import type { AdviceSetting } from './advice-texts.ts'
import { adviceStatus, roomTexts } from './advice-texts.ts'
import type { BarView } from './bar-view.ts'
import { barView } from './bar-view.ts'
import type { BodyView } from './body-view.ts'
import { bodyView, changeStatus, emptyBody, notesBeside } from './body-view.ts'
import type { WallLayout } from './layout.ts'
import { roomySizes, wallLayout } from './layout.ts'
import type { NotesView } from './notes-view.ts'
import type { OrdersNow } from './orders-told.ts'
import { NO_ORDERS, nextText, riskTexts } from './orders-told.ts'
import type { RodsView } from './rods-view.ts'
import { rodsView } from './rods-view.ts'
import type { ShiftNow } from './shift-view.ts'
import { shiftNow } from './shift-view.ts'
import type { StatusView } from './status-view.ts'
import { statusView } from './status-view.ts'
import { fits, widthOf } from './text-lines.ts'

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
  /** Notes of the last shift, to be read now; null when there are none, or while the line has the room. */
  readonly notes: NotesView | null
  readonly rods: RodsView | null
  readonly bar: BarView
  /** Soonest first, whether on show or not: what sounds. */
  readonly acts: readonly LineActDue[]
  /** The same of the dough room; no pedal does them. */
  readonly room: readonly RoomAct[]
  /** The same of the kitchen. */
  readonly kitchen: readonly KitchenActDue[]
  /** The keys of the acts that can be read on the wall now: what a pedal may do. */
  readonly onShow: readonly string[]
}

export interface WallInput {
  readonly live: Pick<
    LiveState,
    'shown' | 'connection' | 'notices' | 'nowMs' | 'shopClock' | 'demo' | 'settings' | 'plan'
  >
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
  readonly rods: readonly RodAhead[]
  readonly day: RulerDay | null
  readonly ruler: Ruler | null
  /** In the last hour before the changeover. */
  readonly afternoon: AfternoonAhead | null
  /** What is to be done in the dough room, as of then. */
  readonly room: readonly RoomAct[]
  readonly kitchen: KitchenLook
  readonly orders: OrdersNow
}

/** How often stock and day are reckoned while nothing happens. */
export const SLOW_MS = 5_000

export type SlowInput = Pick<LiveState, 'shown' | 'shopClock' | 'nowMs' | 'settings' | 'outlook' | 'plan'>

export type Looks = Pick<typeof import('./looks.ts'), 'kitchenLook' | 'ordersNow'>

/** @param looks null: not fetched, until then nothing is made to order and no order at risk */
export function slowView(live: SlowInput, looks: Looks | null): SlowView {
  const { shown, shopClock, nowMs, settings } = live
  if (shown === null) {
    return { rods: [], day: null, ruler: null, afternoon: null, room: [], kitchen: NO_KITCHEN, orders: NO_ORDERS }
  }
  const atMs = epochMs(nowMs - (nowMs % SLOW_MS))
  const language = languageOf(settings.language, shown.shop)
  const clockTime = (ms: EpochMs) =>
    shopClock === null ? '' : clockText(shopClock, ms, shown.shop?.profile.clock ?? 12)
  const words = wordsFor(language, shown.shop, clockTime)
  const wall = wallWords(words)
  const ruler = shopClock === null ? null : rulerNow(shown, atMs, shopClock)
  const outlook = outlookNow(live, shown)
  const afternoon = afternoonAhead(outlook, atMs)
  const dipByMs = planNow(live, shown)?.last?.kettleByMs
  const lastDip = dipByMs === undefined ? null : { atMs: dipByMs, text: adviceWords(words).lastDipMark }
  const orders = looks?.ordersNow(shown, live, atMs, ruler) ?? NO_ORDERS
  const atRisk = new Set(orders.risks.map(({ orderId }) => orderId))
  return {
    rods: withProspects(rods(shown, atMs), { closeMs: ruler === null ? null : ruler.toMs, outlook }),
    day: shopClock === null ? null : rulerOfDay(shown, atMs, shopClock, wall.ruler, lastDip, atRisk),
    ruler,
    afternoon: isNear(afternoon, atMs) ? afternoon : null,
    room: roomOf(shown, atMs, shopClock),
    kitchen: looks?.kitchenLook(shown, atMs, ruler) ?? NO_KITCHEN,
    orders,
  }
}

function roomOf(state: State, nowMs: EpochMs, clock: SlowInput['shopClock']): readonly RoomAct[] {
  if (clock === null || state.shop === null) return []
  return roomActs(state, state.shop, nowMs, localDate(clock, nowMs), (isoDate) => noonOf(clock, isoDate))
}

export function wallView(input: WallInput): WallView {
  const { live, page, flash, slow } = input
  const { shown, nowMs, settings } = live
  const shop = shown?.shop ?? null
  const words = wordsFor(languageOf(settings.language, shop), shop, input.localTime)
  const [wall, shift, say] = [wallWords(words), shiftWords(words), noteWords(words)]
  const sizes = sizesOf(input)
  const advised = { plan: shown === null ? null : planNow(live, shown), advice: adviceWords(words), nowMs }
  const made = wallKitchenWords(words)
  const ends = shown === null ? null : shiftNow(shown, nowMs, slow.ruler)
  const status =
    statusView({ ...live, words, wall, widthPx: page.widthPx, sizes }) ??
    (shown === null
      ? null
      : saidOfDay(shown, ends, {
          ...advised,
          words,
          shift,
          page,
          sizes,
          made,
          orders: slow.orders,
          ahead: slow.afternoon,
        }))
  // While they can be read, the mark would say it twice.
  const isMarked = ends !== null && ends.waiting > ends.notes.length
  const waiting = isMarked ? say.count(ends.waiting) : ''
  const note = noteText(input, wall, waiting)
  const layout = wallLayout({ ...page, sizes, hasStatus: status !== null, noteWidthPx: widthOf(note, sizes.minPx) })
  const acts = shown === null || standsStill(live.connection) ? [] : nextActs(shown, nowMs)
  const room = standsStill(live.connection) ? [] : roomActsAt(slow.room, nowMs)
  const kitchenActs = standsStill(live.connection) ? [] : actsAt(slow.kitchen.acts, nowMs)
  const dough = wallDoughWords(words)
  const said = { words, wall, shift, dough, made, naming: namingOf(shop) }
  const set = { ...advised, ...said, layout, sizes, acts, room, shown, kitchen: slow.kitchen, kitchenActs }
  const body =
    shown === null || shop === null || ends === null
      ? emptyBody(shown === null ? 'connecting' : 'no-set-up', set, layout.middle)
      : bodyView(shown, shop, { ...set, ends })
  const bar = barView({ ...set, flash, box: layout.bar })
  const { rods: box, rodsForm: form, rodLines: lines } = layout
  const hasRods = shown !== null && shop !== null && box !== null
  return {
    sizes,
    layout,
    clock: words.times.clock(nowMs),
    note,
    status,
    ruler: layout.ruler === null ? null : slow.day,
    body,
    notes: notesBeside(body, ends, { layout, sizes, say }),
    rods: hasRods ? rodsView({ ...set, rods: slow.rods, box, form, lines }) : null,
    bar,
    acts,
    room,
    kitchen: kitchenActs,
    onShow: [...new Set([...bar.onShow, ...(body.kind === 'line' ? body.line.onShow : [])])],
  }
}

type Said = Omit<Parameters<typeof changeStatus>[1], 'told'> &
  Parameters<typeof adviceStatus>[1] & { readonly orders: OrdersNow; readonly made: WallKitchenWords }

/**
 * An order that will be short before all else: its customer is on the way. Then the changeover while it is near, with what
 * the room should know of the plan in it; else that alone, else the orders that come next.
 */
function saidOfDay(state: State, ends: ShiftNow | null, set: Said): StatusView | null {
  const { page, sizes, orders, made } = set
  const room = { roomPx: page.widthPx - 2.4 * sizes.minPx, fontPx: sizes.minPx, weight: 'strong' } as const
  const risk = riskTexts(orders, made).find((text) => fits(text, room))
  if (risk !== undefined) return { text: risk, isTrouble: true }
  const said = changeStatus(ends, { ...set, told: roomTexts(state, set) }) ?? adviceStatus(state, set)
  if (said !== null) return said
  const next = nextText(orders, made, room)
  return next === '' ? null : { text: next, isTrouble: false }
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

export interface Setting extends AdviceSetting {
  readonly words: Words
  readonly wall: WallWords
  readonly naming: Naming
  readonly layout: WallLayout
  readonly sizes: TextSizes
  readonly shift: ShiftWords
}

function noteText({ live, sound }: WallInput, wall: WallWords, waiting: string): string {
  const ofSound = { on: '', 'needs-touch': wall.touchForSound, off: wall.soundOff, 'quiet-hours': wall.quietHours }[
    sound
  ]
  return [live.demo === null ? '' : wall.demo, waiting, ofSound].filter((part) => part !== '').join(' · ')
}
