import type { Line } from '../../shared-core/day/state.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { ComingFrom } from '../../shared-core/stock/on-the-way.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { CounterJobWords } from './counter-jobs.ts'
import { enCounter } from './en-counter.ts'
import { enCounterJobs } from './en-counter-jobs.ts'
import { esCounter } from './es-counter.ts'
import { esCounterJobs } from './es-counter-jobs.ts'
import type { Words } from './words.ts'

/** What the number for sale of a rod rests on. */
export type Basis =
  /** `isNow`: counted a moment ago. */
  | { readonly how: 'counted'; readonly atMs: EpochMs; readonly isNow: boolean }
  /** `atMs`: when the youngest of the pieces for sale came for sale. */
  | { readonly how: 'baked'; readonly atMs: EpochMs }
  | { readonly how: 'nothing' }

/** The words of the counter: those that all screens share, and its own. */
export interface CounterWords extends Words {
  readonly counter: CounterSentences
  readonly jobs: CounterJobWords
}

export interface CounterSentences {
  readonly rod: CounterRodWords
  readonly hand: HandWords
  readonly amounts: AmountsWords
  readonly kept: KeptWords
  readonly orders: OrdersKeyWords
  readonly day: CounterDayWords
  /** The page's heading, for those who listen. @example "Counter 8:51" */
  title(clock: string): string
  readonly takeBack: string
  readonly nothingDone: string
  readonly putAway: string
  /** Beside the arrow of a key that turns pages. */
  readonly more: string
  /** @example "2 of 3" */
  page(page: number, pages: number): string
  readonly back: string
}

export interface CounterRodWords {
  /** Over a number that is not known to the piece. */
  readonly about: string
  /** A number with how well it is known. @example "about 12 (± 3)", "12" */
  number(likely: number, within: number): string
  /** @example "gone about 9:40" */
  goneAbout(atMs: EpochMs): string
  /** The same in full. @example "gone about 9:40 at this pace (24 an hour)" */
  atPace(gone: string, perHour: number): string
  /** Lasts, rather than not, but hardly longer than to this instant if not. @example "may run out 11:20" */
  mayRunOut(fromMs: EpochMs): string
  /** Over the pieces that come: it may be gone before them. @example "may run out before" */
  readonly mayNotReach: string
  /** At the close, of what lasts. @example "about 6 left" */
  aboutLeft(pieces: number): string
  /** In full, with how far off it may be. @example "gone about 9:40 (9:15 to 10:20)"; null: it may also last */
  between(gone: string, fromMs: EpochMs, toMs: EpochMs | null): string
  /** Rests on what somebody guessed before there were sales. @example "gone about 9:40, a guess" */
  guessed(gone: string): string
  /** It runs out before more comes. @example "none 8:14–8:43" */
  noneBetween(fromMs: EpochMs, toMs: EpochMs): string
  /** On the rod. @example "sold out 9:10" */
  soldOut(atMs: EpochMs): string
  /** In full. @example "sold out since 9:10" */
  soldOutSince(atMs: EpochMs): string
  /** After "sold out". @example "24 more about 9:35", "24 more planned 9:35" */
  moreAbout(pieces: number, atMs: EpochMs, from: ComingFrom): string
  readonly mayBeGone: string
  readonly lastsToClose: string
  readonly noMore: string
  /** Never any, and none to come. */
  readonly none: string
  /** The same before the day's first load: nobody knows of what there will be none. */
  readonly noneYet: string
  /** No day is open after a close. */
  readonly closed: string
  /** The time of those that only cool is sure; of planned ones nothing is in the oven yet. @example "36 at 9:04", "36 about 9:04", "36 planned 9:04" */
  coming(pieces: number, atMs: EpochMs, from: ComingFrom): string
  /** @example "kept 6" */
  kept(pieces: number): string
  /** @example "day-old 4" */
  dayOld(pieces: number): string
  /** What the number rests on. @example "counted 7:30", "counted now", "baked 7:50" */
  known(basis: Basis): string
  /** @example "24 for sale" */
  forSale(pieces: number): string
  /** For those who listen. @example "Sesame: about 24 for sale, 6 kept, 36 on the way, 24 planned" */
  spoken(rod: SpokenRod): string
  readonly rack: string
}

