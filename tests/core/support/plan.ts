import { shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { Plan, PlanFigures, PlanLoad } from '../../../shared-core/live/plan.ts'
import { advisedId } from '../../../shared-core/live/plan.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at, lines } from './make.ts'

const MINUTE_MS = 60_000

/** An advised load of 24 sesame that goes in then, unless said otherwise. */
export function planLoad(clock: string, n: number, parts: Partial<PlanLoad> = {}): PlanLoad {
  const inAtMs = at(clock)
  const after = (minutes: number) => epochMs(inAtMs + minutes * MINUTE_MS)
  return {
    id: advisedId(7, n),
    shelfId: shelfId('s1'),
    kettleAtMs: after(-3),
    dips: 1,
    inAtMs,
    flipAtMs: after(3),
    outAtMs: after(16),
    readyAtMs: after(31),
    lines: lines('sesame', 24),
    isPinned: false,
    isLast: false,
    why: [{ varietyId: varietyId('sesame'), kind: 'opening' }],
    contacts: [],
    ...parts,
  }
}

const FIGURES: PlanFigures = {
  profitCents: 50_000,
  wavesProfitCents: 45_000,
  baked: 24,
  lost: 1,
  missing: 0,
  left: 2,
  ageMinutes: 40,
  firstKettleAtMs: null,
  lastOutAtMs: null,
  crewMinutes: null,
  bottleneck: null,
}

/** The test shop's plan of its day, as it is at eight. */
export function planWith(loads: readonly PlanLoad[], parts: Partial<Plan> = {}): Plan {
  return {
    date: '2026-11-24',
    atMs: at('8:00'),
    loads,
    pulls: [],
    changed: null,
    last: null,
    cannot: [],
    supply: [],
    figures: FIGURES,
    ...parts,
  }
}
