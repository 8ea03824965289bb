import type { Line } from '../../shared-core/day/state.ts'
import type { PlanChange, PlanContact, PlanLoad, PlanPull, PlanWhy } from '../../shared-core/live/plan.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enAdvice } from './en-advice.ts'
import { esAdvice } from './es-advice.ts'
import type { Words } from './words.ts'

/** What bench and wall say of the plan, in few words: the desk has all of it. */
export interface AdviceWords {
  /** Whose wish a load is. */
  readonly advised: string
  readonly set: string
  /** @example "Sesame gone about 8:52; in time if in the kettle by 8:17" */
  why(why: PlanWhy): string
  /** In as few words as say it. @example "Sesame gone 8:52" */
  whyShort(why: PlanWhy): string
  /** @example "Next is now shelf 2, 8:20: Poppy sells faster than expected" */
  change(change: PlanChange): string
  /** Without the cause. @example "Next is now shelf 2, 8:20" */
  changeShort(change: PlanChange): string
  /** @example "last dip in 24 min" */
  lastDip(atMs: EpochMs, nowMs: EpochMs): string
  /** On the ruler. */
  readonly lastDipMark: string
  /** What the last loads carry to the close, and how many more kinds. @example "last loads: 36 Plain, 24 Sesame, 5 more" */
  carries(lines: readonly Line[], others: number): string
  /** The page of a load's reasons. */
  readonly reasons: string
  /** What to take out of the cooler, soonest first. @example "7:20 Plain 2 trays, 7:35 Rye 1 tray" */
  pulls(pulls: readonly PlanPull[]): string
  /** Kettle-fulls that a load still needs. @example "3 dips" */
  dips(count: number): string
  /** The way of a load. @example "first dip 8:17, in 8:20, out 8:34, ready 8:49" */
  times(load: Pick<PlanLoad, 'kettleAtMs' | 'inAtMs' | 'outAtMs' | 'readyAtMs'>): string
  /** @example "first dip in 12 min" */
  firstDip(atMs: EpochMs, nowMs: EpochMs): string
  /** In a sentence, with what can be done. Nothing is ever said to be without an allergen. */
  contact(contact: PlanContact): string
  /** @example "egg: Plain" */
  contactShort(contact: PlanContact): string
  /** What a slip of the changeover brings. @example "gains 4.20, 6 fewer in vain, as many left" */
  slip(slip: { readonly gainCents: number; readonly lostFewer: number; readonly leftFewer: number }): string
}

export function adviceWords(words: Words): AdviceWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => AdviceWords } = { en: enAdvice, es: esAdvice }
