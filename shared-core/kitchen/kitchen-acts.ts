import type { Ruler } from '../day/ruler.ts'
import type { State } from '../day/state.ts'
import type { KitchenStationId, MenuItemId, OrderId, PortionId, ShelfId, VarietyId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import { dueStatus } from '../line/act-due.ts'
import type { ItemPart } from '../orders/order-commands.ts'
import type { Allergen } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { lookAheadOf } from './ahead.ts'
import { readyOrders } from './order-progress.ts'
import { ovenCalls } from './oven-calls.ts'
import { partKey } from './parts.ts'
import { portionPulls } from './portion-pulls.ts'
import type { KitchenTask } from './queue.ts'
import { tasksOf } from './tasks.ts'

/**
 * `make`: begin by hand; `in`, `turn`, `move`, `out`: at the oven; `handOver`: all of an order is made; `pull`: portions
 * out of the cooler.
 */
export type KitchenAct = 'make' | 'in' | 'turn' | 'move' | 'out' | 'handOver' | 'pull'

/** One act of the kitchen that somebody should do, and when; beside `LineActDue` of the line. */
export interface KitchenActDue {
  /** Names the act for sounds, "coming" and pedals; the same as long as it is the same act. */
  readonly key: string
  readonly act: KitchenAct
  readonly atMs: EpochMs
  /** After this it is late; null: nothing makes it late. */
  readonly latestAtMs: EpochMs | null
  readonly status: DueStatus
  readonly stationId: KitchenStationId | null
  readonly shelfId: ShelfId | null
  /** The parts that it moves on; of `handOver` and `pull` none. */
  readonly parts: readonly ItemPart[]
  /** What it is of: so many of the same. */
  readonly items: readonly {
    readonly itemId: MenuItemId
    readonly varietyId: VarietyId | null
    readonly count: number
  }[]
  /** Marks of the orders, by due time, each once. */
  readonly marks: readonly string[]
  readonly allergies: readonly Allergen[]
  /** Of `handOver`. */
  readonly orderId: OrderId | null
  /** Of `pull`. */
  readonly portionId: PortionId | null
  readonly trays: number | null
}

/**
 * What is to be done next in the kitchen, soonest first: at each station with hands to spare what to begin next, all of
 * the oven's, orders to hand over, pulls of portions. What comes to nothing is not called for: no hands, no place, oven
 * closed, or the part before it not made.
 * @param ruler the day's, for pulls before the changeover; null: none
 */
export function kitchenActs(state: State, nowMs: EpochMs, ruler: Ruler | null): readonly KitchenActDue[] {
  const ahead = lookAheadOf(state, nowMs)
  if (ahead === null) return []
  const tasks = tasksOf(ahead)
  const byPart = new Map(tasks.map((task) => [task.key, task]))
  const calls = ovenCalls(state, nowMs, tasks).map((call): KitchenActDue => {
    const some = call.parts.flatMap(({ part }) => byPart.get(partKey(part)) ?? [])
    const { key, act, atMs, status, shelfId } = call
    return { ...NONE, ...ofTasks(some), key, act, atMs, status, shelfId }
  })
  const acts = [
    ...calls,
    ...makes(tasks.filter(({ key }) => ahead.begins.has(key))),
    ...handOvers(state, nowMs),
    ...pulls(state, ruler, nowMs),
  ]
  return acts.sort(
    (one, other) => one.atMs - other.atMs || RANK[one.act] - RANK[other.act] || (one.key < other.key ? -1 : 1),
  )
}

/** At one instant what burns goes first, then what waits for a guest. */
const RANK: { readonly [act in KitchenAct]: number } = {
  out: 0,
  turn: 1,
  move: 1,
  in: 2,
  handOver: 3,
  make: 4,
  pull: 5,
}

const NONE = {
  latestAtMs: null,
  stationId: null,
  shelfId: null,
  parts: [],
  items: [],
  marks: [],
  allergies: [],
  orderId: null,
  portionId: null,
  trays: null,
} as const

function ofTasks(tasks: readonly KitchenTask[]) {
  const items = new Map<string, { itemId: MenuItemId; varietyId: VarietyId | null; count: number }>()
  for (const { itemId, varietyId } of tasks) {
    const key = `${itemId} ${varietyId ?? ''}`
    items.set(key, { itemId, varietyId, count: (items.get(key)?.count ?? 0) + 1 })
  }
  const byDue = [...tasks].sort((one, other) => one.dueAtMs - other.dueAtMs)
  return {
    stationId: tasks[0]?.stationId ?? null,
    latestAtMs: byDue[0]?.dueAtMs ?? null,
    parts: tasks.map(({ part }) => part),
    items: [...items.values()],
    marks: [...new Set(byDue.map(({ mark }) => mark))],
    allergies: [...new Set(tasks.flatMap(({ allergies }) => allergies))],
  }
}

/** One for each thing that a free hand should begin. */
function makes(tasks: readonly KitchenTask[]): readonly KitchenActDue[] {
  return tasks
    .filter(({ oven, stage }) => oven === null && stage === 'next')
    .map((task): KitchenActDue => {
      const { key, beginAtMs, status } = task
      return { ...NONE, ...ofTasks([task]), key: `make:${key}`, act: 'make', atMs: beginAtMs, status }
    })
}

function handOvers(state: State, nowMs: EpochMs): readonly KitchenActDue[] {
  return readyOrders(state, nowMs)
    .filter(({ way }) => way === 'here')
    .map(({ orderId, mark, madeAtMs, dueAtMs }): KitchenActDue => {
      const status = dueStatus(madeAtMs, dueAtMs, nowMs)
      return {
        ...NONE,
        key: `handOver:${orderId}`,
        act: 'handOver',
        atMs: madeAtMs,
        latestAtMs: dueAtMs,
        status,
        marks: [mark],
        orderId,
      }
    })
}

function pulls(state: State, ruler: Ruler | null, nowMs: EpochMs): readonly KitchenActDue[] {
  return portionPulls(state, ruler, nowMs).map(({ portionId, atMs, latestAtMs, trays, status }): KitchenActDue => {
    return { ...NONE, key: `pull:${portionId}`, act: 'pull', atMs, latestAtMs, status, portionId, trays }
  })
}
