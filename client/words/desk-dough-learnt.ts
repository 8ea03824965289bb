import type { DividerCode } from '../../shared-core/dough/divider.ts'
import type { PackageVerdict } from '../../shared-core/dough/package-weight.ts'

/** What the desk says of what readings, tests and weighings have taught. */
export interface LearntWords {
  readonly friction: string
  readonly frictionHint: string
  readonly noFriction: string
  readonly frictionColumns: {
    readonly [column in 'formula' | 'mixer' | 'value' | 'setUp' | 'readings' | 'trust']: string
  }
  readonly withPreferment: string
  readonly trust: { readonly few: string; readonly spread: string; readonly good: string }
  readonly pace: string
  readonly paceHint: string
  readonly noPace: string
  /** @param percent of the set-up's window that this dough needs, under 100 is sooner */
  paceSays(percent: number): string
  paceTest(passed: boolean, percent: number, date: string): string
  readonly divider: string
  readonly dividerHint: string
  readonly noDivider: string
  readonly dividerColumns: {
    readonly [column in 'dough' | 'scaled' | 'pieces' | 'off' | 'spread' | 'drift' | 'says']: string
  }
  /** @param within half of the interval for the mean; null: too few @example "+0.1 oz ± 0.05 oz" */
  off(weight: string, within: string | null): string
  perHour(weight: string): string
  perDay(weight: string): string
  readonly dividerSays: { readonly [code in DividerCode]: string }
  readonly label: string
  readonly labelHint: string
  labelHead(dough: string, label: string, pieces: number): string
  readonly verdict: { readonly [verdict in PackageVerdict]: string }
  labelFigures(average: string, limit: string | null): string
  allowed(weight: string, tooLight: number): string
  readonly source: string
  readonly office: string
}
