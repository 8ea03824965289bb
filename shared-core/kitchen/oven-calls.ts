import type { State } from '../day/state.ts'
import type { ShelfId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import type { ItemPart } from '../orders/order-commands.ts'
import type { EpochMs } from '../units.ts'
import type { Asked, KitchenTask } from './queue.ts'
import { slotsNow } from './slots-now.ts'

/** What the oven wants done: things put in together, turned or moved, taken out. */
export interface OvenCall {
  /** The same as long as it is the same act. @example 'out:k7:1:0' */
  readonly key: string
  readonly act: 'in' | 'turn' | 'move' | 'out'
  readonly atMs: EpochMs
  readonly status: DueStatus
  /** Where it is, or should go; null: nobody said. */
  readonly shelfId: ShelfId | null
  readonly parts: readonly OvenPart[]
}

export interface OvenPart extends Pick<Asked, 'itemId' | 'allergies'> {
  readonly part: ItemPart
  readonly mark: string
  readonly dueAtMs: EpochMs
}

/** What goes onto one shelf within so long goes in with one opening of the door. Common practice, no source. */
const TOGETHER_MS = 20_000

/**
 * What is to be done at the oven, soonest first. Only what can go in is called for: its parts before are made, and there
 * is a place for it before the oven closes.
 * @param tasks what the kitchen, run ahead, does when (`tasksOf`)
 */
export function ovenCalls(state: State, nowMs: EpochMs, tasks: readonly KitchenTask[]): readonly OvenCall[] {
  const dueOf = new Map([...state.orders.values()].map(({ id, dueAtMs }) => [id, dueAtMs]))
  const uses = slotsNow(state, nowMs).map((use): OvenCall => {
    const { key, part, mark, itemId, allergies, shelfId, turn, outAtMs, status } = use
    const parts = [{ part, mark, itemId, allergies, dueAtMs: dueOf.get(part.orderId) ?? outAtMs }]
    if (turn === null || turn.atMs >= outAtMs)
      return { key: `out:${key}`, act: 'out', atMs: outAtMs, status, shelfId, parts }
    return { key: `${turn.what}:${key}`, act: turn.what, atMs: turn.atMs, status: turn.status, shelfId, parts }
  })
  return [...merged(uses), ...insOf(tasks, nowMs)].sort(
    (one, other) => one.atMs - other.atMs || RANK[one.act] - RANK[other.act] || (one.key < other.key ? -1 : 1),
  )
}

/** At one instant what burns goes before what waits. */
const RANK: { readonly [act in OvenCall['act']]: number } = { out: 0, turn: 1, move: 1, in: 2 }

function insOf(tasks: readonly KitchenTask[], nowMs: EpochMs): readonly OvenCall[] {
  const calls = tasks
    .filter(({ oven, stage, shelfId }) => oven !== null && stage === 'next' && shelfId !== null)
    .map(({ key, part, mark, itemId, allergies, dueAtMs, shelfId, beginAtMs, status }): OvenCall => {
      const parts = [{ part, mark, itemId, allergies, dueAtMs }]
      return { key: `in:${key}`, act: 'in', atMs: beginAtMs, status, shelfId, parts }
    })
  return merged(calls.filter(({ atMs }) => atMs >= nowMs))
}

/** The same act at the same shelf within some seconds is one. */
function merged(calls: readonly OvenCall[]): readonly OvenCall[] {
  const out: OvenCall[] = []
  for (const call of [...calls].sort((one, other) => one.atMs - other.atMs || (one.key < other.key ? -1 : 1))) {
    const at = out.findIndex(
      (one) => one.act === call.act && one.shelfId === call.shelfId && call.atMs - one.atMs <= TOGETHER_MS,
    )
    const one = out[at]
    if (one === undefined) out.push(call)
    else out[at] = { ...one, parts: [...one.parts, ...call.parts] }
  }
  return out
}
