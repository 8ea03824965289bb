import type { Factor } from './factor.ts'
import { addTo, forget, newFactor, shrunk } from './factor.ts'
import type { ShopDay } from './item-model.ts'

/** Effective pieces that the shop's weekdays are shrunk to 1 by: a standard deviation of 16 %. Measured: 15 to 60 do alike. */
const WEEKDAY_WORTH = 40
/** A special day's: 30 %, as nobody marks a day that is like others. */
const SPECIAL_WORTH = 11
/** A day's pieces of all items stray together, by about 1/√20 of the mean, so that a day tells no more than 20. Measured. */
const DAY_WORTH_MOST = 20
const KEEP_WEEKDAYS = 0.5 ** (1 / 120)
/** Special days come back seldom; after so many of them the first counts half. */
const KEEP_SPECIALS = 0.5 ** (1 / 20)

/** What a day asked of all items together, by those whose level is known. */
export interface DayTotals {
  readonly wanted: number
  /** By levels alone, without weekday and special day; and with both. */
  readonly plain: number
  readonly expected: number
}

/** The weekdays and special days that all items of a shop share. */
export class ShopModel {
  readonly #weekdays: readonly Factor[] = Array.from({ length: 7 }, newFactor)
  readonly #specials = new Map<string, Factor>()

  /** @param weekday 0 is Monday */
  dayOf(weekday: number, specialIds: readonly string[]): Omit<ShopDay, 'kappa' | 'steps'> {
    const specials = [...new Set(specialIds)].sort().map((id) => {
      const factor = this.#specials.get(id) ?? newFactor()
      const known = factor.expected / (factor.expected + SPECIAL_WORTH)
      return { id, factor: shrunk(factor, SPECIAL_WORTH, 1), known }
    })
    return { weekday, weekdayFactor: shrunk(this.#weekdays[weekday] ?? newFactor(), WEEKDAY_WORTH, 1), specials }
  }

  learn({ weekday, specials }: Omit<ShopDay, 'kappa' | 'steps'>, { wanted, plain, expected }: DayTotals): void {
    for (const factor of this.#weekdays) forget(factor, KEEP_WEEKDAYS)
    if (expected <= 0) return
    const worth = 1 / (1 + expected / DAY_WORTH_MOST)
    if (specials.length === 0) addTo(this.#weekdays[weekday] ?? newFactor(), wanted * worth, plain * worth)
    for (const { id, factor } of specials) {
      const sums = this.#specials.get(id) ?? newFactor()
      forget(sums, KEEP_SPECIALS)
      addTo(sums, wanted * worth, (expected / factor) * worth)
      this.#specials.set(id, sums)
    }
  }
}
