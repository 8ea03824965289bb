import type { DoughReason, FormulaNeed, NeedCode } from '../../shared-core/dough/day-plan.ts'

/** What the desk says of the plan of one day. */
export interface PlanWords {
  title(date: string): string
  readonly hint: string
  readonly preview: string
  readonly nothing: string
  readonly closedDay: string
  decideBy(names: readonly string[], day: string, clock: string): string
  readonly decideLate: string
  readonly doughColumns: { readonly [column in 'dough' | 'shape' | 'why']: string }
  reason(code: NeedCode, pieces: number): string
  over(pieces: number): string
  spare(pieces: number): string
  noFormula(pieces: number): string
  readonly mixesTitle: string
  readonly mixColumns: { readonly [column in 'mix' | 'flour' | 'dough' | 'gives']: string }
  formulaHead(formula: string, mixes: number, flour: string, dough: string): string
  mixedOn(date: string): string
  mixedOnClosed(date: string): string
  doughReason(code: DoughReason['code'], weight: string): string
  fits(fits: FormulaNeed['fits'], least: string, most: string): string
  mixName(place: number): string
  flourOf(formula: string, place: number): string
  readonly fewerMixes: string
  readonly moreMixes: string
  fewerOf(formula: string): string
  moreOf(formula: string): string
  readonly asPlanned: string
  readonly byHand: string
  costs(over: number, dough: string): string
  costsShort(short: number, dough: string): string
  readonly costsNothing: string
  mixerTime(minutes: number, change: number): string
  readonly overMost: string
  readonly underLeast: string
  readonly unreadable: string
  readonly use: string
  readonly saveAndUse: string
  /** @param begun mixes of that day that have been begun and stay */
  stands(kind: 'none' | 'same' | 'earlierFormula' | 'differs', begun: number): string
  readonly toOrder: string
  readonly toSheets: string
}
