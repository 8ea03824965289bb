/** What the desk says of the order of mixing. A `clock` says which half of the day, where the shop's clock has two. */
export interface OrderWords {
  readonly lead: string
  readonly none: string
  title(date: string): string
  readonly exact: string
  readonly bestFound: string
  /** Some mix of the day keeps a formula that has changed since it was planned. */
  readonly earlierFormula: string
  /** What an order costs, the most important first. */
  cost(contacts: number, washes: number, lateMs: number): string
  /** By how much the order on show costs more than the best. */
  more(contacts: number, washes: number, lateMs: number): string
  readonly isBest: string
  readonly isBestByHand: string
  readonly notSaved: string
  readonly saved: string
  readonly noTimes: string
  readonly takeBest: string
  readonly save: string
  readonly saveLatest: string
  readonly asItWas: string
  earlier(name: string): string
  later(name: string): string
  readonly drag: string
  /** @example "2. Rye for Fri, Nov 27" */
  mix(place: number, formula: string, date: string): string
  start(clock: string): string
  startLatest(clock: string): string
  coolerAt(clock: string): string
  contains(allergens: readonly string[]): string
  /** Why a mix stands where it does, and what comes of it. */
  readonly reason: ReasonWords
  readonly legend: { readonly [part in 'wash' | 'mix' | 'wait' | 'bench' | 'proof' | 'due']: string }
}

export interface ReasonWords {
  bringsLater(allergens: readonly string[]): string
  readonly stronger: string
  readonly sameBowl: string
  readonly soonest: string
  /** @param allergens of the mix before that this one lacks; none: it is only milder */
  wash(allergens: readonly string[]): string
  contact(allergens: readonly string[]): string
  waits(span: string): string
  benchWaits(span: string): string
  late(span: string): string
}