export interface SpokenRod {
  readonly name: string
  readonly likely: number
  readonly within: number
  readonly kept: number
  /** On boards, in the oven, cooling. */
  readonly onTheWay: number
  /** Not on boards yet. */
  readonly planned: number
  readonly known: string
}

export interface HandWords {
  readonly touchARod: string
  /** Where a till's sales count. */
  readonly tillSells: string
  /** Where counts alone keep the numbers. */
  readonly countsOnly: string
  /** After the changeover. */
  readonly bakingOver: string
  /** On the rod itself. @example "in hand 2" */
  inHand(pieces: number): string
  /** A mixed sale of many. @example "5 kinds" */
  kinds(kinds: number): string
  /** For those who listen, on a key that sells. @example "sold Sesame 6" */
  sold(lines: readonly Line[]): string
  /** Why a number is too small. @example "14 in hand" */
  tooSmall(inHand: number): string
  /** A dozen of several kinds as the board proposes it. @example "Assorted 12" */
  assorted(pieces: number): string
  /** An assorted sale for those who listen. */
  assortedSold(pieces: number, lines: readonly Line[]): string
  readonly changeIt: string
  /** Nothing is there to put together. */
  readonly noneForSale: string
  /** A sale of which nobody says the kinds. */
  readonly unnamed: string
  readonly unnamedDetail: string
  readonly unnamedHow: string
  /** @example "sold 12, kinds not named" */
  unnamedSold(pieces: number): string
  /** What is done with another number, or what was not sold. */
  readonly other: string
  readonly count: string
  readonly keep: string
  readonly lastOneGone: string
  /** With the rod's name, where it is not in hand. @example "Last Poppy gone" */
  lastOf(name: string): string
  /** Touches take back one by one while it is down. */
  readonly fewer: string
  readonly putBack: string
  /** Group of the keys that sell, for those who listen. */
  readonly sell: string
}

export interface AmountsWords {
  readonly title: { readonly [purpose in AmountsPurpose]: string }
  readonly wholeHalfDozens: string
  readonly singles: string
  /** For those who listen, on a key. @example "24: 4 rings" */
  ringsKey(rings: number): string
  singlesKey(pieces: number): string
  readonly sixMore: string
  /** Keys that do it; null: no number is chosen yet. @example "Sold 17", "Sold" */
  sold(pieces: number | null): string
  keep(pieces: number | null): string
  counted(pieces: number | null): string
  wasted(pieces: number | null): string
  kitchen(pieces: number | null): string
  given(pieces: number | null): string
  readonly nothingChosen: string
}
export type AmountsPurpose = 'other' | 'keep' | 'count' | 'unnamed'

export interface KeptWords {
  readonly title: string
  /** @example "2 kept, 18 pieces" */
  summary(keeps: number, pieces: number): string
  readonly nothing: string
  readonly handOver: string
  readonly release: string
  readonly keptAt: (atMs: EpochMs) => string
}

/** What the rack's foot says of orders; all else comes with their pages. */
export interface OrdersKeyWords {
  readonly title: string
  /** @example "12 open", "2 at risk" */
  summary(open: number, atRisk: number): string
  readonly slip: string
  /** @example "2 wait", "41 ready" */
  slipSummary(waiting: number, ready: number): string
}

export interface CounterDayWords {
  /** @example "last load in by 10:34" */
  lastLoad(atMs: EpochMs): string
  readonly lastLoadGone: string
  /** Of a weekday on which the shop is closed. */
  readonly closedToday: string
  readonly changeover: string
  /** After the changeover no more is baked. */
  tooLate(atMs: EpochMs): string
  others(count: number): string
  readonly spoken: string
  readonly noSetUp: string
  readonly looking: string
}

export function counterWords(words: Words): CounterWords {
  const { language } = words
  return { ...words, counter: OF_LANGUAGE[language](words), jobs: JOBS_OF_LANGUAGE[language](words) }
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => CounterSentences } = {
  en: enCounter,
  es: esCounter,
}

const JOBS_OF_LANGUAGE: { readonly [language in Language]: (words: Words) => CounterJobWords } = {
  en: enCounterJobs,
  es: esCounterJobs,
}
