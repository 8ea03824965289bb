import type { State } from '../day/state.ts'
import type { Touched, Trace } from '../day/trace.ts'
import type { IngredientId, MixId } from '../ids.ts'
import type { Build, Mix } from './mix.ts'

/**
 * What a trace remembers of a mix that is still there: without its sheet, which never changes and is most of it. Sixty
 * drags of a day's mixes would else be some megabytes of every snapshot.
 */
export function withoutSheet(state: State, touched: Touched): Touched {
  const isThere = touched.table === 'mixes' && touched.before !== null && state.mixes.has(touched.id as MixId)
  if (!isThere) return touched
  const { formula: _formula, lines: _lines, ...before } = touched.before as Mix
  return { ...touched, before }
}

/**
 * A mix as it was before what is taken back, with its sheet as it is now: the lines that were weighed since stay weighed,
 * as weighing leaves no trace, and what lies in the bowl stays there.
 */
export function withSheet(state: State, touched: Touched): Touched {
  const now = touched.table === 'mixes' ? state.mixes.get(touched.id as MixId) : undefined
  if (now === undefined || touched.before === null) return touched
  return { ...touched, before: { ...(touched.before as Mix), formula: now.formula, lines: now.lines } }
}

/**
 * Ingredients that a mix or build took that a command began. A count of them since then saw them gone: with the
 * beginning taken back alone they would be there again, so the count is taken back first.
 */
export function usedBy(state: State, { touched }: Trace): ReadonlySet<IngredientId> {
  const used = new Set<IngredientId>()
  for (const { table, id, before } of touched) {
    const build = table === 'builds' && before === null ? state.builds.get(id as Build['id']) : undefined
    for (const { ingredientId } of build?.lines ?? []) used.add(ingredientId)
    const mix = table === 'mixes' ? state.mixes.get(id as MixId) : undefined
    if (mix === undefined || mix.mixedAtMs === null || (before as Mix | null)?.mixedAtMs != null) continue
    for (const { ingredientId } of mix.lines) if (ingredientId !== null) used.add(ingredientId)
  }
  return used
}

/** Pre-ferments and soakers that a command made: with mixes that took of them since, they cannot be unmade. */
export function madeBy({ touched }: Trace): ReadonlySet<string> {
  return new Set(touched.filter(({ table, before }) => table === 'builds' && before === null).map(({ id }) => id))
}

/** Whether a command began a mix that took of one of these. */
export function tookOf(state: State, { told }: Trace, { table, id }: Touched, made: ReadonlySet<string>): boolean {
  if (table !== 'mixes' || (told.type !== 'moveMix' && told.type !== 'shape')) return false
  return state.mixes.get(id as MixId)?.builds.some(({ buildId }) => made.has(buildId)) ?? false
}

/** Whether a command said how much of one of these there is, whatever was known before. */
export function counts({ told }: Trace, { table, id, before }: Touched, used: ReadonlySet<IngredientId>): boolean {
  if (table !== 'onHand' || !used.has(id as IngredientId)) return false
  return told.type === 'countIngredients' || before === null
}
