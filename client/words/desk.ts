import type { Ask } from '../../shared-core/day/answers.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { BatchStage, Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { TodayWords } from './desk-today.ts'
import { enDesk } from './en-desk.ts'
import { esDesk } from './es-desk.ts'
import type { Question, Words } from './words.ts'

/** The words of the desk: those that all screens share, and its own. */
export interface DeskWords extends Words {
  readonly desk: DeskSentences
}

export interface DeskSentences {
  /** Of the page. */
  readonly title: string
  readonly places: {
    readonly [place in
      | 'today'
      | 'orders'
      | 'loads'
      | 'coming'
      | 'plan'
      | 'dough'
      | 'close'
      | 'past'
      | 'history'
      | 'salesIn'
      | 'setUp'
      | 'screens']: string
  }
  /** What the list of places is, for those who listen. */
  readonly placesName: string
  /** @example "2 wait for an answer" */
  waitsFor(count: number): string
  /** While a place is fetched, and when it cannot be. */
  readonly late: { readonly waiting: string; readonly failed: string; readonly again: string }
  readonly today: TodayWords
  readonly titles: { readonly [part in DeskPart]: string }
  readonly day: DayWords
  readonly account: AccountWords
  readonly loads: LoadsWords
  readonly mistakes: MistakeWords
  readonly trays: TraysWords
  readonly setUp: SetUpWords
  readonly screens: ScreensWords
  readonly done: DeskDoneWords
  readonly dry: DryWords
  readonly distance: DistanceWords
  /** Beside a clock of twelve hours. */
  readonly halfDays: { readonly am: string; readonly pm: string }
  readonly looking: string
  readonly noSetUp: string
  readonly language: string
  readonly putAway: string
  /** In the head: so many were not let in since somebody last looked. @example "12 refused" */
  refused(count: number): string
}

export type DeskPart = 'day' | 'loads' | 'trays' | 'done' | 'dry' | 'screens' | 'distance' | 'cautions'

export interface DayWords {
  /** @example "Open since 4:12: Tue, Nov 24" */
  open(label: string, atMs: EpochMs): string
  readonly notOpen: string
  readonly openIt: string
  /** Leads to the place where it is closed. */
  readonly goClose: string
  /** One that is still open though it is of an earlier date. */
  overdue(label: string): string
  /** The question when the line is not empty. @example "Close the day? 24 pieces are still in the kettle, …" */
  closeAll(pieces: number): string
  readonly accounted: string
  /** @example "Plain: 3 pieces cannot be placed." */
  gap(dough: string, pieces: number): string
  /** @example "Last closed: Mon, Nov 23, at 15:10" */
  last(label: string, atMs: EpochMs): string
  readonly nothingLeft: string
}

export type AccountColumn =
  | 'dough'
  | 'shaped'
  | 'carriedIn'
  | 'onTheLine'
  | 'forSale'
  | 'kept'
  | 'sold'
  | 'kitchen'
  | 'wasted'
  | 'given'
  | 'dayOld'
  | 'unexplained'
  | 'carriedOn'

export interface AccountWords {
  readonly title: string
  readonly columns: { readonly [column in AccountColumn]: string }
  /** What the account says, in words. */
  readonly rule: string
  readonly total: string
  readonly unexplainedHint: string
}

export interface LoadsWords {
  readonly typed: string
  readonly typedHint: string
  readonly example: string
  readonly take: string
  readonly file: string
  readonly fileHint: string
  /** @example "Taken: 12 loads." */
  taken(loads: number): string
  readonly replaces: string
  readonly planned: string
  readonly none: string
  readonly columns: { readonly [column in 'in' | 'shelf' | 'contents' | 'state']: string }
  readonly anyShelf: string
  readonly whenFree: string
  /** A load that is not today's. @example "9:10 pm for Wed, Nov 25" */
  inOn(clock: string, day: string): string
  readonly done: string
  readonly toCome: string
  readonly leaveOut: string
}

export interface MistakeWords {
  /** @example "Mistakes: 2. Nothing was taken." */
  title(count: number): string
  /** @example "Line 3" */
  line(line: number): string
  readonly wholeFile: string
  readonly right: string
  readonly notJson: string
  readonly notJsonRight: string
  readonly noContact: string
  readonly empty: string
  /** A line of a load list that cannot be read. */
  unreadable(text: string): string
  readonly unreadableRight: string
  unknownVariety(name: string): string
  unknownShelf(name: string): string
  /** One name is a guess. @example "One of: Sesame, Poppy.", "Poppy?" */
  oneOf(names: readonly string[]): string
  notATime(text: string): string
  readonly timeRight: string
  tooMany(pieces: number): string
  readonly tooManyRight: string
}

export interface TraysWords {
  readonly how: string
  readonly carriedIn: string
  readonly carriedInHint: string
  readonly shaped: string
  readonly shapedHint: string
  readonly dough: string
  readonly where: string
  stage(stage: BatchStage): string
  readonly number: string
  readonly unit: string
  readonly pieces: string
  /** @example "trays of 15" */
  traysOf(pieces: number): string
  readonly since: string
  readonly today: string
  readonly yesterday: string
  readonly dayBefore: string
  readonly notKnown: string
  readonly now: string
  readonly clock: string
  /** The button. @example "Carry in 45 Plain" */
  carryIn(pieces: number, name: string): string
  shape(pieces: number, name: string): string
  readonly chooseNumber: string
  readonly notLater: string
  readonly standing: string
  readonly nothing: string
  /** Of what is not today. @example "Wed, Nov 25, 6:00 pm" */
  untilOn(clock: string, day: string): string
  readonly columns: { readonly [column in 'where' | 'what' | 'pieces' | 'since' | 'until']: string }
}

export interface SetUpWords {
  readonly upload: string
  readonly schema: string
  readonly taken: string
}

export interface ScreensWords {
  readonly role: { readonly [role in Role]: string }
  readonly connected: string
  /** @example "last seen at 6:41" */
  lastSeen(atMs: EpochMs): string
  readonly thisOne: string
  readonly none: string
  readonly columns: { readonly [column in 'name' | 'role' | 'station' | 'state']: string }
  readonly allStations: string
  /** The list, for those who listen. */
  readonly listName: string
  readonly localHint: string
  readonly name: string
  readonly nameHint: string
}

export interface DeskDoneWords {
  readonly nothing: string
  readonly here: string
  readonly takeBack: string
  readonly older: string
}

export interface DryWords {
  readonly nothing: string
  readonly right: string
  readonly allRight: string
}

export interface DistanceWords {
  readonly hint: string
  readonly diagonal: string
  readonly widthPx: string
  readonly heightPx: string
  readonly metres: string
  /** @example "Yes: it can be read from up to 4.9 m." */
  supported(farthestM: number): string
  notSupported(farthestM: number): string
  readonly impossible: string
  readonly tableDiagonal: string
  readonly tableFarthest: string
}

export function deskWords(words: Words): DeskWords {
  const desk = OF_LANGUAGE[words.language](words)
  return { ...words, answers: { ...words.answers, ask: (ask) => askAtDesk(ask, words, desk) }, desk }
}

/** The day is closed at the desk only, which has room to say what is in the way. */
function askAtDesk(ask: Ask, words: Words, { day }: DeskSentences): Question {
  const said = words.answers.ask(ask)
  const { pieces } = ask.params
  if (ask.code !== 'line-not-empty' || typeof pieces !== 'number') return said
  return { ...said, question: day.closeAll(pieces) }
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => DeskSentences } = { en: enDesk, es: esDesk }
