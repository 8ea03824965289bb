import type { EpochMs } from '../../shared-core/units.ts'
import { enDaySheet } from './en-desk-day-sheet.ts'
import { esDaySheet } from './es-desk-day-sheet.ts'
import type { Words } from './words.ts'

/** What a day came to, on screen and on paper. */
export interface DaySheetWords {
  readonly title: string
  /** @example "Tue, Nov 24: open at 3:52, closed at 15:10" */
  head(label: string, openedAtMs: EpochMs, closedAtMs: EpochMs | null): string
  readonly figures: FiguresWords
  readonly account: string
  readonly stillThere: string
  readonly left: string
  readonly nothingLeft: string
  readonly soldOut: string
  /** @example "Sesame: 2 times, 1 h 5 min, about 18 pieces" */
  soldOutLine(name: string, times: number, goneMs: number, pieces: number): string
  readonly notes: string
  readonly signed: string
  readonly print: string
  readonly printHint: string
  readonly csv: string
  readonly jsonLines: string
  readonly files: string
}

/** The five figures, each with its name, its value in words, and what it rests on. */
export interface FiguresWords {
  readonly title: string
  readonly waiting: string
  readonly noContact: string
  readonly missed: FigureWords & {
    value(pieces: number, cents: number): string
    readonly nobodyKnows: string
    first(name: string, fromMs: EpochMs, forMs: number): string
    readonly none: string
  }
  readonly left: FigureWords & {
    value(pieces: number): string
    fates(dayOld: number, given: number, wasted: number): string
    cost(cents: number): string
    readonly notClosed: string
  }
  readonly onTime: FigureWords & {
    atOpen(there: number, of: number): string
    readonly notOpened: string
    oven(byMs: number): string
    readonly noChangeover: string
    readonly noOrders: string
  }
  readonly baked: FigureWords & {
    dozens(perHour: number): string
    value(pieces: number): string
    hours(minutes: number): string
    readonly nobodySaid: string
  }
  readonly unexplained: FigureWords & {
    value(signed: number): string
    absolute(pieces: number): string
    thrown(pieces: number): string
  }
}

export interface FigureWords {
  readonly name: string
}

export function daySheetWords(words: Words): DaySheetWords {
  return words.language === 'en' ? enDaySheet(words) : esDaySheet(words)
}

/** @example signedPieces(-3) // "−3" */
export function signedPieces(pieces: number): string {
  return pieces < 0 ? `−${-pieces}` : pieces > 0 ? `+${pieces}` : '0'
}
