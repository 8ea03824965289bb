import type { CareKind } from '../../shared-core/day/said.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { ContactPlace } from '../../shared-core/live/plan.ts'
import type { Allergen } from '../../shared-core/shop/shop.ts'
import type { Prospect } from '../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enToday } from './en-desk-today.ts'
import { esToday } from './es-desk-today.ts'
import type { Words } from './words.ts'

/** What the desk says of the day that runs. */
export interface TodayWords {
  readonly ruler: {
    lastLoad(atMs: EpochMs): string
    readonly lastLoadGone: string
    /** Of a weekday on which the shop is closed. */
    readonly closedToday: string
    readonly changeover: string
    tooLate(atMs: EpochMs): string
    readonly spoken: string
    readonly closedDay: string
  }
  readonly steps: StepsWords
  readonly changeover: ChangeoverWords
  readonly oven: OvenWords
  readonly kettle: KettleWords
  readonly rods: RodsWords
}

export interface StepsWords {
  readonly opening: string
  readonly changeover: string
  /** @example "First load at 5:10; done 3 of 9" */
  openingHead(atMs: EpochMs, done: number, all: number): string
  changeoverHead(atMs: EpochMs, done: number, all: number): string
  readonly nothing: string
  floatTest(dough: string): string
  /** @example "at 4:20, now" */
  due(atMs: EpochMs): string
  readonly status: { readonly due: string; readonly late: string }
  /** @example "done at 4:12, Ana" */
  done(atMs: EpochMs, person: string): string
  who(step: string): string
  readonly nobody: string
  readonly doIt: string
  readonly passed: string
  readonly notReady: string
  /** @example "in 10 min" */
  lookAgainIn(minutes: number): string
  readonly lookAgain: string
  readonly foundReady: string
  foundNotReady(atMs: EpochMs): string
  readonly dippedAnyway: string
}

export interface ChangeoverWords {
  readonly title: string
  /** @example "Oven empty by 11:00; Pizza from 11:30." */
  plan(fromMs: EpochMs, toMs: EpochMs, menu: string | null): string
  /** @example "That is 15 min later than usual." */
  slipped(minutes: number): string
  readonly over: string
  emptyAt(atMs: EpochMs): string
  readonly nothingInside: string
  readonly later: string
  readonly earlier: string
  readonly asUsual: string
  /** What a slip would move, each a sentence. */
  wouldBe(at: { readonly fromMs: EpochMs; readonly lastLoadInByMs: EpochMs }): string
  plannedMore(loads: number): string
  loadsMore(loads: number, pieces: number): string
  readonly nothingMoves: string
  readonly columns: { readonly [column in 'shelf' | 'state' | 'free']: string }
  readonly state: { readonly [state in 'bagels' | 'emptying' | 'over']: string }
  readonly overHere: string
  readonly bagelsAgain: string
  left(lines: readonly Line[]): string
  readonly nothingLeft: string
  withoutShelf(loads: number): string
}

export interface OvenWords {
  readonly title: string
  readonly whole: string
  /** @example "450 °F at 6:41" */
  reading(degrees: number, unit: 'C' | 'F', atMs: EpochMs): string
  readonly none: string
  degrees(where: string, unit: 'C' | 'F'): string
  readonly record: string
  readonly hint: string
}

export interface KettleWords {
  readonly title: string
  readonly care: { readonly [care in CareKind]: string }
  /** @example "84 of 120 pieces since" */
  since(boiled: number, every: number): string
  readonly due: string
  lastAt(atMs: EpochMs): string
  boilsAgain(atMs: EpochMs): string
  readonly touched: { readonly [place in ContactPlace]: string }
  readonly nothing: { readonly [place in ContactPlace]: string }
  readonly contactHint: string
  readonly allergen: { readonly [allergen in Allergen]: string }
  contact(name: string, pieces: number, allergens: readonly string[]): string
  readonly boards: string
  boardsOf(count: number): string
  readonly usable: string
}

export interface RodsWords {
  readonly title: string
  readonly none: string
  readonly known: { readonly [how in 'counted' | 'swept' | 'baked' | 'sold']: string }
  cooling(pieces: number): string
  kept(pieces: number): string
  dayOld(pieces: number): string
  coming(pieces: number, atMs: EpochMs): string
  spoken(name: string, pieces: number): string
  gone(atMs: EpochMs): string
  /** How it goes on; "" where nobody knows. @example "gone about 9:40 (9:15 to 10:20)", "lasts to close, about 6 left" */
  ahead(prospect: Prospect, moreAtMs: EpochMs | null): string
}

export function todayWords(words: Words): TodayWords {
  return words.language === 'en' ? enToday(words) : esToday(words)
}
