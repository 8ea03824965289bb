/** What the desk says of the days ahead in the dough room. */
export interface DaysWords {
  readonly title: string
  readonly hint: string
  readonly goTo: string
  readonly go: string
  readonly columns: {
    readonly [column in 'day' | 'wanted' | 'mixes' | 'mixing' | 'decide' | 'cooler']: string
  }
  readonly closed: string
  wanted(pieces: number, ordered: number): string
  /** Mixes for boiling on that day: what stands, and what the plan asks for. */
  stands(planned: number, begun: number): string
  asks(mixes: number): string
  mixing(mixes: number): string
  /** @param bakeDate in words @example "Rye by 10:00 for Thu, Nov 26" */
  decide(formula: string, clock: string, bakeDate: string): string
  readonly decided: string
  readonly late: string
  trays(trays: number, space: number | null): string
  tooMany(trays: number): string
  readonly next: string
  /** @param day "today", or a date */
  decideNext(formula: string, clock: string, day: string, bakeDate: string): string
  readonly nothingToDecide: string
  readonly preparations: string
  readonly preparationsHint: string
  readonly noPreparations: string
  readonly feed: string
  /** @param seed null: it needs none */
  make(weight: string, seed: string | null): string
  forDay(date: string): string
  begin(earliest: string, target: string, latest: string): string
  readonly status: { readonly coming: string; readonly due: string; readonly late: string }
  readonly made: string
  madeOf(name: string): string
  readonly short: string
  readonly nothingCounted: string
  readonly noShort: string
  shortLine(name: string, date: string, weight: string, bags: number | null): string
  readonly toStock: string
}
