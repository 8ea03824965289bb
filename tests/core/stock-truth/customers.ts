import type { Chance } from './chance.ts'

/** Customers an hour from 6:00: a rush before work, a smaller one at noon. Invented. */
const CUSTOMERS_AN_HOUR = [36, 66, 70, 52, 40, 36, 42, 24, 12] as const
const SIZES = [1, 2, 3, 6, 12, 13] as const
const SIZE_WEIGHTS = [46, 18, 7, 18, 6, 5] as const
/** One box in so many is all of one kind. */
const ONE_KIND = 0.15

/** What the day's customers are like: how many come against the usual, and what they like. */
export interface Crowd {
  readonly times: number
  /** Each quarter of an hour has its own luck: buses, rain, a queue that frightens. */
  readonly quarters: readonly number[]
  readonly likes: readonly number[]
}

export function crowdOf(chance: Chance, likes: readonly number[]): Crowd {
  return {
    times: chance.between(0.8, 1.25),
    quarters: Array.from({ length: CUSTOMERS_AN_HOUR.length * 4 }, () => chance.between(0.6, 1.4)),
    likes: likes.map((weight) => weight * chance.between(0.7, 1.3)),
  }
}

/** How many come in a minute after opening. */
export function comeIn(chance: Chance, { times, quarters }: Crowd, minute: number): number {
  const anHour = CUSTOMERS_AN_HOUR[Math.floor(minute / 60)] ?? 0
  return chance.poisson((anHour / 60) * times * (quarters[Math.floor(minute / 15)] ?? 1))
}

/** Who does not find what they like takes another one so often, else goes without. */
const TAKE_ANOTHER = 0.5

/** Pieces by variety that one customer takes of what is there. */
export function basket(chance: Chance, { likes }: Crowd, there: readonly number[]): readonly number[] {
  const wants = SIZES[chance.pick(SIZE_WEIGHTS)] ?? 1
  const isOneKind = wants < 6 || chance.comes(ONE_KIND)
  const taken = there.map(() => 0)
  let left = wants
  while (left > 0) {
    const some = isOneKind ? wants : Math.min(left, chance.whole(1, 4))
    const isThere = (kind: number) => (there[kind] ?? 0) > (taken[kind] ?? 0)
    const first = chance.pick(likes)
    const place = isThere(first)
      ? first
      : chance.comes(TAKE_ANOTHER)
        ? chance.pick(likes.map((weight, kind) => (isThere(kind) ? weight : 0)))
        : -1
    if (place >= 0) {
      const got = Math.min(some, (there[place] ?? 0) - (taken[place] ?? 0))
      taken[place] = (taken[place] ?? 0) + got
    }
    left -= some
  }
  return taken
}

/** Pieces that a usual day's customers want between two minutes after opening, all varieties. */
export function wanted(fromMinute: number, toMinute: number): number {
  let customers = 0
  for (let minute = Math.max(0, fromMinute); minute < toMinute; minute += 1)
    customers += (CUSTOMERS_AN_HOUR[Math.floor(minute / 60)] ?? 0) / 60
  return customers * PIECES_A_CUSTOMER
}

const PIECES_A_CUSTOMER =
  SIZES.reduce((sum: number, pieces, place) => sum + pieces * (SIZE_WEIGHTS[place] ?? 0), 0) /
  SIZE_WEIGHTS.reduce((sum: number, weight) => sum + weight, 0)
