import { assert } from '../support.ts'
import type { DayDemand, ItemGuess, RestDemand } from './demand.ts'
import { Profiles } from './profiles.ts'
import { restOf } from './rest.ts'
import type { DayAsked, ItemDay, SalesDay } from './sales-day.ts'
import { trueDemandOf } from './true-demand.ts'

/** Open days after which what was learnt weighs half. Measured on open data: 8 to 20 days do about as well. */
const LEVEL_HALF_LIFE_DAYS = 12
/** Pieces a day that an item has of which nothing is known; and how many days of sales a guess is worth. */
const USUAL_UNKNOWN = 1
const GUESS_DAYS = 3
/** Days that make a level "many". */
const MANY_DAYS = 14
const DISPERSION_UNKNOWN = 5

interface ItemLevel {
  readonly group: string | null
  readonly guess: number | null
  pieces: number
  days: number
  seenDays: number
}

/** What a shop's days teach of its demand, forward in time: learn a day, then ask for days ahead. */
export class Learner {
  readonly #items = new Map<string, ItemLevel>()
  readonly #profiles = new Profiles()
  #lastDate = ''

  constructor(guesses: readonly ItemGuess[]) {
    for (const { id, group, usual } of guesses) this.#items.set(id, newLevel(group, usual))
  }

  /** @throws AssertionError when the day is not after the last one learnt */
  learn(day: SalesDay): void {
    assert(day.date > this.#lastDate, `days are learnt in order: ${day.date} comes after ${this.#lastDate}`)
    this.#lastDate = day.date
    for (const id of day.items.keys()) if (!this.#items.has(id)) this.#items.set(id, newLevel(null, null))
    const keep = 0.5 ** (1 / LEVEL_HALF_LIFE_DAYS)
    for (const [id, level] of this.#items) {
      const sold = day.items.get(id)
      if (sold?.offered === false) continue
      level.pieces = level.pieces * keep + (sold === undefined ? 0 : piecesOf(sold))
      level.days = level.days * keep + 1
      level.seenDays += 1
    }
    this.#profiles.learn(day)
  }

  /** For each item that is known of, what the day will ask of it. */
  ahead(asked: DayAsked): ReadonlyMap<string, DayDemand> {
    return new Map([...this.#items].map(([id, level]) => [id, this.#demandOf(id, level, asked)]))
  }

  rest(
    asked: DayAsked,
    ahead: ReadonlyMap<string, DayDemand>,
    soFar: SalesDay,
    nowMinute: number,
  ): ReadonlyMap<string, RestDemand> {
    return restOf(asked, ahead, soFar, nowMinute)
  }

  /** Of a day that is not learnt yet, what would have gone of each item had none sold out. */
  trueDemand(day: SalesDay): ReadonlyMap<string, number> {
    return trueDemandOf(this.ahead(day), day)
  }

  #demandOf(id: string, level: ItemLevel, asked: DayAsked): DayDemand {
    const mean = (level.pieces + (level.guess ?? USUAL_UNKNOWN) * GUESS_DAYS) / (level.days + GUESS_DAYS)
    return {
      mean,
      dispersion: DISPERSION_UNKNOWN,
      profile: this.#profiles.of(id, level.group, asked.date, asked.openMinute, asked.closeMinute),
      basis: level.seenDays === 0 ? 'guess' : level.seenDays < MANY_DAYS ? 'few' : 'many',
      parts: { level: mean, weekday: 1, special: 1 },
    }
  }
}

/** Pieces that went on a day, by whatever they are known. Never below none. */
function piecesOf({ sold, unseen }: ItemDay): number {
  return Math.max(
    0,
    sold.reduce((sum, { pieces }) => sum + pieces, unseen),
  )
}

function newLevel(group: string | null, guess: number | null): ItemLevel {
  return { group, guess, pieces: 0, days: 0, seenDays: 0 }
}
