import type { MixStage, MixTemp, Place } from '../../shared-core/dough/mix.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { DaysWords } from './desk-dough-days.ts'
import type { LearntWords } from './desk-dough-learnt.ts'
import type { OrderWords } from './desk-dough-order.ts'
import type { PlanWords } from './desk-dough-plan.ts'
import { enDough } from './en-desk-dough.ts'
import { esDough } from './es-desk-dough.ts'
import type { Words } from './words.ts'

/** What the desk says of the dough room. Days ahead and the order of mixing have files of their own. */
export interface DoughWords {
  readonly pages: { readonly [page in 'days' | 'day' | 'order' | 'sheets' | 'stock' | 'running' | 'learnt']: string }
  readonly pagesName: string
  readonly caution: string
  readonly waiting: string
  readonly noFormulas: string
  readonly goSetUp: string
  readonly unknown: string
  readonly today: string
  readonly days: DaysWords
  readonly wanted: WantedWords
  readonly plan: PlanWords
  readonly order: OrderWords
  readonly sheets: SheetWords
  readonly stock: StockWords
  readonly running: RunningWords
  readonly learnt: LearntWords
  readonly account: DoughAccountWords
}

export interface WantedWords {
  title(date: string): string
  readonly hint: string
  readonly columns: { readonly [column in 'what' | 'lastWeek' | 'pieces' | 'ordered' | 'sum']: string }
  readonly field: { pieces(name: string): string; ordered(name: string): string }
  readonly byVariety: string
  readonly fewer: string
  byVarietyOf(dough: string): string
  likeLastWeek(date: string): string
  readonly like: string
  readonly percent: string
  readonly raise: string
  readonly clear: string
  save(date: string): string
  readonly forget: string
  readonly unreadable: string
  unsaved(numbers: number): string
  readonly saved: string
  readonly total: string
}

export interface SheetWords {
  readonly lead: string
  none(date: string): string
  readonly print: string
  /** @example "Mix 2 of 3, for Fri, Nov 27" */
  head(place: number, all: number, date: string): string
  start(clock: string): string
  readonly startOpen: string
  readonly columns: { readonly [column in 'what' | 'percent' | 'weight' | 'done']: string }
  readonly mixIns: string
  mixInsFrom(minute: number): string
  readonly total: string
  /** @example "Water at 54 °F: 11 lb 3 oz and 2 lb 1 oz of ice" */
  water(degrees: string, water: string, ice: string | null): string
  readonly waterOpen: string
  readonly tooCold: string
  readonly tooWarm: string
  readonly needsWarm: string
  comesTo(degrees: string): string
  wished(degrees: string): string
  readonly temps: { readonly [temp in MixTemp]: string }
  readonly steps: string
  mix(minutes: number): string
  rest(minutes: number): string
  bulk(span: string): string
  fold(place: number, span: string): string
  bulkChill(span: string): string
  readonly gives: string
  givesLine(pieces: number, dough: string, weight: string | null, trays: string): string
  contains(names: readonly string[]): string
  readonly containsHint: string
  readonly signed: string
}

export interface StockWords {
  readonly title: string
  readonly hint: string
  readonly none: string
  readonly columns: { readonly [column in 'what' | 'onHand' | 'counted' | 'short' | 'count' | 'received']: string }
  readonly notCounted: string
  /** @example "3 bags and 12 lb" */
  bags(bags: number, rest: string | null): string
  bag(weight: string): string
  readonly bagsUnit: string
  shortFor(weight: string, date: string, bags: number | null): string
  readonly enough: string
  countField(name: string): string
  receivedField(name: string): string
  saveCount(lines: number): string
  receive(name: string): string
  readonly receiveIt: string
  readonly unreadable: string
  readonly under: string
}

export interface RunningWords {
  readonly clocks: string
  readonly clocksHint: string
  readonly noClocks: string
  /** @example "Poolish, 12 lb left" */
  build(name: string, left: string): string
  readonly ripens: string
  readonly drop: string
  dropOf(name: string): string
  readonly columns: { readonly [column in 'what' | 'where' | 'since' | 'earliest' | 'latest' | 'state']: string }
  readonly stage: { readonly [stage in MixStage]: string }
  readonly status: { readonly early: string; readonly ready: string; readonly late: string; readonly none: string }
  readonly temps: string
  readonly tempsHint: string
  readonly place: { readonly [place in Place]: string }
  readOn(degrees: string, clock: string): string
  assumed(degrees: string): string
  reckons(degrees: string): string
  readingOf(place: string): string
  readonly record: string
  chart(place: string, lowest: string, highest: string): string
  readonly hoursBack: string
  readonly now: string
}

export interface DoughAccountWords {
  readonly title: string
  readonly rule: string
  readonly none: string
  head(formula: string, mixes: number): string
  readonly columns: {
    readonly [column in 'formula' | 'mixed' | 'shaped' | 'lost' | 'spoilt' | 'unexplained' | 'left']: string
  }
}

export function doughWords(words: Words): DoughWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => DoughWords } = { en: enDough, es: esDough }
