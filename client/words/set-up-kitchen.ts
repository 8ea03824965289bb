import type { OrderRules } from '../../shared-core/shop/rules.ts'

/** What the set-up says of orders, of what is made to order and of the van's runs. */
export interface KitchenSetUpWords {
  /** What each rule does, in a sentence. */
  readonly does: { readonly [rule in keyof OrderRules]: string }
  /** @example "13, a baker’s dozen" */
  dozen(pieces: number): string
  /** Headings of the pages' parts. */
  readonly heads: {
    readonly taking: string
    readonly walkIns: string
    readonly keeping: string
    readonly packing: string
    readonly waiting: string
    readonly details: string
    readonly stations: string
    readonly portions: string
  }
  readonly handsHint: string
  /** @example "2 at once" */
  handsLine(hands: number): string
  readonly pullHint: string
  readonly trayHint: string
  /** @example "pulled 90 min before, trays of 12" */
  portionLine(pull: string | null, tray: number): string
  readonly slotsHint: string
  /** @example "6 places" */
  slotsLine(slots: number): string
  readonly item: MenuItemWords
  /** @example "leaves 7:15 am, 12 min from stop to stop" */
  runLine(clock: string, stop: string): string
  readonly stopHint: string
  readonly loadHint: string
  readonly sums: {
    /** @example "a dozen is 13, made in 8 min" */
    orders(dozen: number, made: string): string
    /** @example "3 stations, 12 portions" */
    kitchen(stations: number, portions: number): string
  }
}

export interface MenuItemWords {
  /** It has no steps. */
  readonly asItIs: string
  readonly onBagelHint: string
  readonly portionsHint: string
  readonly noPortions: string
  /** @example "2 Mozzarella" */
  portion(portions: number, name: string): string
  /** @example "Remove Mozzarella" */
  remove(what: string): string
  readonly stepsHint: string
  /** Without a station of the kitchen there is no step. */
  readonly noStations: string
  /** @example "Part 2" */
  step(no: number): string
  readonly addStep: string
  removeStep(no: number): string
  /** @example "Part 2 before part 1" */
  earlier(no: number): string
  readonly station: string
  readonly made: string
  readonly takes: string
  readonly how: { readonly byHand: string; readonly inOven: string }
  readonly slots: string
  readonly noSlots: string
  readonly bakesAt: string
  readonly bakesAtHint: string
  readonly what: { readonly turn: string; readonly move: string }
  readonly addTurn: string
  /** @example "After, of turn 1" */
  after(no: number): string
  /** @example "What is done, turn 1" */
  done(no: number): string
  /** @example "turn 1" */
  turn(no: number): string
  /** @example "By its portions it contains: wheat, milk." */
  contains(allergens: string): string
  readonly onBagelToo: string
  /** @example "Oven 4 min (2 places, turn after 2 min)" */
  stepSaid(
    station: string,
    takes: string,
    oven: { readonly slots: number; readonly turns: readonly string[] } | null,
  ): string
  /** @example "turn after 2 min" */
  turnSaid(what: 'turn' | 'move', after: string): string
}
