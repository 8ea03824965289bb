import type { Formula } from '../shop/formula.ts'
import type { EpochMs } from '../units.ts'
import { mixDateOf } from './dates.ts'
import { mixingFrom } from './decide-by.ts'
import type { SheetLine } from './mix.ts'
import type { Looked } from './plan-days.ts'
import { planDays } from './plan-days.ts'
import { exactLines } from './scale.ts'

/** A mix that nobody has begun: as it stands, or as the plan of its day would have it. */
export interface MixAhead {
  readonly formula: Formula
  readonly bakeDate: string
  readonly mixDate: string
  /** When it is begun: as ordered, else when work in the dough room begins that day. */
  readonly startAtMs: EpochMs
  readonly lines: readonly SheetLine[]
}

/** All mixes still to come for days of boiling up to a date. */
export function mixesAhead(looked: Looked, lastBakeDate: string): MixAhead[] {
  const { state, shop } = looked
  const standing = [...state.mixes.values()].filter(({ stage }) => stage === 'planned')
  const stood = standing
    .filter(({ bakeDate }) => bakeDate <= lastBakeDate)
    .map(({ formula, bakeDate, startAtMs, lines }) => ({
      ...of(formula, bakeDate),
      startAtMs: startAtMs ?? mixingFrom(looked, formula, bakeDate),
      lines,
    }))
  const asked = planDays(looked, lastBakeDate).plans.flatMap(({ date, mixes }) => {
    if (standing.some(({ bakeDate }) => bakeDate === date)) return []
    return mixes.flatMap(({ formulaId, flourMilligrams }) => {
      const formula = shop.formulas.get(formulaId)
      if (formula === undefined) return []
      const lines = exactLines(shop, formula, flourMilligrams)
      return [{ ...of(formula, date), startAtMs: mixingFrom(looked, formula, date), lines }]
    })
  })
  return [...stood, ...asked]
}

function of(formula: Formula, bakeDate: string): Pick<MixAhead, 'formula' | 'bakeDate' | 'mixDate'> {
  return { formula, bakeDate, mixDate: mixDateOf(formula, bakeDate) }
}
