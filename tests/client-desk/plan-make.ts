import { plannedId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { Plan, PlanFigures, PlanLoad, PlanSupply } from '../../shared-core/live/plan.ts'
import { advisedId } from '../../shared-core/live/plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'

const MINUTE_MS = 60_000

interface LoadParts extends Partial<PlanLoad> {
  readonly n: number
  readonly shelf: string
  readonly inAtMs: EpochMs
}

/** A load as it is told: two dips, in four minutes after the first, flipped after 3.5 min and out after 16. */
export function planLoad({ n, shelf, inAtMs, ...parts }: LoadParts): PlanLoad {
  const after = (minutes: number) => epochMs(inAtMs + minutes * MINUTE_MS)
  const own = parts.lines ?? lines('sesame', 36, 'poppy', 24)
  return {
    id: parts.isPinned === true ? plannedId(`own.${n}`) : advisedId(7, n),
    shelfId: shelfId(shelf),
    kettleAtMs: after(-4),
    dips: 2,
    inAtMs,
    flipAtMs: after(3.5),
    outAtMs: after(16),
    readyAtMs: after(31),
    lines: own,
    isPinned: false,
    isLast: false,
    why: own.map((line) => ({ varietyId: line.varietyId, kind: 'opening' })),
    contacts: [],
    ...parts,
  }
}

export function figures(parts: Partial<PlanFigures> = {}): PlanFigures {
  return {
    profitCents: 81_240,
    wavesProfitCents: 76_930,
    baked: 120,
    lost: 6.2,
    missing: 0,
    left: 14.4,
    ageMinutes: 41,
    firstKettleAtMs: null,
    lastOutAtMs: null,
    crewMinutes: 720,
    bottleneck: { of: 'kettle', gainCents: 510 },
    ...parts,
  }
}

export function supply(variety: string, parts: Partial<PlanSupply> = {}): PlanSupply {
  return { varietyId: varietyId(variety), forSale: 0, ready: [], asked: [], lost: 0, left: 0, ...parts }
}

export function planWith(parts: Partial<Plan> & Pick<Plan, 'loads' | 'date'>): Plan {
  const atMs = parts.loads[0]?.kettleAtMs ?? epochMs(0)
  const rest = { pulls: [], changed: null, last: null, cannot: [], supply: [], figures: figures() }
  return { atMs, ...rest, ...parts }
}
