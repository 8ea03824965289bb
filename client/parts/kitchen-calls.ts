import type { Act } from '../../shared-core/day/commands.ts'
import type { StationId } from '../../shared-core/ids.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import type { KitchenQueue } from '../../shared-core/kitchen/queue.ts'
import { lateAfter } from '../../shared-core/kitchen/slots-now.ts'
import { dueStatus } from '../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { kitchenPedal } from './calls.ts'
import type { KitchenSound } from './sound-figures.ts'

/** What is made to order, as a screen looks at it: when something happens, and every few seconds else. */
export interface KitchenLook {
  readonly queue: KitchenQueue
  /** Soonest first. */
  readonly acts: readonly KitchenActDue[]
}

export const NO_KITCHEN: KitchenLook = { queue: { stations: [], together: [], orders: [], ready: [] }, acts: [] }

/** Acts as they stand now, of a look some seconds ago at most. */
export function actsAt(acts: readonly KitchenActDue[], nowMs: EpochMs): readonly KitchenActDue[] {
  return acts.map((act) => ({ ...act, status: statusAt(act, nowMs) }))
}

function statusAt({ act, atMs, latestAtMs }: KitchenActDue, nowMs: EpochMs): KitchenActDue['status'] {
  return act === 'out' || act === 'turn' || act === 'move' ? lateAfter(atMs, nowMs) : dueStatus(atMs, latestAtMs, nowMs)
}

/** One of the next acts at a screen's stations; what is begun by hand is to be finished, which only a screen there says. */
export interface NextAct extends Omit<KitchenActDue, 'act'> {
  readonly act: KitchenActDue['act'] | 'made'
}

/** What a touch on the act does. Portions that were pulled are counted, on a page of their own. */
export function kitchenCommand({ act, parts, shelfId, orderId }: NextAct): Act | null {
  switch (act) {
    case 'make':
      return { type: 'moveItems', parts, to: 'begun', shelfId: null }
    case 'in':
      return { type: 'moveItems', parts, to: 'begun', shelfId }
    case 'turn':
    case 'move':
      return { type: 'moveItems', parts, to: 'turned', shelfId: null }
    case 'out':
    case 'made':
      return { type: 'moveItems', parts, to: 'made', shelfId: null }
    case 'handOver':
      return orderId === null ? null : { type: 'handOverOrder', orderId, lines: null }
    case 'pull':
      return null
  }
}

/** The act that a pad of a kitchen station does: the first of that station's own, and only while it can be read here. */
export function kitchenPedalAct<One extends NextAct>(
  station: StationId,
  acts: readonly One[],
  onShow: ReadonlySet<string>,
): One | null {
  const first = acts.find(({ stationId }) => stationId !== null && kitchenPedal(stationId) === station)
  return first !== undefined && onShow.has(first.key) ? first : null
}

/** A pull is called out for so long; then it stands on the screens, and nobody has to hear of it any more. */
const PULL_SOUNDS_MS = 5 * 60_000

/** Which figure an act of the kitchen has: what burns, and what should have been; null for what waits without one. */
export function kitchenSound(
  { act, status, atMs }: Pick<KitchenActDue, 'act' | 'status' | 'atMs'>,
  nowMs: EpochMs,
): KitchenSound | null {
  if (act === 'turn' || act === 'move') return 'ovenTurn'
  if (act === 'out') return 'ovenOut'
  if (act === 'pull') return nowMs - atMs < PULL_SOUNDS_MS ? 'portionPull' : null
  return act === 'in' && status === 'late' ? 'ovenIn' : null
}

/** The act of the kitchen that sounds now and that "coming" would quiet; null when none does. */
export function soundingKitchenAct(
  acts: readonly KitchenActDue[],
  coming: ReadonlyMap<string, EpochMs>,
  nowMs: EpochMs,
): KitchenActDue | null {
  const isSounding = (act: KitchenActDue) =>
    kitchenSound(act, nowMs) !== null && act.atMs <= nowMs && (coming.get(act.key) ?? 0) <= nowMs
  return acts.find(isSounding) ?? null
}
