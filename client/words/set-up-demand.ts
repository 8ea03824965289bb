import type { SpecialKind } from '../../shared-core/shop/shop.ts'

/** What the set-up says of what pieces are worth, of usual days and of special ones. */
export interface DemandSetUpWords {
  readonly kind: { readonly [kind in SpecialKind]: { readonly name: string; readonly hint: string } }
  /** What each rule does, in a sentence. */
  readonly does: {
    readonly [rule in 'disappointCents' | 'takeAnotherPercent' | 'dayOldSells' | 'dayOldPercent']: string
  }
  readonly byVariety: string
  readonly byVarietyHint: string
  readonly guessing: string
  readonly usualSum: string
  readonly variety: string
  readonly region: RegionWords
  readonly holidays: HolidayWords
  readonly dates: DateWords
}

export interface RegionWords {
  readonly country: string
  readonly part: string
  readonly wholeCountry: string
  readonly notSaid: string
  /** What choosing one would bring. */
  readonly empty: string
  readonly waiting: string
  readonly noContact: string
}

export interface HolidayWords {
  readonly title: string
  readonly hint: string
  readonly add: string
  /** @example "Add all 11" */
  addAll(count: number): string
  readonly have: string
  /** Days that people keep though nothing is closed. */
  readonly others: string
  readonly none: string
  readonly source: string
  /** @example "next on Thu, Nov 26, 2026; 3 of the years before" */
  line(next: string, before: number): string
}

export interface DateWords {
  readonly title: string
  readonly from: string
  readonly to: string
  readonly add: string
  /** @example "Remove Thu, Nov 26" */
  remove(span: string): string
  readonly none: string
  readonly again: string
  readonly sameWeekday: string
  readonly sameWeekdayHint: string
  /** @example "Thu, Nov 26, 2026" */
  long(date: string, year: string): string
  /** @example "next Thu, Nov 26, 2026 · 4 in all" */
  line(next: string | null, count: number): string
  readonly full: string
}
