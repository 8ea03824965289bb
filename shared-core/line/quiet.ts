import type { Batch, Line, State } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { Dough, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { linesOf } from './contents.ts'
import { piecesOf } from './lines.ts'

export type QuietStage = 'proof' | 'chill' | 'rack' | 'cool'

/** Pieces of one dough that stand and wait, where nobody has to act within seconds. */
export interface Standing {
  readonly stage: QuietStage
  readonly doughId: DoughId
  readonly doughName: string
  readonly pieces: number
  /** Of these, past their earliest time; while cooling, none: what is cool is for sale. */
  readonly readyPieces: number
  /** Whole and begun trays; null while cooling. */
  readonly trays: number | null
  /** Pieces of which the variety is known. */
  readonly lines: readonly Line[]
  /** When the next pieces that are not ready will be (cooling: cool enough for sale); null when all are or nothing says. */
  readonly opensAtMs: EpochMs | null
  /** When the last of them will be. */
  readonly allReadyAtMs: EpochMs | null
  /** When the first of them has stood too long; null where nothing limits it. */
  readonly closesAtMs: EpochMs | null
  /** `waiting`: none is ready; `ready`: some are; `over`: some have stood too long. */
  readonly status: 'waiting' | 'ready' | 'over'
}

const STAGES: readonly QuietStage[] = ['proof', 'chill', 'rack', 'cool']

/**
 * What stands proofing, chilled, on the rack and cooling, by stage and dough in the set-up's order: what the wall shows
 * while the line is quiet.
 * @returns empty without a set-up; only doughs that have pieces there
 */
export function standingNow(state: State, nowMs: EpochMs): readonly Standing[] {
  const { shop } = state
  if (shop === null) return []
  const doughs = [...shop.doughs.values()].sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
  const all = [...batchesStanding(state), ...cooling(state, nowMs)]
  return STAGES.flatMap((stage) =>
    doughs.flatMap((dough) => {
      const some = all.filter((one) => one.stage === stage && one.doughId === dough.id)
      return some.length === 0 ? [] : [grouped(some, { stage, dough, shop, nowMs })]
    }),
  )
}

interface One {
  readonly stage: QuietStage
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly readyAtMs: EpochMs | null
  readonly latestAtMs: EpochMs | null
}

function batchesStanding(state: State): readonly One[] {
  return [...state.batches.values()].flatMap(({ stage, doughId, varietyId, pieces, until }: Batch) =>
    stage === 'proof' || stage === 'chill' || stage === 'rack'
      ? [
          {
            stage,
            doughId,
            varietyId,
            pieces,
            readyAtMs: until?.earliestAtMs ?? null,
            latestAtMs: until?.latestAtMs ?? null,
          },
        ]
      : [],
  )
}

function cooling(state: State, nowMs: EpochMs): readonly One[] {
  return [...state.stock.values()].flatMap(({ varietyId, doughId, lots }) =>
    lots
      .filter((lot) => lot.readyAtMs > nowMs)
      .map(
        ({ pieces, readyAtMs }) =>
          ({ stage: 'cool', doughId, varietyId, pieces, readyAtMs, latestAtMs: null }) as const,
      ),
  )
}

interface Group {
  readonly stage: QuietStage
  readonly dough: Dough
  readonly shop: Shop
  readonly nowMs: EpochMs
}

function grouped(some: readonly One[], { stage, dough, shop, nowMs }: Group): Standing {
  const unready = some.flatMap((one) => (one.readyAtMs !== null && one.readyAtMs > nowMs ? [one.readyAtMs] : []))
  const latests = some.flatMap((one) => one.latestAtMs ?? [])
  const pieces = piecesOf(some)
  const readyPieces = piecesOf(some.filter((one) => one.readyAtMs === null || one.readyAtMs <= nowMs))
  const closesAtMs = least(latests)
  const sums = new Map<VarietyId, number>()
  for (const one of some)
    if (one.varietyId !== null) sums.set(one.varietyId, (sums.get(one.varietyId) ?? 0) + one.pieces)
  return {
    stage,
    doughId: dough.id,
    doughName: dough.name,
    pieces,
    readyPieces,
    trays: stage === 'cool' ? null : Math.ceil(pieces / dough.trayPieces),
    lines: linesOf(sums, shop),
    opensAtMs: least(unready),
    allReadyAtMs: unready.reduce<EpochMs | null>((most, atMs) => (most === null || atMs > most ? atMs : most), null),
    closesAtMs,
    status: closesAtMs !== null && nowMs > closesAtMs ? 'over' : readyPieces > 0 ? 'ready' : 'waiting',
  }
}

function least(instants: readonly EpochMs[]): EpochMs | null {
  return instants.reduce<EpochMs | null>((soonest, atMs) => (soonest === null || atMs < soonest ? atMs : soonest), null)
}
