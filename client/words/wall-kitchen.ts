import type { EpochMs } from '../../shared-core/units.ts'
import { enWallKitchen } from './en-wall-kitchen.ts'
import { esWallKitchen } from './es-wall-kitchen.ts'
import type { KitchenActWords } from './kitchen-acts.ts'
import { kitchenActWords } from './kitchen-acts.ts'
import type { OrderWords } from './orders.ts'
import { orderWords } from './orders.ts'
import type { PromiseWords } from './promise.ts'
import { promiseWords } from './promise.ts'
import type { Words } from './words.ts'

/** What the wall says of orders and of what is made to order: marks, and nobody's name. */
export interface WallKitchenWords extends OwnWallKitchenWords {
  readonly acts: KitchenActWords
  readonly orders: OrderWords
  readonly promise: PromiseWords
}

/** What is the wall's alone. */
export interface OwnWallKitchenWords {
  /** Above the rods. @example "To make: 7" */
  toMake(count: number): string
  /** Orders of which everything is made. @example "ready: 41, 43" */
  ready(marks: readonly string[]): string
  readonly now: string
  readonly oven: string
  readonly ovenEmpty: string
  /** @example "5 places free" */
  placesFree(places: number): string
  /** Kinds that do not fit. @example "2 other kinds" */
  otherKinds(count: number): string
  /** What an order will lack, and what saves it. @example "AB at 8:30 lacks 12 Sesame: keep 6 Sesame for it now" */
  risk(order: RiskyOrder): string
  /** Others that lack something. @example "2 more orders" */
  moreRisks(count: number): string
  /** Orders that come next, with what is kept of them. @example "AB 8:30: 12 of 24 kept" */
  next(order: NextOrder): string
}

export interface RiskyOrder {
  readonly mark: string
  readonly dueAtMs: EpochMs
  /** What it lacks, in words. */
  readonly missing: string
  /** "" when nothing would save it that the board knows of, or where there is no room. */
  readonly save: string
}

export interface NextOrder {
  readonly mark: string
  readonly dueAtMs: EpochMs
  readonly kept: number
  readonly pieces: number
}

export function wallKitchenWords(words: Words): WallKitchenWords {
  const own = words.language === 'en' ? enWallKitchen(words) : esWallKitchen(words)
  return { ...own, acts: kitchenActWords(words), orders: orderWords(words), promise: promiseWords(words) }
}
