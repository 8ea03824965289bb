/**
 * On which dates something comes again: whole dates, a part of RFC 5545's recurrence rules (3.3.10). Dates are
 * YYYY-MM-DD and have no zone.
 */
export interface Recurrence {
  readonly freq: 'daily' | 'weekly' | 'monthly'
  readonly interval: number
  /** The first date from which it counts; it comes on it only where the rule says so. */
  readonly from: string
  /** The last date that it may come on; null: without an end. */
  readonly until: string | null
  /** ISO weekdays, 1 Monday to 7 Sunday; weekly: empty means that of `from`. */
  readonly weekdays: readonly number[]
  /** Monthly: which of these weekdays in the month, -1 the last one; null: the date of `from`, or every such weekday. */
  readonly nth: number | null
  /** Dates on which it does not come. */
  readonly except: readonly string[]
  /** Dates on which it comes besides. */
  readonly also: readonly string[]
}
