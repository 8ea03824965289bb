import type { Short } from '../../shared-core/day/events.ts'
import type { OrderId } from '../../shared-core/ids.ts'
import type { RiskSave } from '../../shared-core/orders/at-risk.ts'
import type { Promised, PromiseWhy } from '../../shared-core/orders/promise.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enPromise } from './en-promise.ts'
import { esPromise } from './es-promise.ts'
import type { Words } from './words.ts'

/** When an order can be ready and why not before, and what saves one that is at risk, as counter and desk say it. */
export interface PromiseWords {
  /** @example "Ready at 9:40." */
  from(atMs: EpochMs): string
  readonly notToday: string
  why(why: PromiseWhy, markOf: (orderId: OrderId) => string): string
  /** What could go at once, and when the rest. @example "Now 12 Sesame; the rest at 9:40." */
  split(split: NonNullable<Promised['split']>): string
  /** @param when date and time, in words */
  nextDay(when: string): string
  /** Too late for the next day as well. */
  readonly noNextDay: string
  /** What will not be there, mixed pieces as such. @example "6 Sesame, 4 mixed" */
  short(missing: readonly Short[]): string
  /** What would save an order that is at risk. @example "keep 6 Sesame for it now" */
  save(save: RiskSave): string
}

export function promiseWords(words: Words): PromiseWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => PromiseWords } = {
  en: enPromise,
  es: esPromise,
}
