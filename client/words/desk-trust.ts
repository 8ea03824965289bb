import type { Off, OverrideJson, ShareJson } from '../../shared-core/live/trust.ts'
import { enTrust } from './en-desk-trust.ts'
import { esTrust } from './es-desk-trust.ts'
import type { Words } from './words.ts'

/** What the desk says of how far its forecasts are to be trusted. */
export interface TrustWords {
  readonly of: string
  readonly each: string
  readonly ranges: { readonly '28': string; readonly '84': string; readonly '365': string }
  readonly summary: TrustSummaryWords
  readonly held: HeldWords
  readonly tables: TrustTableWords
  readonly one: OneVarietyWords
  readonly cost: CostWords
  readonly overrides: OverrideWords
}

export interface TrustSummaryWords {
  readonly title: string
  /** Nothing was judged yet. */
  readonly noDays: string
  readonly nothingToCompare: string
  each(off: Off): string
  shop(off: Off): string
  /** Beside the better of the two simple ways. */
  readonly beside: { readonly nearer: string; readonly asNear: string; readonly farther: string }
  estimated(estimated: number, rows: number, without: Off | null): string
  /** @param varieties forecast from guesses alone, from few days, from many */
  basis(varieties: { readonly guess: number; readonly few: number; readonly many: number }): string
  known(days: number, judged: number): string
  readonly guessing: string
  readonly how: string
}

export interface HeldWords {
  readonly title: string
  readonly hint: string
  readonly what: { readonly [row in HeldRow]: string }
  readonly columns: { readonly said: string; readonly held: string; readonly should: string; readonly verdict: string }
  /** @example "39 of 48" */
  share(share: ShareJson): string
  /** @example "about 41" */
  should(share: ShareJson): string
  readonly verdict: { readonly [verdict in Verdict]: string }
}
export type HeldRow = 'inside' | 'likely' | 'careful' | 'plenty'
/** `none`: nothing was judged. Of a range `tooSure` or `tooUnsure`, of a number `tooLow` or `tooHigh`. */
export type Verdict = 'none' | 'asItShould' | 'tooSure' | 'tooUnsure' | 'tooLow' | 'tooHigh'

export interface TrustTableWords {
  readonly varieties: string
  readonly doughs: string
  readonly weekdays: string
  readonly rests: string
  readonly restsHint: string
  rest(clock: string): string
  readonly columns: {
    readonly variety: string
    readonly dough: string
    readonly weekday: string
    readonly rest: string
    readonly asked: string
    readonly board: string
    readonly lastWeek: string
    readonly lastFour: string
    readonly inside: string
  }
  readonly hint: string
  number(pieces: number): string
  look(name: string): string
  /** Of rows, how many fell inside the range. @example "88 %" */
  inside(share: ShareJson): string
  readonly measures: string
  readonly measuresHint: string
  readonly measureColumns: { readonly wape: string; readonly mase: string; readonly pinball: string }
}

export interface OneVarietyWords {
  title(name: string): string
  readonly hint: string
  readonly range: string
  readonly asked: string
  readonly estimated: string
  readonly noDays: string
  readout(date: string, asked: number, low: number, high: number, isEstimated: boolean): string
  spoken(name: string, inside: number, of: number): string
  off(name: string, off: Off): string
}

export interface CostWords {
  title(days: number): string
  readonly hint: string
  readonly none: string
  readonly unknownBaked: string
  readonly way: { readonly [way in CostWay]: string }
  readonly columns: {
    readonly way: string
    readonly left: string
    readonly leftCost: string
    readonly lost: string
    readonly lostCost: string
    readonly sum: string
  }
  /** Of the days together; null: what was baked is not known. */
  words(baked: string | null, advised: string): string
}
export type CostWay = 'baked' | 'advised' | 'lastWeek' | 'lastFour'

export interface OverrideWords {
  readonly title: string
  readonly none: string
  summary(changed: number, nearer: number, farther: number): string
  readonly columns: {
    readonly day: string
    readonly what: string
    readonly advised: string
    readonly typed: string
    readonly asked: string
    readonly nearer: string
  }
  nearer(line: OverrideJson): string
  readonly estimated: string
}

export function trustWords(words: Words): TrustWords {
  return words.language === 'en' ? enTrust(words) : esTrust(words)
}

/** How near the board was beside the better of the simple ways; what nobody would notice is as near. */
export function besideOf({ board, lastWeek, lastFour }: Off): keyof TrustSummaryWords['beside'] {
  const better = Math.min(lastWeek, lastFour)
  if (board < better * (1 - NOTICED_PART)) return 'nearer'
  return board > better * (1 + NOTICED_PART) ? 'farther' : 'asNear'
}
/** Common sense, no source. */
const NOTICED_PART = 0.03

/** Whether a promise was kept, as far as so few days can tell, and if not, which way it was off. */
export function verdictOf(row: HeldRow, { of, expected, low, high }: ShareJson): Verdict {
  if (of === 0) return 'none'
  const promised = expected / of
  if (promised > high) return row === 'inside' ? 'tooSure' : 'tooLow'
  if (promised < low) return row === 'inside' ? 'tooUnsure' : 'tooHigh'
  return 'asItShould'
}
