import type { MixTask, OrderRules } from '../../../shared-core/dough/order.ts'
import { formulaId } from '../../../shared-core/ids.ts'
import type { Allergen } from '../../../shared-core/shop/shop.ts'
import { durationMs, epochMs } from '../../../shared-core/units.ts'

const MINUTE_MS = 60_000
/** An afternoon like any other. */
export const FROM_MS = 1_800_000_000_000

/** A mix in minutes: what is left out is a 10 min plain mix that is at once ready, takes no bench and is never late. */
export interface MinutesOfMix {
  readonly id: string
  readonly formula?: string
  readonly allergens?: readonly Allergen[]
  readonly strength?: number
  readonly earliest?: number
  readonly mix?: number
  readonly wait?: number
  readonly bench?: number
  readonly proof?: number
  readonly trays?: number
  readonly due?: number
}

export function mixTask(of: MinutesOfMix): MixTask {
  const span = (minutes: number) => durationMs(minutes * MINUTE_MS)
  return {
    id: of.id,
    formulaId: formulaId(of.formula ?? of.id),
    allergens: of.allergens ?? [],
    strength: of.strength ?? 0,
    earliestAtMs: epochMs(FROM_MS + (of.earliest ?? 0) * MINUTE_MS),
    mixMs: span(of.mix ?? 10),
    waitMs: span(of.wait ?? 0),
    benchMs: span(of.bench ?? 0),
    proofMs: span(of.proof ?? 0),
    trays: of.trays ?? 0,
    dueAtMs: epochMs(FROM_MS + (of.due ?? 100_000) * MINUTE_MS),
  }
}

export function orderRules(parts: Partial<OrderRules> = {}): OrderRules {
  return {
    washMs: durationMs(10 * MINUTE_MS),
    mixerFromMs: epochMs(FROM_MS),
    benchFromMs: epochMs(FROM_MS),
    proofTrays: null,
    before: null,
    ...parts,
  }
}

const SOME: readonly Allergen[] = ['milk', 'egg', 'treeNuts', 'sesame']

/** What a drawn day is like. */
export interface DayKind {
  readonly mixes: number
  readonly formulas: number
  /** All doughs rest alike, without a bulk ferment. */
  readonly isEven: boolean
  readonly proofTrays: number | null
  /** Minutes from the first mix until all should be in the cooler. */
  readonly due: number
  /** Minutes until the last pre-ferment is ripe, of one dough in five; an hour unless said otherwise. */
  readonly ripe?: number
}

/** A day of mixing drawn from a seed: mixing 9 to 16 min, rests of 7, some bulk ferments, proofs of 1 to 3 h (common practice, no source). */
export function drawnDay(seed: number, { mixes, formulas, isEven, proofTrays, due, ripe = 60 }: DayKind): MinutesOfDay {
  const draw = drawing(seed)
  const drawn = Array.from({ length: formulas }, () => ({
    allergens: ['wheat' as const, ...SOME.filter(() => draw(5) === 0)],
    strength: draw(10) < 6 ? 0 : 1 + draw(5),
    earliest: draw(5) === 0 ? draw(ripe) : 0,
    mix: 9 + draw(8),
    wait: !isEven && draw(4) === 0 ? 60 + draw(90) : 7,
    bench: 5 + draw(16),
    proof: 60 + draw(120),
    trays: 4 + draw(9),
    due,
  }))
  const tasks = Array.from({ length: mixes }, (_, index) => {
    const formula = index < formulas ? index : draw(formulas)
    return { id: `m${String(index).padStart(2, '0')}`, formula: `f${formula}`, ...drawn[formula] }
  })
  return { tasks, proofTrays }
}

/** A day whose order neither allergens nor flavours decide, only lateness: the hardest to prove. @param spread minutes between the first and the last that is due */
export function plainDay(seed: number, kind: DayKind, spread: number): MinutesOfDay {
  const { tasks, proofTrays } = drawnDay(seed, kind)
  const draw = drawing(seed * 77 + 5)
  const due = () => kind.due - Math.floor(spread / 2) + draw(spread + 1)
  return { tasks: tasks.map((task) => ({ ...task, allergens: ['wheat'], strength: 0, due: due() })), proofTrays }
}

export interface MinutesOfDay {
  readonly tasks: readonly MinutesOfMix[]
  readonly proofTrays: number | null
}

/** As the order takes it. */
export function dayOf({ tasks, proofTrays }: MinutesOfDay) {
  return { tasks: tasks.map(mixTask), rules: orderRules({ proofTrays }) }
}

/** Whole numbers below a limit from a seed: a linear congruence, of which the upper bits count. */
function drawing(seed: number): (below: number) => number {
  let state = seed >>> 0
  const draw = (below: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 0x1_0000_0000) * below)
  }
  for (let skip = 0; skip < 8; skip += 1) draw(2)
  return draw
}
