import type { DividerCode } from '../../shared-core/dough/divider.ts'
import type { MixStage, MixTemp, Place, WaterPlan } from '../../shared-core/dough/mix.ts'
import type { PackageVerdict } from '../../shared-core/dough/package-weight.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { BenchWords } from './bench.ts'
import { enBenchDough } from './en-bench-dough.ts'
import { esBenchDough } from './es-bench-dough.ts'

/** The words of the dough room on the tablet; they are fetched with it. */
export interface DoughRoomWords extends BenchWords {
  readonly room: RoomSentences
}

export interface RoomSentences {
  readonly title: string
  /** Where the way back of a page leads. */
  readonly back: string
  /** From a page that lies over another one. */
  readonly backOne: string
  readonly way: WayWords
  readonly acts: RoomActWords
  readonly mix: MixWords
  readonly temps: TempWords
  readonly shape: ShapeWords
  readonly batch: BatchWords
  readonly made: PreparationWords
  readonly readings: ReadingWords
  readonly divider: DividerWords
  readonly pad: PadWords
}

/** The stations, and what stands there. */
export interface WayWords {
  readonly scale: string
  readonly mixer: string
  readonly bench: string
  readonly proof: string
  readonly cooler: string
  readonly nothing: string
  readonly nothingDue: string
  readonly nothingPlanned: string
  /** The set-up has no dough room. */
  readonly noRoom: string
  /** For those who listen. */
  readonly line: string
  /** @example "24 of 40 trays" */
  trays(trays: number, most: number | null): string
  /** @example "and 3 more" */
  more(count: number): string
}

/** What to do next, verb first; `name` says of what. */
export interface RoomActWords {
  begin(name: string): string
  feed(name: string): string
  mix(name: string): string
  mixIn(name: string): string
  mixerOff(name: string): string
  /** What comes after the rest, whatever it is. */
  restOver(name: string): string
  fold(n: number, of: number, name: string): string
  bulkOver(name: string): string
  chill(name: string): string
  use(name: string): string
}

export interface MixWords {
  /** @example "Plain 2 of 3" */
  name(formula: string, nth: number, of: number): string
  stage(stage: MixStage): string
  /** @example "for Thu, Nov 26" */
  forDate(date: string): string
  /** @example "start at 9:40" */
  start(atMs: EpochMs): string
  /** @example "3 of 7 weighed" */
  weighed(done: number, of: number): string
  readonly allWeighed: string
  /** On the key for the line that stands large. */
  readonly lineWeighed: string
  readonly notWeighed: string
  readonly mixIn: string
  /** @example "not ripe before 14:10" */
  unripe(atMs: EpochMs): string
  readonly noneMade: string
  readonly startMixing: string
  /** Lines that are not weighed yet do not block. @example "3 lines to weigh" */
  toWeigh(lines: number): string
  readonly mixerOff: string
  /** @example "mix-ins at 9:50" */
  mixInsAt(atMs: EpochMs): string
  readonly mixInsNow: string
  readonly onToRest: string
  readonly onToBulk: string
  readonly onToBulkChill: string
  readonly onToBench: string
  readonly backTo: string
  fold(n: number, of: number): string
  /** @example "fold 2 at 11:20" */
  foldAt(n: number, atMs: EpochMs): string
  /** @example "dough 25.2 °C, wished 24.4 °C" */
  doughRead(read: string, wished: string): string
  /** @example "mixer warms by 24 °F, from 4 mixes" */
  friction(by: string, mixes: number): string
  /** The dough's temperature taught nothing: something that it follows from is only assumed. */
  readonly notTaught: string
  readonly gone: string
  readonly caution: string
}

export interface TempWords {
  readonly names: { readonly [temp in MixTemp]: string }
  /** @example "assumed 70 °F" */
  assumed(text: string): string
  readonly notRead: string
  /** @example "at 54 °F" */
  water(degrees: string): string
  /** Besides the water. @example "+ 1.1 kg ice" */
  ice(weight: string): string
  /** A clear word where no water can reach it. */
  reach(reach: WaterPlan['reach'], dough: string): string
  readonly unknown: string
}

export interface ShapeWords {
  /** @example "about 62 pieces left, 7.1 kg" */
  left(pieces: number, weight: string): string
  /** @example "7.1 kg left" */
  leftWeight(weight: string): string
  /** @example "to give 90 Plain" */
  gives(pieces: number, dough: string): string
  readonly by: { readonly divider: string; readonly hand: string }
  /** @example "90 a piece 113 g" */
  piece(weight: string): string
  /** @example "90 Plain onto trays" */
  put(pieces: number, dough: string): string
  readonly thatIsAll: string
  /** Under that key: what becomes of the rest. */
  /** What would be booked as lost. @param weight as shown; null: nothing to speak of */
  restLost(weight: string | null): string
  /** Doughs of the mix that the plan still wants of it. */
  stillToCome(names: readonly string[]): string
  readonly nothingMore: string
  readonly spoilt: string
  readonly place: string
  readonly noPlace: string
  readonly placeHint: string
  readonly noDough: string
  readonly check: string
}

export interface BatchWords {
  /** @example "ready, chill now" */
  readonly chill: string
  readonly passed: string
  readonly notReady: string
  readonly place: string
  readonly partOrWaste: string
  /** @example "ready at 11:40", "ready, by 12:10", "over since 12:10" */
  proof(until: { readonly targetAtMs: EpochMs; readonly latestAtMs: EpochMs } | null, nowMs: EpochMs): string
  /** @example "boil from 4:00", "boil within 3 h", "over by 2 h" */
  chilled(until: { readonly earliestAtMs: EpochMs; readonly latestAtMs: EpochMs } | null, nowMs: EpochMs): string
  readonly gone: string
  /** @example "Rack 2-7" */
  at(place: string): string
}

export interface PreparationWords {
  readonly title: string
  readonly nothing: string
  readonly made: string
  readonly fed: string
  /** @example "4.2 kg for Thu, Nov 26" */
  forDate(weight: string, date: string): string
  /** @example "200 g of the ripe one" */
  seed(weight: string): string
  readonly other: string
  /** @example "ripe at 5:00" */
  ripe(atMs: EpochMs, latestAtMs: EpochMs, nowMs: EpochMs): string
  readonly drop: string
}

export interface ReadingWords {
  readonly title: string
  readonly places: { readonly [place in Place]: string }
  /** @example "72 °F at 9:40" */
  readAt(text: string, atMs: EpochMs): string
  assumed(text: string): string
  readonly hint: string
}

export interface DividerWords {
  readonly title: string
  readonly whichDough: string
  /** @example "should weigh 113 g" */
  should(weight: string): string
  /** @example "weighed: 112 g, 114 g" */
  weighed(weights: readonly string[]): string
  readonly add: string
  /** @example "Save 5 pieces" */
  save(pieces: number): string
  readonly nothing: string
  /** Off the scaled weight on average. @example "1.2 g too heavy on average" */
  mean(by: string, isHeavy: boolean): string
  spread(by: string): string
  /** @example "0.4 g more an hour" */
  drift(by: string, isMore: boolean): string
  code(code: DividerCode): string
  verdict(verdict: PackageVerdict, label: string): string
  readonly office: string
}

export interface PadWords {
  readonly save: string
  readonly clear: string
  readonly back: string
  readonly typeFirst: string
}

export function doughRoomWords(words: BenchWords): DoughRoomWords {
  return { ...words, room: OF_LANGUAGE[words.language](words) }
}

const OF_LANGUAGE: { readonly [language in Language]: (words: BenchWords) => RoomSentences } = {
  en: enBenchDough,
  es: esBenchDough,
}
