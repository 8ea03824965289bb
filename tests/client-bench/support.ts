import type { BenchWords } from '../../client/words/bench.ts'
import { benchWords } from '../../client/words/bench.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { at } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

/** The bench's words for the test shop, whose clock stands at the time of `at`. */
export function wordsOf(shop: Shop = shopWith(), language: Language = 'en'): BenchWords {
  return benchWords(wordsFor(language, shop, clockOf))
}

/** @example clockOf(at('6:47')) // '6:47' */
export function clockOf(atMs: EpochMs): string {
  const minutes = Math.floor((atMs - at('0:00')) / 60_000)
  const inDay = ((minutes % 1_440) + 1_440) % 1_440
  return `${Math.floor(inDay / 60)}:${String(inDay % 60).padStart(2, '0')}`
}
