import type { LearntTime } from '../../shared-core/line/learnt-times.ts'
import type { HeldBack } from '../../shared-core/live/oven-heat.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enLearnt } from './en-desk-learnt.ts'
import { esLearnt } from './es-desk-learnt.ts'
import type { Words } from './words.ts'

/** What the desk says of the line's times as they really are, and of the oven's heat. */
export interface LearntTimesWords {
  readonly times: {
    readonly title: string
    hint(days: number): string
    /** Nothing was tapped often enough. */
    readonly none: string
    readonly columns: {
      readonly what: string
      readonly median: string
      readonly most: string
      readonly setUp: string
      readonly taps: string
    }
    readonly what: { readonly [what in LearntTime['what']]: string }
    /** @example "8 taps on 3 days" */
    taps(taps: number, days: number): string
    readonly takeOver: string
    taken(what: string): string
    readonly asSetUp: string
  }
  readonly heat: {
    readonly title: string
    readonly hint: string
    readonly caution: string
    readonly basis: { readonly readings: string; readonly past: string; readonly kind: string }
    /** Nobody said at what bagels or the second menu bake. */
    readonly noTarget: string
    second(degrees: string, early: EpochMs, likely: EpochMs, late: EpochMs, wanted: EpochMs): string
    never(degrees: string): string
    turnOn(by: EpochMs, likely: EpochMs, ready: EpochMs): string
    wait(now: string, wanted: string, until: EpochMs): string
    hot(now: string): string
    course(isHeating: boolean, tau: number, limit: string): string
    heldBack(held: HeldBack, degrees: string): string
    readonly noReadings: string
    readonly plot: string
    spoken(readings: number): string
  }
}

export function learntTimesWords(words: Words): LearntTimesWords {
  return words.language === 'es' ? esLearnt(words) : enLearnt(words)
}
