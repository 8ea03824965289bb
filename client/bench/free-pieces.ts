import type { Line, State } from '../../shared-core/day/state.ts'
import type { DoughId } from '../../shared-core/ids.ts'
import type { Outlook, VarietyOutlook } from '../../shared-core/live/outlook.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { BenchWords } from '../words/bench.ts'
import type { StandingView } from './line-view.ts'

/** What pieces of which nothing is said yet had best become, the soonest gone first. */
export interface FreePieces {
  readonly lines: readonly Line[]
  /** When the first of them is gone otherwise; null: it would last, and is wanted for the afternoon. */
  readonly goneAtMs: EpochMs | null
}

/** More would be a plan, and the plan is the load list's. */
const KINDS_MOST = 2

/** What is gone later is for loads that are still to be thought of; the last ones are thought of in this time before. */
const SOON_MS = 2 * 3_600_000

/**
 * Of doughs that stand before the oven without a name: varieties that are likely gone within two hours with all that is on
 * the way, or, in the two hours before the last load, of which the last loads should carry more; by whole boards.
 * @returns null when there is no such dough, and where nothing is short
 */
export function freePieces(state: State, shop: Shop, outlook: Outlook | null): FreePieces | null {
  if (outlook === null) return null
  const doughs = freeDoughs(state)
  const wanted = outlook.varieties
    .flatMap((one) => {
      const variety = shop.varieties.get(one.varietyId)
      if (variety === undefined || variety.decidedAt === 'mixer' || !doughs.has(variety.doughId)) return []
      const pieces = Math.ceil(wantedOf(one, outlook) / shop.boards.pieces) * shop.boards.pieces
      return pieces === 0 ? [] : [{ line: { varietyId: one.varietyId, pieces }, goneAtMs: goneAt(one) }]
    })
    .sort((one, other) => (one.goneAtMs ?? LATE) - (other.goneAtMs ?? LATE) || other.line.pieces - one.line.pieces)
    .slice(0, KINDS_MOST)
  const [first] = wanted
  return first === undefined ? null : { lines: wanted.map(({ line }) => line), goneAtMs: first.goneAtMs }
}

/** Them as a row of what stands before the oven, with why. */
export function freeView(
  free: FreePieces | null,
  nowMs: EpochMs,
  { bench: { station } }: BenchWords,
): readonly StandingView[] {
  if (free === null) return []
  const { goneAtMs, lines } = free
  const detail =
    goneAtMs === null ? station.forAfternoon : goneAtMs <= nowMs ? station.goneNow : station.goneElse(goneAtMs)
  return [{ id: 'free', title: station.freePieces(lines), detail, isOver: false }]
}

const LATE = Number.MAX_SAFE_INTEGER

function freeDoughs({ batches }: State): ReadonlySet<DoughId> {
  const free = [...batches.values()].filter(({ stage, varietyId }) => varietyId === null && BEFORE_OVEN.has(stage))
  return new Set(free.map(({ doughId }) => doughId))
}

const BEFORE_OVEN: ReadonlySet<string> = new Set(['chill', 'rack', 'kettle', 'boards'])

function wantedOf(one: VarietyOutlook, { atMs, lastLoadInAtMs }: Outlook): number {
  const goneAtMs = goneAt(one)
  const isSoon = goneAtMs !== null && goneAtMs - atMs < SOON_MS
  const isLast = lastLoadInAtMs !== null && lastLoadInAtMs - atMs < SOON_MS
  return Math.max(isSoon ? one.lost : 0, isLast ? (one.atChangeover?.more ?? 0) : 0)
}

/** The first time that there is none, as likely as not. */
function goneAt({ shortAtMs, gone }: VarietyOutlook): EpochMs | null {
  return shortAtMs ?? gone.t50Ms
}
