import type { Line } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enWall } from './en-wall.ts'
import { esWall } from './es-wall.ts'
import type { Words } from './words.ts'

/** What only the wall says. Short: it is read from across the room. */
export interface WallWords {
  readonly kettle: string
  readonly oven: string
  /** @example "16 wet boards free" */
  boardsFree(boards: number): string
  /** More boards are out than there are. @example "2 boards short" */
  boardsShort(boards: number): string
  /** What so many pieces become, by a list of it. Never "then": that word leads to the next act. @example "becomes 24 Sesame" */
  becomes(pieces: number, list: string): string
  /** One line of it. @example "24 Sesame" */
  become(line: Line): string
  /** What a list has no room for. @example "2 more" */
  more(count: number): string
  /** @example "then flip Sesame 36" */
  following(act: string): string
  readonly next: string
  readonly noDips: string
  /** A dough on the rack. @example "Rye not ready, look at 7:00" */
  notReady(name: string, atMs: EpochMs): string
  /** @example "Rye over since 7:40" */
  standsTooLong(name: string, sinceMs: EpochMs): string
  /** @example "3 free" */
  shelfFree(shelf: string): string
  /** What goes onto a free shelf. @example "next Sesame 48" */
  nextOn(contents: string): string
  /** @example "then top Cheddar" */
  topAfter(names: string): string
  /** In the minute after the flip. @example "now top Cheddar" */
  topNow(names: string): string
  /** @example "3 at the door" */
  atDoor(shelf: string): string
  /** Shelves that there is no room for. @example "7 others, first in 9 min" */
  otherShelves(count: number, first: string): string
  readonly late: string
  readonly rods: RodWords
  readonly ruler: RulerWords
  /** The key behind the clock, which opens the settings. */
  readonly thisScreen: string
  readonly standing: StandingWords
  readonly bar: BarWords
  readonly empty: { readonly [kind in EmptyKind]: NoticeLines }
  /** Sound needs a touch before a browser gives it. */
  readonly touchForSound: string
  readonly soundOff: string
  readonly quietHours: string
  readonly demo: string
  /** @example "1 question waits: touch the clock" */
  questions(count: number): string
}

export interface RodWords {
  /** @example "gone 7:15" */
  goneAt(atMs: EpochMs): string
  /** It rather lasts, but hardly longer than to this instant if not. @example "may run out 11:20" */
  mayRunOut(fromMs: EpochMs): string
  /** It may be gone before more comes. */
  readonly mayNotReach: string
  /** @example "gone since 6:50" */
  goneSince(atMs: EpochMs): string
  /** Some are on record, but as likely as not they left unseen. */
  readonly mayBeGone: string
  readonly none: string
  /** It runs out before more comes. @example "none 8:14–8:43" */
  noneFrom(fromMs: EpochMs, toMs: EpochMs): string
  /** Until when a count holds. @example "fine to 9:00" */
  fineTo(atMs: EpochMs): string
  /** @example "24 at 7:10" */
  more(pieces: number, atMs: EpochMs): string
  readonly noMore: string
  /** @example "7 others", "fine to 9:00" */
  others(count: number): string
  readonly othersFine: string
  readonly nothingOut: string
  /** @example "first: 24 Sesame at 6:25" */
  firstAt(line: Line, atMs: EpochMs): string
  /** For those who listen. @example "Onion: 6 for sale, 24 on the way" */
  spoken(name: string, pieces: number, onTheWay: number): string
}

export interface RulerWords {
  /** @example "last load in by 10:34" */
  lastLoad(atMs: EpochMs): string
  readonly lastLoadGone: string
  /** Of a weekday on which the shop is closed. */
  readonly closedToday: string
  readonly changeover: string
  /** A planned load that would not be out in time. @example "load 10:50 too late" */
  tooLate(atMs: EpochMs): string
  more(count: number): string
  readonly spoken: string
}

export interface StandingWords {
  readonly titles: { readonly [stage in 'proof' | 'chill' | 'rack' | 'cool']: string }
  readonly ready: string
  /** @example "ready 24, rest at 6:40" */
  readyPart(pieces: number): string
  readyAt(atMs: EpochMs): string
  /** @example "good to 7:40" */
  goodTo(atMs: EpochMs): string
  over(sinceMs: EpochMs): string
  readonly nothing: string
}

export interface BarWords {
  readonly nothing: string
  /** What a pedal has done. @example "Done: flipped 2" */
  done(did: string): string
  readonly justChanged: string
  /** @example "Kettle: nothing to do" */
  nothingFor(station: string): string
  coming(what: string): string
}

export type EmptyKind = 'connecting' | 'no-set-up' | 'no-day' | 'idle'

export interface NoticeLines {
  readonly title: string
  readonly text: string
}

export function wallWords(words: Words): WallWords {
  return words.language === 'en' ? enWall(words) : esWall(words)
}
