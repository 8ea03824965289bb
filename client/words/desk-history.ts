import type { SpecialKind } from '../../shared-core/shop/shop.ts'
import { enHistory } from './en-desk-history.ts'
import { esHistory } from './es-desk-history.ts'
import type { Words } from './words.ts'

/** What the desk says of past sales. */
export interface HistoryWords {
  readonly pagesName: string
  readonly pages: { readonly sales: string; readonly trust: string; readonly line: string }
  readonly waiting: string
  readonly noContact: string
  readonly notReady: string
  readonly unknown: string
  readonly none: { readonly title: string; readonly toDo: string; readonly salesIn: string }
  /** @param weekday 1 is Monday, 7 Sunday */
  weekday(weekday: number): string
  /** @example "7.3", "1623" */
  number(pieces: number): string
  readonly choose: ChooseWords
  readonly days: DaysWords
  readonly week: WeekWords
  readonly hours: HoursWords
  readonly learnt: LearntWords
  readonly day: DayWords
}

export interface ChooseWords {
  readonly of: string
  readonly all: string
  readonly doughs: string
  readonly varieties: string
  readonly range: string
  readonly ranges: { readonly [days in HistoryRange]: string }
}
export type HistoryRange = '28' | '84' | '364' | 'all'

export interface DaysWords {
  readonly title: string
  readonly hint: string
  readonly sold: string
  readonly lost: string
  readonly soldOut: string
  readonly special: string
  readonly date: string
  readonly asTable: string
  readonly asPlot: string
  readonly csv: string
  readonly noDays: string
  /** The day that the pointer is over. */
  readout(date: string, sold: number, lost: number, soldOut: number): string
  /** For those who listen. */
  spoken(days: number, sold: number, lost: number): string
  look(date: string): string
}

export interface WeekWords {
  readonly title: string
  readonly hint: string
  readonly weekday: string
  readonly days: string
  readonly pieces: string
  readonly lost: string
}

export interface HoursWords {
  readonly title: string
  readonly hint: string
  untimed(percent: number): string
}

export interface LearntWords {
  readonly title: string
  readonly basis: { readonly guess: string; readonly few: string; readonly many: string }
  level(pieces: number): string
  /** @param part around 1 @example "24 % more than usual" */
  factor(part: number): string
  readonly weekdays: string
  readonly specials: string
  readonly noSpecials: string
  sure(days: number): string
}

export interface DayWords {
  readonly back: string
  title(date: string): string
  readonly nothing: string
  readonly record: string
  readonly variety: string
  readonly forecast: string
  readonly forecastHint: string
  /** @example "25–41, likely 32" */
  range(low: number, likely: number, high: number): string
  readonly gone: string
  span(from: string, to: string): string
  readonly specialTitle: string
  readonly specialHint: string
  readonly newName: string
  readonly newKind: string
  readonly add: string
  readonly full: string
  readonly nameTaken: string
  readonly kinds: { readonly [kind in SpecialKind]: string }
}

export function historyWords(words: Words): HistoryWords {
  return words.language === 'en' ? enHistory(words) : esHistory(words)
}

/** Pieces as people count them: whole ones from ten on, a tenth below. @example roughly(3.94) // "3.9" */
export function roughly(pieces: number): string {
  if (Math.abs(pieces) >= 10) return String(Math.round(pieces))
  const text = pieces.toFixed(1)
  return text.endsWith('.0') ? text.slice(0, -2) : text
}

/** A share of change around 1 in whole percent; below what a shop would notice it is none. @example percentOff(1.24) // 24 */
export function percentOff(part: number): number {
  const percent = Math.round((part - 1) * 100)
  return Math.abs(percent) < NOTICED_PERCENT ? 0 : percent
}
const NOTICED_PERCENT = 2
