import type { Forbid } from '../../shared-core/day/state.ts'
import type { Bottleneck, PlanCannot, PlanContact, PlanWhy } from '../../shared-core/live/plan.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { DeskWords } from './desk.ts'
import { enBakePlan } from './en-desk-plan.ts'
import { esBakePlan } from './es-desk-plan.ts'

/** What the desk says of which loads go when. */
export interface BakePlanWords {
  /** @example money(1250) // '12.50' */
  readonly money: (cents: number) => string
  readonly waiting: string
  readonly notYet: string
  readonly noContact: string
  readonly datesName: string
  readonly today: string
  readonly whatIfPage: string
  closed(date: string): string
  /** Neither sales nor guesses are known. */
  readonly nothingKnown: string
  readonly toUsual: string
  readonly nothingMore: string
  /** Of a day that is not open yet: which dough the plan counts on. */
  wantedDough(pieces: number): string
  readonly openDough: string
  readonly advice: {
    readonly title: string
    readonly on: string
    readonly off: string
    readonly turnOn: string
    readonly turnOff: string
  }
  readonly head: HeadWords
  readonly picture: PictureWords
  readonly table: {
    readonly title: string
    readonly hint: string
    readonly kettle: string
    readonly shelf: string
    readonly in: string
    readonly flip: string
    readonly out: string
    readonly contents: string
    readonly state: string
    readonly advised: string
    readonly pinned: string
    readonly last: string
  }
  why(why: PlanWhy): string
  contact(contact: PlanContact): string
  cannot(cannot: PlanCannot, loadOf: (id: string) => string): string
  /** A load in a sentence. @example "shelf 2 at 7:40" */
  load(shelf: string, inAtMs: EpochMs): string
  readonly chosen: ChosenWords
  readonly wishes: WishesWords
  readonly tried: TriedWords
  readonly supply: SupplyWords
  readonly last: LastWords
  readonly whatIf: WhatIfWords
}

export interface HeadWords {
  title(date: string): string
  baked(pieces: number, loads: number): string
  firstDip(atMs: EpochMs): string
  readonly noKettle: string
  lastOut(atMs: EpochMs): string
  readonly profit: string
  more(cents: number): string
  readonly moreUnknown: string
  readonly howTitle: string
  how(profitCents: number, wavesCents: number | null): string
  left(pieces: number): string
  lost(pieces: number): string
  missing(pieces: number): string
  age(minutes: number): string
  crew(minutes: number): string
  bottleneck(of: Bottleneck, gainCents: number): string
  readonly noBottleneck: string
  readonly labels: {
    readonly [label in 'bake' | 'firstDip' | 'lastOut' | 'profit' | 'waves' | 'risk' | 'crew']: string
  }
}

export interface PictureWords {
  readonly title: string
  readonly hint: string
  readonly kettle: string
  readonly boards: string
  boardsOf(most: number, count: number): string
  readonly opening: string
  readonly changeover: string
  readonly lastLoad: string
  readonly ruler: string
  readonly closer: string
  readonly whole: string
  spoken(loads: number, fromMs: EpochMs, toMs: EpochMs): string
  loadName(shelf: string, inAtMs: EpochMs, contents: string, isPinned: boolean): string
  readonly key: {
    readonly [kind in 'advised' | 'pinned' | 'running' | 'firstSide' | 'cooling' | 'contact' | 'forbidden']: string
  }
}

export interface ChosenWords {
  title(shelf: string, inAtMs: EpochMs): string
  times(load: {
    readonly kettleAtMs: EpochMs | null
    readonly dips: number
    readonly inAtMs: EpochMs
    readonly flipAtMs: EpochMs | null
    readonly outAtMs: EpochMs
    readonly readyAtMs: EpochMs
  }): string
  readonly earlier: string
  readonly later: string
  readonly shelf: string
  readonly pin: string
  readonly unpin: string
  readonly leaveOut: string
  notThen(variety: string): string
  readonly putAway: string
}

export interface WishesWords {
  readonly title: string
  readonly none: string
  pin(contents: string, shelf: string | null, inAtMs: EpochMs | null): string
  forbid(forbid: Forbid): string
  readonly lift: string
  readonly unpin: string
  readonly addTitle: string
  readonly anyShelf: string
  readonly anyVariety: string
  readonly shelf: string
  readonly variety: string
  readonly from: string
  readonly to: string
  readonly add: string
  readonly wrongSpan: string
}

export interface TriedWords {
  readonly title: string
  readonly waiting: string
  readonly failed: string
  costs(cost: Cost): string
  /** Everything that is set, against a day with nothing set. */
  all(costs: string): string
  readonly keep: string
  readonly leave: string
}

/** What a change does to the day: plus is more of it. */
export interface Cost {
  readonly profitCents: number
  readonly lost: number
  readonly missing: number
  readonly left: number
}

export interface SupplyWords {
  readonly title: string
  readonly hint: string
  readonly choose: string
  readonly theFew: string
  spoken(name: string, left: number, lost: number): string
  expects(left: number, lost: number): string
  readonly supply: string
  readonly asked: string
  readonly band: string
}

export interface LastWords {
  readonly title: string
  by(kettleByMs: EpochMs, inByMs: EpochMs, emptyByMs: EpochMs): string
  carries(loads: readonly string[]): string
  slip(byMs: number, gainCents: number, lostFewer: number, leftFewer: number): string
}

export interface WhatIfWords {
  readonly title: string
  readonly hint: string
  readonly changes: { readonly [change in WhatIfKind]: string }
  readonly amounts: { readonly [change in Exclude<WhatIfKind, 'order'>]: string | null }
  readonly orderOf: string
  readonly orderPieces: string
  readonly orderAt: string
  readonly ask: string
  readonly asking: string
  readonly failed: string
  readonly columns: { readonly [column in 'figure' | 'before' | 'after' | 'difference']: string }
  readonly rows: { readonly [row in 'profit' | 'lost' | 'missing' | 'left' | 'firstDip' | 'crew' | 'age']: string }
  readonly unreadable: string
  /** The whole answer in one sentence. */
  answer(cost: Cost): string
  hours(minutes: number): string
  minutes(minutes: number): string
}

export type WhatIfKind = 'shelf' | 'kettle' | 'boards' | 'opening' | 'changeover' | 'order' | 'people'

export function bakePlanWords(words: DeskWords): BakePlanWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: DeskWords) => BakePlanWords } = {
  en: enBakePlan,
  es: esBakePlan,
}
