import type { Line } from '../../shared-core/day/state.ts'
import type { BatchStage, Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { AdviceWords } from './advice.ts'
import { adviceWords } from './advice.ts'
import { enBench } from './en-bench.ts'
import { esBench } from './es-bench.ts'
import type { NoteWords } from './notes.ts'
import { noteWords } from './notes.ts'
import type { ShiftWords } from './shift.ts'
import { shiftWords } from './shift.ts'
import type { Words } from './words.ts'

/** The words of the tablet at the line: those that all screens share, and its own. */
export interface BenchWords extends Words {
  readonly bench: BenchSentences
  readonly advice: AdviceWords
  readonly shift: ShiftWords
  readonly notes: NoteWords
}

export interface BenchSentences {
  readonly top: TopWords
  readonly station: StationWords
  readonly shelf: ShelfWords
  readonly sheet: SheetWords
  readonly contents: ContentsWords
  readonly pieces: PiecesWords
  readonly more: MoreWords
  readonly done: DoneWords
}

export interface TopWords {
  /** @example "last load in by 10:34" */
  lastLoad(atMs: EpochMs): string
  /** What stands on the ruler, short. */
  readonly ruler: BenchRulerWords
  /** @example "6 loads to go" */
  loadsToGo(loads: number): string
  /** Under the time, in a demo. */
  readonly demo: string
  readonly linked: string
  /** What this device is called when nobody has named it. */
  readonly device: string
  /** The name of the ruler, for those who listen. */
  readonly day: string
  /** Somebody is on the way: the sound rests for a moment. */
  readonly coming: string
  readonly waiting: string
  readonly noShop: string
  /** A pedal was pressed just as the board moved on. */
  readonly pedalTooSoon: string
  /** @example "Kettle: nothing to do here" */
  pedalNothing(station: string): string
  readonly touchForSound: string
  /** How many orders have no label on the ruler. @example "+3" */
  others(count: number): string
}

/** `rulerOfDay` of the parts takes them. */
export interface BenchRulerWords {
  lastLoad(atMs: EpochMs): string
  readonly lastLoadGone: string
  /** Of a weekday on which the shop is closed. */
  readonly closedToday: string
  readonly changeover: string
  /** @example "load 10:50 too late" */
  tooLate(atMs: EpochMs): string
}

export interface StationWords {
  readonly rack: string
  readonly kettle: string
  readonly boards: string
  readonly oven: string
  /** A rotating oven's keys stay; a frame that moves says which shelf is at the door. */
  readonly ovenInTurn: string
  readonly hearth: string
  readonly empty: string
  /** @example "next Plain 36" */
  next(dough: string, pieces: number): string
  /** What so many pieces become. @example "becomes 24 Sesame" */
  becomes(what: string, pieces: number): string
  /** What pieces of which nothing is said had best become. @example "Free pieces: 12 Sesame and 6 Poppy" */
  freePieces(lines: readonly Line[]): string
  /** Why: it would be missing then. */
  readonly forAfternoon: string
  /** @example "else gone 9:40" */
  goneElse(atMs: EpochMs): string
  readonly goneNow: string
  /** @example "Plain 36" */
  amount(dough: string, pieces: number): string
  readonly nothingPlanned: string
  /** A window that is not open yet. @example "not ready, look at 7:00" */
  notReady(atMs: EpochMs): string
  /** @example "ready, boil by 7:40" */
  boilBy(atMs: EpochMs): string
  readonly ready: string
  /** @example "past its time since 7:40" */
  past(atMs: EpochMs): string
  /** @example "16 wet, 8 out" */
  boardsNow(free: number, out: number): string
  /** @example "4 getting wet" */
  boardsWetting(boards: number): string
  /** @example "2 boards short" */
  boardsOver(boards: number): string
  /** @example "and 2 more" */
  andMore(count: number): string
  /** For those who listen. */
  readonly line: string
}

export interface ShelfWords {
  readonly differs: string
  /** @example "2 differs" – for those who listen */
  differsOf(shelf: string): string
  /** An act of a load that has no shelf of its own. @example "Flip Sesame 36" */
  ofLoad(verb: string, contents: string): string
  readonly chooseWhat: string
  /** The second menu bakes on it. @example "bakes for 41, 42" */
  bakesFor(marks: readonly string[]): string
  readonly unconfirmed: string
  readonly atDoor: string
  /** @example "then top: Cheddar" */
  toTop(varieties: readonly string[]): string
  /** @example "top Cheddar now" */
  topNow(varieties: readonly string[]): string
  /** @example "48, 3 kinds" */
  kinds(pieces: number, kinds: number): string
  /** @example "+2" */
  more(count: number): string
  readonly touchWhatDiffers: string
}

export interface SheetWords {
  readonly back: string
  readonly earlier: string
  readonly further: string
  /** @example "page 1 of 3" */
  page(page: number, pages: number): string
  readonly least: string
  readonly most: string
  less(name: string, step: number): string
  plus(name: string, step: number): string
}

export interface ContentsWords {
  /** Heading before the load. @example "Load 1: what goes in" */
  before(shelf: string): string
  /** Heading while it bakes. @example "Shelf 1: what is in it" */
  inside(shelf: string): string
  readonly varieties: string
  readonly loadList: string
  readonly whatIsIn: string
  readonly someOut: string
  readonly move: string
  readonly dropped: string
  readonly touchToAdd: string
  /** A line is chosen: the next variety replaces it. @example "Sesame becomes …" */
  becomes(variety: string): string
  readonly nothingYet: string
  /** All of it, and what the shelf takes. @example "60 of 72 pieces, 10 boards" */
  sum(pieces: number, most: number | null, boards: number): string
  readonly thatIsIn: string
  readonly unchanged: string
  readonly nothingPlanned: string
  readonly outOf: string
  /** @example "12 of 24" */
  ofAll(pieces: number, all: number): string
  toShelf(shelf: string): string
  readonly taken: string
  readonly backToFirstSide: string
  readonly onToSecondSide: string
  readonly backOntoBoards: string
  readonly loadGone: string
}

export interface PiecesWords {
  /** Headings. */
  readonly pull: string
  readonly dip: string
  readonly board: string
  readonly carryIn: string
  readonly shape: string
  /** The key that does it. @example "Put 45 Plain into the cooler" */
  put(pieces: number, dough: string, stage: BatchStage): string
  /** Beside what can be pulled. @example "24 proofing" */
  proofing(pieces: number): string
  readonly number: CountedWords
  readonly hours: CountedWords
}

/** What a stepper counts. @example "1 piece fewer", "15 pieces fewer" */
export interface CountedWords {
  readonly one: string
  readonly many: string
}

export interface MoreWords {
  readonly title: string
  readonly unplanned: string
  readonly unplannedDetail: string
  readonly carryInDetail: string
  readonly shapeDetail: string
  readonly line: string
  readonly lineDetail: string
  readonly doughRoom: string
  readonly kitchen: string
  readonly kitchenDetail: string
  readonly doughRoomDetail: string
  readonly skip: string
  readonly skipDetail: string
  readonly settings: string
  /** A sheet that cannot be fetched just now. */
  readonly notFetched: string
  readonly otherDough: string
  /** Heading of the list of shelves. */
  readonly whichShelf: string
  readonly whichLoad: string
  readonly nothingOnLine: string
  readonly nothingToSkip: string
  /** A batch's heading. @example "96 Plain on the rack" */
  batch(pieces: number, name: string, stage: BatchStage): string
  /** @example "On to the kettle", "Back to the cooler" */
  onTo(stage: BatchStage): string
  backTo(stage: BatchStage): string
  /** @example "Dropped or spoiled: 6" */
  wasted(pieces: number): string
  readonly batchGone: string
  readonly howMany: string
}

export interface DoneWords {
  readonly title: string
  readonly nothingHere: string
  /** On "Take back", out of use. */
  readonly nothingYet: string
  readonly notThis: string
  /** @example "taken back: 6:46 loaded 3: Onion 24" */
  takenBack(what: string): string
  /** Under the key to the list. */
  readonly others: string
  /** @example "16 min too early" */
  outOfWindow(over: { readonly limit: 'too-early' | 'too-late'; readonly byMs: number }): string
  readonly nothing: string
  readonly here: string
  readonly dryHands: string
  /** @example "2 to confirm" */
  toConfirm(count: number): string
  readonly nothingToConfirm: string
  readonly allRight: string
  readonly right: string
  readonly putAway: string
  readonly lookAt: string
}

export function benchWords(words: Words): BenchWords {
  return {
    ...words,
    bench: OF_LANGUAGE[words.language](words),
    advice: adviceWords(words),
    shift: shiftWords(words),
    notes: noteWords(words),
  }
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => BenchSentences } = { en: enBench, es: esBench }
