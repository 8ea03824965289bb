import type { State } from '../../shared-core/day/state.ts'
import { shelvesWithSlots } from '../../shared-core/kitchen/parts.ts'
import type { KitchenQueue } from '../../shared-core/kitchen/queue.ts'
import type { SlotUse } from '../../shared-core/kitchen/slots-now.ts'
import { slotsNow } from '../../shared-core/kitchen/slots-now.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import type { TextSizes } from '../parts/legibility.ts'
import { middleOf } from '../parts/strung.ts'
import type { WallWords } from '../words/wall.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import type { Words } from '../words/words.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { headOf, kindsThatFit, rankOf } from './made-kinds.ts'
import { madeInOven } from './made-oven.ts'
import type { MadeRod } from './made-rod.ts'
import { rodOf } from './made-rod.ts'
import type { SetRows } from './rows-fit.ts'
import { fits, widthOf } from './text-lines.ts'

/** What is made to order, across the wall: rods with a ring for each, and the oven's places beside them. */
export interface MadeView {
  readonly rods: RodsBox
  /** Null: nothing of it is baked. */
  readonly oven: OvenBox | null
}

export interface OvenBox {
  readonly box: Box
  readonly heading: string
  readonly note: string
  readonly set: SetRows
  readonly nothing: string
}

export interface RodsBox {
  readonly box: Box
  readonly heading: string
  /** Orders that are ready, by their marks; "" without one. */
  readonly note: string
  readonly rods: readonly MadeRod[]
  /** How far along the box now is. */
  readonly nowPx: number
  /** Of the rods themselves, from the box's left. */
  readonly fromPx: number
  readonly spanPx: number
  readonly ringPx: number
  readonly namePx: number
  /** "2 other kinds"; "" when all are shown. */
  readonly rest: string
}

export interface MadeInput {
  readonly state: State
  readonly shop: Shop
  readonly kitchen: KitchenLook
  readonly nowMs: EpochMs
  readonly words: Words
  readonly wall: WallWords
  readonly made: WallKitchenWords
  readonly box: Box
  readonly sizes: TextSizes
  readonly padPx: number
}

const NEAR_MS = 20 * 60_000

/** Whether something is made to order now, or soon to be: by hand or in the oven. */
export function isKitchenBusy({ queue }: KitchenLook, nowMs: EpochMs): boolean {
  return queue.stations.some(({ tasks }) =>
    tasks.some(({ stage, beginAtMs }) => stage === 'begun' || beginAtMs - nowMs <= NEAR_MS),
  )
}

const RODS_SHARE = 0.58
const BEHIND_MS = 8 * 60_000
const AHEAD_MS = 22 * 60_000
/** The ruler of the rods moves on in steps, so that what stands is not painted anew at every tick. */
const AXIS_STEP_MS = 15_000

export function madeView(input: MadeInput): MadeView {
  const { shop, box, padPx, state, nowMs } = input
  const shelves = shelvesWithSlots(shop)
  const uses = slotsNow(state, nowMs)
  const isOven = shelves.length > 0 && (uses.length > 0 || hasOvenTask(input.kitchen.queue))
  const rodsPx = isOven ? Math.round((box.width - padPx) * RODS_SHARE) : box.width
  const ovenBox = { ...box, left: box.left + rodsPx + padPx, width: box.width - rodsPx - padPx }
  return {
    rods: rodsBox({ ...box, width: rodsPx }, input),
    oven: isOven ? ovenOf(uses, ovenBox, input) : null,
  }
}

function hasOvenTask({ stations }: KitchenQueue): boolean {
  return stations.some(({ tasks }) => tasks.some(({ oven }) => oven !== null))
}

function ovenOf(uses: readonly SlotUse[], box: Box, input: MadeInput): OvenBox {
  const { made, wall, shop } = input
  const { set, hidden } = madeInOven(uses, box, input)
  const places = shelvesWithSlots(shop).reduce((sum, { slots }) => sum + slots, 0)
  const taken = uses.reduce((sum, { slots }) => sum + slots, 0)
  return {
    box,
    heading: made.oven,
    note: [hidden > 0 ? wall.more(hidden) : '', made.placesFree(Math.max(0, places - taken))]
      .filter((text) => text !== '')
      .join(', '),
    set,
    nothing: uses.length === 0 ? made.ovenEmpty : '',
  }
}

/** In sizes of small text: a kind's name, and its rings below. */
const NAME_EM = 1.25
const RING_EM = 1.45
function rodsBox(box: Box, input: MadeInput): RodsBox {
  const { kitchen, made, sizes, nowMs } = input
  const { minPx } = sizes
  const { together, ready } = kitchen.queue
  // Those with an allergy stand first: none of them may be among the kinds that do not fit.
  const kinds = [...together].sort((one, other) => rankOf(one) - rankOf(other))
  const namePx = Math.ceil(NAME_EM * minPx)
  const ringPx = Math.ceil(RING_EM * minPx)
  const heights = { above: namePx + Math.ceil(ringPx * ROW), beside: Math.ceil(ringPx * ROW) }
  const heads = new Map(kinds.map((kind) => [kind.key, headOf(kind, box.width, input)]))
  const set = kindsThatFit(kinds, box.height - headingHeight(minPx), { ...heights, namePx, heads })
  const isBeside = set.some(({ form }) => form === 'beside')
  const totalPx = Math.ceil(widthOf('00', sizes.countPx, 'strong'))
  const fromPx = isBeside ? Math.round(box.width * NAME_SHARE) : 0
  const axisMs = nowMs - (nowMs % AXIS_STEP_MS)
  const span = { fromMs: axisMs - BEHIND_MS, toMs: axisMs + AHEAD_MS, widthPx: box.width - totalPx - fromPx }
  const all = together.reduce((sum, { parts }) => sum + parts.length, 0)
  const tasks = new Map(kitchen.queue.stations.flatMap((one) => one.tasks.map((task) => [task.key, task] as const)))
  const marks = ready.map(({ mark }) => mark)
  return {
    box,
    heading: made.toMake(all),
    note: readyText(marks, box, input),
    rods: set.map((one) => rodOf(one, { span, fromPx, ringPx, tasks, input })),
    nowPx: fromPx + Math.round(middleOf(axisMs, span)),
    fromPx,
    spanPx: span.widthPx,
    ringPx,
    namePx,
    rest: set.length === kinds.length ? '' : made.otherKinds(kinds.length - set.length),
  }
}

/** A row against its ring, and the part of the width that names take beside their rods. */
const ROW = 1.12
const NAME_SHARE = 0.4

function readyText(marks: readonly string[], box: Box, { made, sizes }: MadeInput): string {
  const roomPx = box.width * 0.6
  for (let count = marks.length; count > 0; count--) {
    const text = made.ready(marks.slice(0, count))
    if (fits(text, { roomPx, fontPx: sizes.minPx })) return count < marks.length ? `${text} …` : text
  }
  return ''
}
