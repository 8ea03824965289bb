import type { Mix } from '../dough/mix.ts'
import { leftOf } from '../dough/mix-left.ts'
import { doughMilligramsOf } from '../dough/scale.ts'
import type { FormulaId, MixId } from '../ids.ts'
import type { EpochMs } from '../units.ts'

/**
 * Dough of one formula over a day, in milligrams: mixed + carriedIn = shaped + lost + spoilt + unexplained + left.
 * Unexplained is signed: negative when more was shaped than was there.
 */
export interface FormulaAccount {
  readonly formulaId: FormulaId
  /** As it was called when it was mixed last. */
  readonly name: string
  /** How many mixes were begun. */
  readonly mixes: number
  readonly mixed: number
  readonly carriedIn: number
  readonly shaped: number
  readonly lost: number
  readonly spoilt: number
  readonly unexplained: number
  readonly left: number
}

export interface DoughSince {
  /** Mixes as they were when the day began. */
  readonly before: ReadonlyMap<MixId, Mix>
  /** The close before: what was mixed since then is this day's. */
  readonly closedAtMs: EpochMs
  /** Those that a close wrote off: nobody tapped what became of their dough. */
  readonly gone: ReadonlySet<MixId>
}

/**
 * The account of mixes, by formula in the order of their first mixing.
 * @param mixes as they are now, or as they were when the day's close cleared them out
 * @param since left out: each mix as a whole, whatever day it was begun on
 */
export function doughAccount(mixes: Iterable<Mix>, since?: DoughSince): readonly FormulaAccount[] {
  const begun = [...mixes].filter(({ mixedAtMs }) => mixedAtMs !== null)
  const rows = new Map<FormulaId, FormulaAccount>()
  for (const mix of begun.sort(byBeginning)) {
    const row = accountOf(mix, since)
    const so = rows.get(row.formulaId)
    rows.set(row.formulaId, so === undefined ? row : added(so, row))
  }
  return [...rows.values()]
}

function accountOf(mix: Mix, since: DoughSince | undefined): FormulaAccount {
  const { id, formula, mixedAtMs } = mix
  const start = since?.before.get(id)
  const isOfBefore = start !== undefined && mixedAtMs !== null && mixedAtMs <= (since?.closedAtMs ?? 0)
  const before = isOfBefore ? start : { ...mix, ...NOTHING_YET }
  const left = leftOf(mix)
  const isGone = since?.gone.has(id) ?? false
  return {
    formulaId: formula.id,
    name: formula.name,
    mixes: isOfBefore ? 0 : 1,
    mixed: isOfBefore ? 0 : doughMilligramsOf(mix.lines),
    carriedIn: isOfBefore ? leftOf(before) : 0,
    shaped: mix.shapedMilligrams - before.shapedMilligrams,
    lost: mix.lostMilligrams - before.lostMilligrams,
    spoilt: mix.spoiltMilligrams - before.spoiltMilligrams,
    unexplained: mix.unexplainedMilligrams - before.unexplainedMilligrams + (isGone ? left : 0),
    left: isGone ? 0 : left,
  }
}

const NOTHING_YET = { shapedMilligrams: 0, lostMilligrams: 0, spoiltMilligrams: 0, unexplainedMilligrams: 0 }

function added(one: FormulaAccount, other: FormulaAccount): FormulaAccount {
  return {
    formulaId: one.formulaId,
    name: other.name,
    mixes: one.mixes + other.mixes,
    mixed: one.mixed + other.mixed,
    carriedIn: one.carriedIn + other.carriedIn,
    shaped: one.shaped + other.shaped,
    lost: one.lost + other.lost,
    spoilt: one.spoilt + other.spoilt,
    unexplained: one.unexplained + other.unexplained,
    left: one.left + other.left,
  }
}

function byBeginning(one: Mix, other: Mix): number {
  return (one.mixedAtMs ?? 0) - (other.mixedAtMs ?? 0) || (one.id < other.id ? -1 : 1)
}
