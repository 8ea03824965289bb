import type { Act } from '../../../shared-core/day/commands.ts'
import type { KitchenStationId } from '../../../shared-core/ids.ts'
import type { KitchenActDue } from '../../../shared-core/kitchen/kitchen-acts.ts'
import type { KitchenTask } from '../../../shared-core/kitchen/queue.ts'
import { dueStatus } from '../../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { NextAct } from '../../parts/kitchen-calls.ts'
import { kitchenCommand } from '../../parts/kitchen-calls.ts'
import { capitalised } from '../../words/joined.ts'
import type { KitchenParts } from './kitchen-parts.ts'

/** What its key says and does. */
export interface NextView {
  readonly key: string
  readonly tone: 'plain' | 'act' | 'late'
  /** From all of it to the shortest. */
  readonly whats: readonly string[]
  readonly when: string
  /** "" without one. It stands before all else. */
  readonly allergy: string
  /** Notes of its orders. */
  readonly notes: readonly string[]
  /** What a touch does; null: there is a page for it. */
  readonly act: Act | null
}

export interface NextParts extends Pick<KitchenParts, 'state' | 'queue' | 'nowMs' | 'stations'> {
  readonly acts: readonly KitchenActDue[]
}

/** Soonest first. An act of no station (handing over, pulling) is anybody's. */
export function nextActs({ acts, queue, nowMs, stations }: NextParts): readonly NextAct[] {
  const isHere = (id: KitchenStationId | null) => id === null || stations.length === 0 || stations.includes(id)
  const begun = queue.stations.flatMap(({ tasks }) => tasks.filter(isInHand))
  const all: readonly NextAct[] = [...acts, ...begun.map((task) => finishOf(task, nowMs))]
  return all
    .filter(({ stationId }) => isHere(stationId))
    .sort((one, other) => handsAtMs(one, nowMs) - handsAtMs(other, nowMs) || one.atMs - other.atMs)
}

function isInHand({ stage, oven }: KitchenTask): boolean {
  return stage === 'begun' && oven === null
}

/** What the oven wants burns; all that should have been long ago stands in the order in which it came up. */
const BURNS: ReadonlySet<NextAct['act']> = new Set<NextAct['act']>(['out', 'turn', 'move'])
/** Hands that begin something else are not back before. */
const HANDS_BUSY_MS = 20_000

function handsAtMs({ act, atMs }: NextAct, nowMs: EpochMs): number {
  return BURNS.has(act) ? atMs : Math.max(atMs, nowMs + HANDS_BUSY_MS)
}

function finishOf(task: KitchenTask, nowMs: EpochMs): NextAct {
  const { key, part, mark, itemId, varietyId, allergies, stationId, endAtMs, dueAtMs } = task
  const atMs = epochMs(endAtMs)
  return {
    key: `made:${key}`,
    act: 'made',
    atMs,
    latestAtMs: dueAtMs,
    status: dueStatus(atMs, epochMs(Math.max(dueAtMs, atMs)), nowMs),
    stationId,
    shelfId: null,
    parts: [part],
    items: [{ itemId, varietyId, count: 1 }],
    marks: [mark],
    allergies,
    orderId: null,
    portionId: null,
    trays: null,
  }
}

export function nextView(act: NextAct, parts: Pick<KitchenParts, 'words' | 'nowMs' | 'state' | 'noteOf'>): NextView {
  const { words, nowMs, state, noteOf } = parts
  const ids = new Set([...act.parts.map(({ orderId }) => orderId), ...(act.orderId === null ? [] : [act.orderId])])
  const notes = [...ids].flatMap((id) => {
    const order = state.orders.get(id)
    const note = order === undefined ? '' : noteOf(order)
    return order === undefined || note === '' ? [] : [`${order.mark}: ${note}`]
  })
  return {
    key: act.key,
    tone: act.status === 'coming' ? 'plain' : act.status === 'due' ? 'act' : 'late',
    whats: words.made.act(act).map(capitalised),
    when: words.times.when(act, nowMs),
    allergy: words.made.allergy(act),
    notes,
    act: kitchenCommand(act),
  }
}
