import type { Line } from '../day/state.ts'
import type { BatchId, DoughId, LoadId, PlannedId, ShelfId, VarietyId } from '../ids.ts'
import type { LineAct } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

export type DueStatus = 'coming' | 'due' | 'late'

/** One act of the line that somebody should do, and when. */
export interface LineActDue {
  /** Names the act for sounds, "coming" and pedals; the same as long as it is the same act. @example 'flip:k7.1' */
  readonly key: string
  readonly act: LineAct
  readonly atMs: EpochMs
  /** Before this it is too early; null where nothing says so. */
  readonly earliestAtMs: EpochMs | null
  /** After this it is late; null: it waits as long as it must. */
  readonly latestAtMs: EpochMs | null
  readonly status: DueStatus
  readonly shelfId: ShelfId | null
  readonly loadId: LoadId | null
  readonly batchId: BatchId | null
  readonly doughId: DoughId | null
  /** For pull and dip: the variety that the mixer decided; null for plain dough. */
  readonly varietyId: VarietyId | null
  readonly plannedId: PlannedId | null
  /** What is in the load, or what the pieces become by the planned loads; of a pull, the dips that it is for. */
  readonly lines: readonly Line[]
  readonly pieces: number
  /** For pull: whole trays. */
  readonly trays: number | null
}

/** `coming` before its time, `due` from then on, `late` after its latest. */
export function dueStatus(atMs: EpochMs, latestAtMs: EpochMs | null, nowMs: EpochMs): DueStatus {
  if (latestAtMs !== null && nowMs > latestAtMs) return 'late'
  return nowMs < atMs ? 'coming' : 'due'
}

/** What an act needs besides its time; the rest is null. */
export type ActParts = Pick<LineActDue, 'key' | 'act' | 'atMs' | 'lines' | 'pieces'> &
  Partial<Omit<LineActDue, 'status'>>

/** Field by field: hundreds are made at each look, and spreading one costs ten times as much. */
export function actDue(parts: ActParts, nowMs: EpochMs): LineActDue {
  return {
    key: parts.key,
    act: parts.act,
    atMs: parts.atMs,
    earliestAtMs: parts.earliestAtMs ?? null,
    latestAtMs: parts.latestAtMs ?? null,
    status: dueStatus(parts.atMs, parts.latestAtMs ?? null, nowMs),
    shelfId: parts.shelfId ?? null,
    loadId: parts.loadId ?? null,
    batchId: parts.batchId ?? null,
    doughId: parts.doughId ?? null,
    varietyId: parts.varietyId ?? null,
    plannedId: parts.plannedId ?? null,
    lines: parts.lines,
    pieces: parts.pieces,
    trays: parts.trays ?? null,
  }
}

/** Flip, lift and out ruin something when they wait; what is pulled, dipped, boarded and loaded can wait for them. */
const BURNS: ReadonlySet<LineAct> = new Set<LineAct>(['lift', 'flip', 'out'])
/** Within so long, hands that begin something else are not back in time for what burns. */
const HANDS_BUSY_MS = 30_000

/**
 * Compares acts for "soonest first". An act that nothing makes late and whose time is past counts as due now, and what
 * can wait counts as half a minute ahead at the soonest: neither may stand before a lift that has twenty seconds. Ties:
 * what burns first (kettle, then oven, then boards and cooler); in the oven the turn of its shelves at the door; then
 * out before flip before load; then the key.
 * @param turn the place of each shelf in the turn, see `turnOrder`
 */
export function bySoonest(nowMs: EpochMs, turn: ReadonlyMap<ShelfId, number>) {
  return (one: LineActDue, other: LineActDue): number =>
    handsAtMs(one, nowMs) - handsAtMs(other, nowMs) ||
    soonness(one, nowMs) - soonness(other, nowMs) ||
    PLACE[one.act] - PLACE[other.act] ||
    turnOf(one, turn) - turnOf(other, turn) ||
    RANK[one.act] - RANK[other.act] ||
    (one.key < other.key ? -1 : one.key > other.key ? 1 : 0)
}

function handsAtMs({ act, atMs }: LineActDue, nowMs: EpochMs): number {
  return BURNS.has(act) ? atMs : Math.max(atMs, nowMs + HANDS_BUSY_MS)
}

function soonness({ atMs, latestAtMs }: LineActDue, nowMs: EpochMs): number {
  return latestAtMs === null && atMs < nowMs ? nowMs : atMs
}

function turnOf({ shelfId }: LineActDue, turn: ReadonlyMap<ShelfId, number>): number {
  return shelfId === null ? 0 : (turn.get(shelfId) ?? turn.size)
}

type ByAct = { readonly [act in LineAct]: number }
const PLACE: ByAct = { lift: 0, out: 1, flip: 1, load: 1, board: 2, dip: 3, pull: 4 }
const RANK: ByAct = { lift: 0, out: 1, flip: 2, load: 3, board: 4, dip: 5, pull: 6 }
