import type { CareKind } from '../../shared-core/day/said.ts'
import type { Allergen } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enShift } from './en-shift.ts'
import { esShift } from './es-shift.ts'
import type { SaidDue, Words } from './words.ts'

/** What wall and bench say of a shift's ends: opening and changeover as lists, the kettle's water, the boards. */
export interface ShiftWords {
  readonly steps: StepWords
  readonly change: ChangeWords
  readonly care: CareWords
}

export interface StepWords {
  readonly opening: string
  readonly changeover: string
  /** What the list counts to. @example "First load in 42 min" */
  toZero(list: 'opening' | 'changeover', zeroAtMs: EpochMs, nowMs: EpochMs): string
  /** @example "3 of 7 done" */
  progress(done: number, all: number): string
  readonly allDone: string
  /** @example "Float test Rye" */
  float(name: string, dough: string): string
  /** When a step should be done. @example "at 3:40, in 12 min", "8 min late" */
  due(due: SaidDue, nowMs: EpochMs): string
  /** The same in few letters. @example "3:40", "8 min late" */
  dueShort(due: SaidDue, nowMs: EpochMs): string
  /** @example "done 3:41" */
  doneAt(atMs: EpochMs): string
  /** @example "not ready, again 4:10" */
  lookAgain(atMs: EpochMs): string
  readonly dippedAnyway: string
  readonly done: string
  readonly passed: string
  readonly notReady: string
  /** @example "look again in 10 min" */
  lookIn(minutes: number): string
  readonly give: string
  /** @example "Who does: oven on" */
  giveTo(step: string): string
  readonly nobody: string
  /** @example "as Ana" */
  as(person: string): string
  readonly who: string
  readonly nothing: string
  /** @example "2 more" */
  more(count: number): string
}

export interface ChangeWords {
  /** @example "Changeover in 45 min", "Changeover since 11:00", "Changeover over" */
  when(fromMs: EpochMs, toMs: EpochMs, nowMs: EpochMs): string
  /** @example "1: over" */
  shelf(name: string, state: 'bagels' | 'emptying' | 'over', freeAtMs: EpochMs | null): string
  /** Shelves that do not fit by name. @example "9 take bagels" */
  several(count: number, state: 'bagels' | 'emptying' | 'over'): string
  readonly shelves: string
  readonly list: string
  /** @example "oven empty at 10:58" */
  ovenEmpty(atMs: EpochMs | null): string
  /** @example "480 °F at 10:40" */
  reading(degrees: number, unit: 'C' | 'F', atMs: EpochMs): string
  readonly noReading: string
  readonly readings: string
  readonly wholeOven: string
  /** What to type. @example "Oven, °F" */
  typing(place: string, unit: 'C' | 'F'): string
  /** On the key that opens the typing. */
  readonly type: string
  readonly save: string
  readonly wipeOut: string
  readonly typeFirst: string
  readonly over: string
  readonly bagelsAgain: string
  /** What is in or to come, in words. @example "emptying to 10:52" */
  shelfState(state: 'bagels' | 'emptying' | 'over', freeAtMs: EpochMs | null): string
  readonly slip: string
  /** @example "15 min later", "15 min earlier" */
  slipBy(minutes: number): string
  /** @example "Changeover at 11:15 instead of 11:00" */
  slipTo(fromMs: EpochMs): string
  /** @example "last load in by 10:59" */
  lastLoad(atMs: EpochMs): string
  /** @example "1 load more fits, 48 pieces", "2 loads fewer, 96 pieces" */
  loads(loads: number, pieces: number): string
  /** @example "2 planned loads would be too late" */
  planned(more: number): string
  /** Back to the set-up's time. */
  readonly usual: string
  /** There is no changeover, or no day is open. */
  readonly none: string
  /** @example "15 min later than usual" */
  slipped(minutes: number): string
  readonly left: string
  readonly noneAfter: string
  readonly nothingLeft: string
  /** @example "2 planned loads have no shelf" */
  withoutShelf(loads: number): string
}

export interface CareWords {
  readonly title: string
  /** A care as an act. @example "Top up" */
  care(kind: CareKind): string
  /** @example "310 boiled since 7:10" */
  boiled(pieces: number, sinceMs: EpochMs | null): string
  /** @example "Top up: 310 boiled since 7:10" */
  reminder(kind: CareKind, pieces: number, sinceMs: EpochMs | null): string
  /** @example "every 300" */
  every(pieces: number): string
  readonly boilsAgain: string
  /** @example "boils again in 2 min" */
  boilsIn(atMs: EpochMs, nowMs: EpochMs): string
  readonly inWater: string
  readonly onBoards: string
  /** Of the three that follow, together. */
  readonly onOthers: string
  readonly places: { readonly [place in 'trays' | 'peel' | 'stone']: string }
  /** @example "Egg 48" */
  contact(name: string, pieces: number): string
  /** @example "contains egg, milk" */
  contains(contains: readonly Allergen[]): string
  /** What a dough brings that the water is not known to have had. @example "brings egg to the water" */
  brings(allergens: readonly Allergen[]): string
  readonly noContact: string
  readonly caution: string
  readonly usable: string
  readonly cares: string
  readonly board: { readonly one: string; readonly many: string }
}

export function shiftWords(words: Words): ShiftWords {
  return words.language === 'en' ? enShift(words) : esShift(words)
}
