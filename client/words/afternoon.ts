import type { Line } from '../../shared-core/day/state.ts'
import type { Range } from '../../shared-core/live/outlook.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enAfternoon } from './en-afternoon.ts'
import { esAfternoon } from './es-afternoon.ts'
import type { Words } from './words.ts'

/** What wall, counter and desk say of what remains for the afternoon, while loads can still be changed. */
export interface AfternoonWords {
  readonly title: string
  /** @example "Last load by 10:38: 12 more Sesame, 6 Plain" */
  moreBy(inByMs: EpochMs, lines: readonly Line[]): string
  /** Lines that there is no room for. @example "12 more Sesame and 2 other kinds" */
  moreFew(inByMs: EpochMs, first: Line, others: number): string
  /** In few letters. @example "by 10:38: +12 Sesame and 2 kinds" */
  moreShort(inByMs: EpochMs, first: Line, others: number): string
  /** What is planned will do. @example "Last load by 10:38: what is planned will do" */
  enough(inByMs: EpochMs): string
  readonly noLoads: string
  readonly columns: {
    readonly variety: string
    left(fromMs: EpochMs): string
    readonly lasts: string
    readonly more: string
  }
  /** @example "24 (18 to 31)" */
  left(range: Range): string
  /** Of ten such days. @example "8 of 10", "surely", "hardly" */
  lasts(percent: number): string
  /** @example "+12" */
  more(pieces: number): string
  readonly guess: string
  /** There is no outlook, or nothing to decide. */
  readonly none: string
}

export function afternoonWords(words: Words): AfternoonWords {
  return words.language === 'en' ? enAfternoon(words) : esAfternoon(words)
}
