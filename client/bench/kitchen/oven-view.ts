import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { KitchenStationId, ShelfId } from '../../../shared-core/ids.ts'
import { shelvesWithSlots } from '../../../shared-core/kitchen/parts.ts'
import type { SlotUse } from '../../../shared-core/kitchen/slots-now.ts'
import { slotsNow } from '../../../shared-core/kitchen/slots-now.ts'
import type { ItemPart } from '../../../shared-core/orders/order-commands.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { RingTurn } from '../../parts/order-ring.tsx'
import type { RingState } from '../../parts/ring.tsx'
import type { KitchenRoomWords } from '../../words/bench-kitchen.ts'
import { capitalised } from '../../words/joined.ts'

/** What went onto a shelf together and comes out together: one ring, one touch. */
export interface OvenGroup {
  readonly key: string
  /** Of its parts, see `SlotUse`. */
  readonly keys: readonly string[]
  /** The first of them. */
  readonly part: ItemPart
  readonly marks: readonly string[]
  readonly ring: { readonly fraction: number; readonly state: RingState; readonly turns: readonly RingTurn[] }
  readonly tone: 'plain' | 'act' | 'late'
  /** What is to be done with it next, and when. */
  readonly what: string
  readonly when: string
  /** Of what is next. */
  readonly atMs: EpochMs
  /** That there is one; what it is stands on its rod. "" without one. */
  readonly allergy: string
  /** "41, 45 ×3" */
  readonly marked: string
  /** "2 Cheese flatbread" */
  readonly items: string
  readonly isAllergy: boolean
  readonly act: Act
}

/** A shelf's places, for what was chosen to go in. */
export interface ShelfChoice {
  readonly shelfId: ShelfId
  readonly name: string
  readonly free: number
}

export interface OvenParts {
  readonly state: State
  readonly nowMs: EpochMs
  readonly words: KitchenRoomWords
}

/** What bakes, group by group: what is to be touched soonest first. */
export function ovenGroups({ state, nowMs, words }: OvenParts): readonly OvenGroup[] {
  const groups = new Map<string, SlotUse[]>()
  for (const use of slotsNow(state, nowMs)) {
    const { shelfId, inAtMs, outAtMs, turn, allergies, key } = use
    const alone = allergies.length > 0 ? key : ''
    const together = [shelfId ?? '', inAtMs, outAtMs, turn?.what ?? '', turn?.atMs ?? '', alone].join(' ')
    const group = groups.get(together)
    if (group === undefined) groups.set(together, [use])
    else group.push(use)
  }
  return [...groups]
    .flatMap(([key, uses]) => groupView(key, uses, { state, nowMs, words }))
    .sort((one, other) => one.atMs - other.atMs || (one.key < other.key ? -1 : 1))
}

function groupView(key: string, uses: readonly SlotUse[], { state, nowMs, words }: OvenParts): readonly OvenGroup[] {
  const [first] = uses
  if (first === undefined) return []
  const { turn, shelfId, inAtMs, outAtMs, status, allergies } = first
  const next = turn ?? { what: 'out' as const, atMs: outAtMs, status }
  const counts = new Map<SlotUse['itemId'], number>()
  for (const { itemId } of uses) counts.set(itemId, (counts.get(itemId) ?? 0) + 1)
  const items = [...counts].map(([itemId, count]) => ({ itemId, varietyId: null, count }))
  const [, short] = words.made.act({ act: next.what, items, marks: [], shelfId, portionId: null, trays: null })
  const wholeMs = Math.max(1, outAtMs - inAtMs)
  const tone = next.status === 'coming' ? 'plain' : next.status === 'due' ? 'act' : 'late'
  const running = { fraction: Math.min(1, (outAtMs - nowMs) / wholeMs), state: 'running' } as const
  return [
    {
      key,
      keys: uses.map((use) => use.key),
      part: first.part,
      marks: uses.map(({ mark }) => mark),
      ring: {
        ...(tone === 'plain' ? running : { fraction: Math.max(0, running.fraction), state: tone }),
        turns: turnsOf(first, state, wholeMs),
      },
      tone,
      what: capitalised(short),
      when: words.times.when(next, nowMs),
      allergy: allergies.length === 0 ? '' : words.made.allergyShort,
      marked: words.made.marks(uses.map(({ mark }) => mark)).join(', '),
      items: words.line.list(
        items.map(({ itemId, count }) => `${count === 1 ? '' : `${count} `}${words.names.menuItem(itemId)}`),
      ),
      atMs: next.atMs,
      isAllergy: allergies.length > 0,
      act: {
        type: 'moveItems',
        parts: uses.map(({ part }) => part),
        to: next.what === 'out' ? 'made' : 'turned',
        shelfId: null,
      },
    },
  ]
}

function turnsOf({ part }: SlotUse, state: State, wholeMs: number): readonly RingTurn[] {
  const step = state.orders.get(part.orderId)?.items.find(({ no }) => no === part.no)?.steps[part.step]
  const turns = step?.oven?.turns ?? []
  return turns.map(({ afterMs }, index) => ({
    fraction: 1 - afterMs / wholeMs,
    isDone: index < (step?.turned ?? 0),
  }))
}

/** The shelves of the second menu with the places that are free. */
export function shelfChoices(state: State, shop: Shop, nowMs: EpochMs): readonly ShelfChoice[] {
  const uses = slotsNow(state, nowMs)
  return shelvesWithSlots(shop).map(({ id, name, slots }) => {
    const taken = uses.reduce((sum, use) => sum + (use.shelfId === id ? use.slots : 0), 0)
    return { shelfId: id, name, free: Math.max(0, slots - taken) }
  })
}

/** Whether one of these stations is an oven; none: all of them are asked. */
export function hasOven({ menu }: Shop, stations: readonly KitchenStationId[]): boolean {
  const isHere = (id: KitchenStationId) => stations.length === 0 || stations.includes(id)
  return [...menu.values()].some(({ steps }) => steps.some(({ stationId, oven }) => oven !== null && isHere(stationId)))
}
