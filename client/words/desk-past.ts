import type { LoadPhase } from '../../shared-core/day/state.ts'
import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enPast } from './en-desk-past.ts'
import { esPast } from './es-desk-past.ts'
import type { Words } from './words.ts'

/** What the desk says of days that are past. */
export interface PastWords {
  readonly waiting: string
  readonly none: string
  readonly noContact: string
  readonly notReady: string
  readonly older: string
  readonly columns: { readonly [column in PastColumn]: string }
  readonly open: string
  readonly notKnown: string
  readonly plots: { readonly [plot in PlotName]: string }
  /** For those who listen. @example "Left at close by day, from Nov 1 to Nov 24: 12, 30, 8" */
  plotSpoken(name: string, values: readonly string[]): string
  look(label: string): string
  readonly replay: ReplayWords
}
export type PastColumn = 'day' | 'missed' | 'left' | 'onTime' | 'dozens' | 'unexplained'
export type PlotName = 'left' | 'unexplained' | 'missed'

export interface ReplayWords {
  title(label: string): string
  readonly back: string
  readonly loading: string
  readonly unknown: string
  readonly otherForm: string
  readonly nothingHappened: string
  readonly ruler: string
  /** @example "The day at 6:47" */
  at(atMs: EpochMs): string
  readonly play: string
  readonly stop: string
  readonly pace: string
  readonly minuteBack: string
  readonly minuteOn: string
  readonly lanes: string
  readonly gapsTitle: string
  readonly noGaps: string
  gap(name: string, fromMs: EpochMs, toMs: EpochMs): string
  /** A lane's load. @example "Shelf 1, 5:10 to 5:28: Sesame 36" */
  load(shelf: string, fromMs: EpochMs, toMs: EpochMs | null, contents: string): string
  readonly oven: string
  readonly line: string
  readonly rods: string
  readonly empty: string
  readonly nothingOnLine: string
  readonly noRods: string
  readonly phase: { readonly [phase in LoadPhase]: string }
  stage(stage: BatchStage): string
  readonly last: string
  readonly hint: string
}

export function pastWords(words: Words): PastWords {
  return words.language === 'en' ? enPast(words) : esPast(words)
}
