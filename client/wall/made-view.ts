import type { State } from '../../shared-core/day/state.ts'
import { shelvesWithSlots } from '../../shared-core/kitchen/parts.ts'
import type { KitchenQueue, KitchenTask, Together } from '../../shared-core/kitchen/queue.ts'
import type { SlotUse } from '../../shared-core/kitchen/slots-now.ts'
import { slotsNow } from '../../shared-core/kitchen/slots-now.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import { middleOf, strung } from '../parts/strung.ts'
import type { WallWords } from '../words/wall.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import type { Words } from '../words/words.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { madeInOven } from './made-oven.ts'
import type { SetRows } from './rows-fit.ts'
import type { LineRoom } from './text-lines.ts'
import { fits, shortened, widthOf } from './text-lines.ts'

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

export interface MadeRod {
  readonly key: string
  readonly name: string
  /** "ALLERGY: milk"; "" without one. */
  readonly allergy: string
  /** `above`: the name over the rod; `beside`: left of it, where more kinds are to be shown. */
  readonly form: 'above' | 'beside'
  readonly heightPx: number
  readonly total: string
  readonly rings: readonly MadeRing[]
  readonly more: string
}

export interface MadeRing {
  readonly key: string
  readonly mark: string
  readonly leftPx: number
  readonly tone: 'plain' | 'act' | 'late'
  readonly isAllergy: boolean
  readonly ring: { readonly fraction: number; readonly state: RingState }
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
/** Between a ring and its mark, and after it. */
const GAP_EM = 0.3

function rodsBox(box: Box, input: MadeInput): RodsBox {
  const { kitchen, made, sizes, nowMs } = input
  const { minPx } = sizes
  const { together, ready } = kitchen.queue
  // Those with an allergy stand first: none of them may be among the kinds that do not fit.
  const kinds = [...together].sort((one, other) => rankOf(one) - rankOf(other))
  const namePx = Math.ceil(NAME_EM * minPx)
  const ringPx = Math.ceil(RING_EM * minPx)
  const heights = { above: namePx + Math.ceil(ringPx * ROW), beside: Math.ceil(ringPx * ROW) }
  const set = kindsThatFit(kinds, box.height - headingHeight(minPx), { ...heights, restPx: namePx })
  const isBeside = set.some(({ form }) => form === 'beside')
  const totalPx = Math.ceil(widthOf('00', sizes.countPx, 'strong'))
  const fromPx = isBeside ? Math.round(box.width * NAME_SHARE) : 0
  const axisMs = nowMs - (nowMs % AXIS_STEP_MS)
  const span = { fromMs: axisMs - BEHIND_MS, toMs: axisMs + AHEAD_MS, widthPx: box.width - totalPx - fromPx }
  const all = together.reduce((sum, { parts }) => sum + parts.length, 0)
  const tasks = new Map(
    kitchen.queue.stations.flatMap((one) => one.tasks.map((task) => [partKey(task), task] as const)),
  )
  const marks = ready.map(({ mark }) => mark)
  return {
    box,
    heading: made.toMake(all),
    note: readyText(marks, box, input),
    rods: set.map((one) => rodOf(one, { span, fromPx, ringPx, tasks, heights, input })),
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

interface SetKind {
  readonly kind: Together
  readonly form: MadeRod['form']
}

/** Names above their rods where all fit so; else beside them, except where there is an allergy to be read. */
function kindsThatFit(
  kinds: readonly Together[],
  roomPx: number,
  { above, beside, restPx }: { readonly above: number; readonly beside: number; readonly restPx: number },
): readonly SetKind[] {
  const isRoomy = kinds.length * above <= roomPx
  const set = kinds.map((kind): SetKind => ({ kind, form: isRoomy || rankOf(kind) === 0 ? 'above' : 'beside' }))
  const heightOf = (some: readonly SetKind[]) =>
    some.reduce((sum, { form }) => sum + (form === 'above' ? above : beside), 0)
  if (heightOf(set) <= roomPx) return set
  let count = set.length - 1
  while (count > 1 && heightOf(set.slice(0, count)) > roomPx - restPx) count -= 1
  return set.slice(0, count)
}

function rankOf({ allergies }: Together): number {
  return allergies.length > 0 ? 0 : 1
}

function readyText(marks: readonly string[], box: Box, { made, sizes }: MadeInput): string {
  const roomPx = box.width * 0.6
  for (let count = marks.length; count > 0; count--) {
    const text = made.ready(marks.slice(0, count))
    if (fits(text, { roomPx, fontPx: sizes.minPx })) return count < marks.length ? `${text} …` : text
  }
  return ''
}

function partKey({ part }: Pick<KitchenTask, 'part'>): string {
  return `${part.orderId}:${part.no}:${part.step}`
}

interface RodParts {
  readonly span: { readonly fromMs: number; readonly toMs: number; readonly widthPx: number }
  readonly fromPx: number
  readonly ringPx: number
  readonly tasks: ReadonlyMap<string, KitchenTask>
  readonly heights: { readonly above: number; readonly beside: number }
  readonly input: MadeInput
}

function rodOf({ kind, form }: SetKind, { span, fromPx, ringPx, tasks, heights, input }: RodParts): MadeRod {
  const { made, sizes, nowMs } = input
  const { minPx } = sizes
  const widthOfRing = (mark: string) => ringPx + Math.ceil(widthOf(mark, minPx, 'strong') + 2 * GAP_EM * minPx)
  const morePx = Math.ceil(widthOf('+99', minPx, 'strong'))
  const { placed, hidden } = strung(
    kind.parts.map((part) => ({ key: partKey(part), atMs: part.dueAtMs, widthPx: widthOfRing(part.mark) })),
    { ...span, gapPx: Math.round(GAP_EM * minPx), morePx },
  )
  const allergy = kind.allergies.length === 0 ? '' : made.orders.allergy(kind.allergies)
  const allergyPx = allergy === '' ? 0 : widthOf(allergy, minPx, 'strong') + 2 * minPx
  const roomPx = form === 'above' ? fromPx + span.widthPx - allergyPx : fromPx - minPx / 2
  return {
    key: kind.key,
    form,
    heightPx: heights[form],
    name: nameOf(kind, { roomPx, fontPx: minPx, weight: 'strong' }, input),
    allergy,
    total: String(kind.parts.length),
    more: hidden > 0 ? `+${hidden}` : '',
    rings: placed.flatMap(({ key, leftPx }) => {
      const task = tasks.get(key)
      const place = { key, leftPx: fromPx + leftPx, isAllergy: allergy !== '' }
      return task === undefined ? [] : [{ ...place, mark: task.mark, ...stateOf(task, nowMs) }]
    }),
  }
}

/** As much of what it is as there is room for; what is cut off is counted. */
function nameOf(kind: Together, room: LineRoom, { made }: MadeInput): string {
  const parts = made.orders.item({ ...kind, allergies: [] }, 1).split(', ')
  const text = fitList(parts, room, (count) => `+${count}`)
  const isNamed = parts.length === 1 || text !== `+${parts.length}`
  return isNamed && fits(text, room) ? text : shortened(parts[0] ?? '', room)
}

/** Finer than a ring's arc moves nothing is painted. */
const ARC_STEPS = 720

function stateOf({ stage, status, beginAtMs, endAtMs }: KitchenTask, nowMs: EpochMs): Pick<MadeRing, 'tone' | 'ring'> {
  if (status === 'late') return { tone: 'late', ring: { fraction: 0, state: 'late' } }
  if (stage === 'begun') {
    const left = Math.min(1, Math.max(0, (endAtMs - nowMs) / Math.max(1, endAtMs - beginAtMs)))
    const fraction = Math.ceil(left * ARC_STEPS) / ARC_STEPS
    return left > 0
      ? { tone: 'plain', ring: { fraction, state: 'running' } }
      : { tone: 'act', ring: { fraction: 0, state: 'act' } }
  }
  if (status === 'due') return { tone: 'act', ring: { fraction: 0, state: 'act' } }
  return { tone: 'plain', ring: { fraction: 0, state: 'idle' } }
}
