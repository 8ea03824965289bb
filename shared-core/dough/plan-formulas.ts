import type { Formula } from '../shop/formula.ts'
import { hoursOn } from '../shop/hours.ts'
import { inOrder } from '../shop/in-order.ts'
import { mixDateOf } from './dates.ts'
import type { DoughNeed, DoughReason, FormulaNeed, PlannedMix } from './day-plan.ts'
import { decideAt } from './decide-by.ts'
import type { Looked } from './plan-days.ts'
import { flourToFillBags } from './round-bags.ts'
import { doughOf, doughToMix, flourFor, shapedOf } from './scale.ts'
import { splitFlour, splitPieces } from './split.ts'

interface Planned {
  readonly doughs: readonly DoughNeed[]
  readonly formulas: readonly FormulaNeed[]
  readonly mixes: readonly PlannedMix[]
}

interface Pool {
  readonly formula: Formula
  readonly doughs: readonly DoughNeed[]
  readonly shapedMilligrams: number
  readonly doughMilligrams: number
  readonly flourMilligrams: number
}

/** Pools doughs by weight into their formulas, fills up bags, and splits each formula into mixes. */
export function planFormulas(looked: Looked, date: string, needs: readonly DoughNeed[]): Planned {
  const pools = inOrder(looked.shop.formulas).flatMap((formula) => poolOf(formula, needs) ?? [])
  const added = flourToFillBags(looked.shop, pools)
  const planned = pools.map((pool) => planPool(looked, date, pool, added.get(pool.formula.id) ?? 0))
  const filled = new Map(planned.flatMap((one) => one.doughs).map((need) => [need.doughId, need]))
  return {
    doughs: needs.map((need) => filled.get(need.doughId) ?? need),
    formulas: planned.map(({ formula }) => formula),
    mixes: planned.flatMap((one) => one.mixes),
  }
}

function poolOf(formula: Formula, needs: readonly DoughNeed[]): Pool | null {
  const doughs = needs.filter(({ formulaId, pieces, short }) => formulaId === formula.id && pieces > short)
  if (doughs.length === 0) return null
  const shapedMilligrams = doughs.reduce((sum, { pieces, pieceMilligrams }) => sum + pieces * pieceMilligrams, 0)
  const doughMilligrams = doughToMix(formula, shapedMilligrams)
  return { formula, doughs, shapedMilligrams, doughMilligrams, flourMilligrams: flourFor(formula, doughMilligrams) }
}

function planPool(
  looked: Looked,
  date: string,
  pool: Pool,
  added: number,
): { readonly doughs: readonly DoughNeed[]; readonly formula: FormulaNeed; readonly mixes: readonly PlannedMix[] } {
  const { shop } = looked
  const { formula } = pool
  const flourMilligrams = pool.flourMilligrams + Math.round(added)
  const forBags = added > 0 ? Math.max(0, doughOf(formula, flourMilligrams) - pool.doughMilligrams) : 0
  const doughs = withBagPieces(formula, pool.doughs, forBags)
  const split = splitFlour(flourMilligrams, shop.mixer)
  const gives = splitPieces(split.mixes, doughs)
  const mixDate = mixDateOf(formula, date)
  const why: readonly DoughReason[] = [
    { code: 'pieces', milligrams: pool.shapedMilligrams },
    { code: 'loss', milligrams: pool.doughMilligrams - pool.shapedMilligrams },
    { code: 'bags', milligrams: forBags },
  ]
  return {
    doughs,
    formula: {
      formulaId: formula.id,
      flourMilligrams,
      doughMilligrams: pool.doughMilligrams + forBags,
      mixes: split.mixes.length,
      fits: split.fits,
      mixer: split.mixer,
      why: why.filter(({ milligrams }) => milligrams !== 0),
      mixDate,
      isMixDateClosed: hoursOn(shop, mixDate) === null,
      decideAtMs: decideAt(looked, formula, date),
    },
    mixes: split.mixes.map((flour, n) => ({
      formulaId: formula.id,
      flourMilligrams: flour,
      startAtMs: null,
      gives: (gives[n] ?? []).map(({ doughId, pieces }) => ({ doughId, pieces })),
      doughMilligrams: doughOf(formula, flour),
      mixDate,
    })),
  }
}

/** Dough that fills up a bag becomes whole pieces of the formula's first dough; less than a piece is left over. */
function withBagPieces(formula: Formula, doughs: readonly DoughNeed[], forBags: number): readonly DoughNeed[] {
  const [first, ...others] = doughs
  if (first === undefined || forBags === 0) return doughs
  const more = Math.floor(shapedOf(formula, forBags) / first.pieceMilligrams)
  if (more === 0) return doughs
  const why = [...first.why, { code: 'bags' as const, pieces: more }]
  return [{ ...first, pieces: first.pieces + more, over: first.over + more, why }, ...others]
}
