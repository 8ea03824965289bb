import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { DoughId, VarietyId } from '../../../shared-core/ids.ts'
import { actsBetween } from '../../../shared-core/line/route.ts'
import type { BatchStage, Dough, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/** What a sheet about dough does with the pieces that are chosen on it. */
export type DoughJob = 'pull' | 'dip' | 'carryIn' | 'shape'

/** A dough, or a variety that the mixer decided: such pieces never become anything else. */
export interface DoughChoice {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly trayPieces: number
  /** Where it can be put, in the order of its route. */
  readonly stages: readonly StartStage[]
  /** Pieces that stand where the job takes them from. */
  readonly atHand: number
  /** Of a pull: pieces that proof yet, apart from those at hand; else 0. */
  readonly proofing: number
  /** Of a pull: when the window of the first of those at hand ends; null where nothing limits it. */
  readonly useByMs: EpochMs | null
}

export type StartStage = 'proof' | 'chill' | 'rack'
const START_STAGES: readonly StartStage[] = ['proof', 'chill', 'rack']

/** Where a dough waits before the act; found pieces can be anywhere before it. */
const TAKEN_FROM: { readonly [job in DoughJob]: readonly BatchStage[] } = {
  pull: ['chill'],
  dip: ['rack', 'chill', 'proof'],
  carryIn: [],
  shape: [],
}

/** What a job can be done with: those of which something stands ready first, then as the set-up lists them. */
export function doughChoices(state: State, shop: Shop, job: DoughJob): readonly DoughChoice[] {
  const all = [...shop.doughs.values()]
    .filter((dough) => !dough.retired && isOnRoute(dough, job))
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
    .flatMap((dough) => kindsOf(shop, dough).map((varietyId) => choice(state, dough, varietyId, job)))
  const atHand = all.filter((one) => one.atHand > 0)
  return [...soonestFirst(atHand), ...all.filter((one) => one.atHand === 0)]
}

/** What must be boiled soonest stands first; the order is kept among those without a limit. */
function soonestFirst(choices: readonly DoughChoice[]): readonly DoughChoice[] {
  const by = ({ useByMs }: DoughChoice) => useByMs ?? Number.MAX_SAFE_INTEGER
  return [...choices].sort((one, other) => by(one) - by(other))
}

/** How many to begin with: for the kettle what it takes, else a tray; never more than stand there, where some do. */
export function firstPieces({ atHand, trayPieces }: DoughChoice, job: DoughJob, shop: Shop): number {
  const usual = job === 'dip' ? shop.kettle.pieces : trayPieces
  return atHand > 0 ? Math.min(usual, atHand) : usual
}

export interface Putting {
  readonly pieces: number
  readonly stage: StartStage
  /** Hours that the pieces have stood there already. */
  readonly hours: number
  readonly nowMs: EpochMs
}

export function doughAct(
  job: DoughJob,
  { doughId, varietyId }: DoughChoice,
  { pieces, stage, hours, nowMs }: Putting,
): Act {
  if (job === 'pull' || job === 'dip') return { type: job, doughId, varietyId, pieces }
  if (job === 'shape') return { type: 'shape', doughId, varietyId, pieces, stage }
  const sinceMs = hours === 0 ? null : epochMs(Math.max(0, nowMs - hours * 3_600_000))
  return { type: 'carryIn', doughId, varietyId, pieces, stage, sinceMs }
}

function isOnRoute(dough: Dough, job: DoughJob): boolean {
  if (job === 'dip') return dough.route.includes('kettle')
  if (job === 'pull') return dough.route.includes('rack') && actsBetween(dough, 'chill', 'kettle').length > 0
  return startStages(dough).length > 0
}

/** Plain dough, then what is mixed as a variety. A dough of which nothing is decided on the line has no plain pieces. */
function kindsOf(shop: Shop, dough: Dough): readonly (VarietyId | null)[] {
  const ofDough = [...shop.varieties.values()]
    .filter((variety) => variety.doughId === dough.id && !variety.retired)
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
  const mixed = ofDough.filter((variety) => variety.decidedAt === 'mixer').map((variety) => variety.id)
  return mixed.length > 0 && mixed.length === ofDough.length ? mixed : [null, ...mixed]
}

function choice(state: State, dough: Dough, varietyId: VarietyId | null, job: DoughJob): DoughChoice {
  let atHand = 0
  let proofing = 0
  let useByMs: EpochMs | null = null
  for (const batch of state.batches.values()) {
    // What nobody named serves as any variety of its dough.
    const isSame = batch.doughId === dough.id && (batch.varietyId === varietyId || batch.varietyId === null)
    if (isSame && TAKEN_FROM[job].includes(batch.stage)) {
      atHand += batch.pieces
      if (job === 'pull') useByMs = sooner(useByMs, untilOf(state, batch)?.latestAtMs ?? null)
    } else if (isSame && job === 'pull' && batch.stage === 'proof') proofing += batch.pieces
  }
  const { id: doughId, trayPieces } = dough
  return { doughId, varietyId, trayPieces, stages: startStages(dough), atHand, proofing, useByMs }
}

function sooner(one: EpochMs | null, other: EpochMs | null): EpochMs | null {
  return one === null || (other !== null && other < one) ? other : one
}

function startStages(dough: Dough): readonly StartStage[] {
  return START_STAGES.filter((stage) => dough.route.includes(stage))
}
