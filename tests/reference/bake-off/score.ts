import type { BakeOff, BakePlan, VarietyGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'
import type { Customers, Days } from './customers.ts'
import { drawCustomers } from './customers.ts'

/**
 * What a plan of the bake-off earns, by simulation: each variety's day customer by customer, first ready first sold, with
 * pieces held for orders. It shares nothing with the planner but the types, and it knows the scored core only.
 */
export interface Score {
  /** Expected profit of a day and the standard error of that mean. */
  readonly profit: number
  readonly standardError: number
  /** Means per day: walk-ins turned away, pieces that orders lacked, pieces left at the close. */
  readonly lost: number
  readonly missing: number
  readonly left: number
  /** Minutes between ready and sold, over all pieces sold. NaN when nothing is sold. */
  readonly age: number
  /** Infinity without loads. */
  readonly firstKettleStart: number
}

const HELD_BEFORE_DUE_MIN = 120

/** Scores plans on the same days. @returns one score for each plan, in their order */
export function scorePlans(given: BakeOff, plans: readonly BakePlan[], days: Days): Score[] {
  const tallies = plans.map(() => newTally(days.days))
  for (const [index, variety] of given.varieties.entries()) {
    const customers = drawCustomers(given, variety, index, days)
    for (const [nth, plan] of plans.entries()) {
      const tally = tallies[nth]
      if (tally !== undefined) addVariety(tally, variety, customers, shelfDay(given, plan, variety))
    }
  }
  return plans.map((plan, nth) => scoreOf(tallies[nth] ?? newTally(0), plan))
}

export function scorePlan(given: BakeOff, plan: BakePlan, { days = 4_000, seed = 1 }: Partial<Days> = {}): Score {
  const [score] = scorePlans(given, [plan], { days, seed })
  if (score === undefined) throw new Error('one plan has one score')
  return score
}

interface Tally {
  /** Profit of each day. */
  readonly profits: Float64Array
  lost: number
  missing: number
  left: number
  sold: number
  ageMin: number
}

function newTally(days: number): Tally {
  return { profits: new Float64Array(days), lost: 0, missing: 0, left: 0, sold: 0, ageMin: 0 }
}

/** What happens on one variety's shelf besides walk-ins, the same on every day. */
interface ShelfDay {
  readonly happenings: readonly Happening[]
  readonly bakedPieces: number
}

interface Happening {
  readonly kind: 'ready' | 'hold' | 'due'
  readonly at: number
  readonly pieces: number
}

const FIRST_AT_ONE_TIME = { ready: 0, hold: 1, due: 2 }

function shelfDay(given: BakeOff, plan: BakePlan, { name, onShelf }: VarietyGiven): ShelfDay {
  const start = given.now ?? given.open
  const happenings: Happening[] = [{ kind: 'ready', at: start, pieces: onShelf }]
  let bakedPieces = 0
  for (const [loads, isPaid] of [[given.running ?? [], true] as const, [plan.loads, false] as const]) {
    for (const { out, lines } of loads) {
      for (const [variety, pieces] of lines) {
        if (variety !== name) continue
        happenings.push({ kind: 'ready', at: out + given.coolMin, pieces })
        if (!isPaid) bakedPieces += pieces
      }
    }
  }
  for (const { due, lines } of given.orders) {
    for (const [variety, pieces] of lines) {
      if (variety !== name) continue
      happenings.push({ kind: 'hold', at: due - HELD_BEFORE_DUE_MIN, pieces }, { kind: 'due', at: due, pieces })
    }
  }
  happenings.sort((a, b) => a.at - b.at || FIRST_AT_ONE_TIME[a.kind] - FIRST_AT_ONE_TIME[b.kind])
  return { happenings, bakedPieces }
}

function addVariety(tally: Tally, variety: VarietyGiven, customers: Customers, { happenings, bakedPieces }: ShelfDay) {
  const { price, cost, salvage, lostSale, stalePerHour } = variety
  const shelf = new ShelfOfVariety(happenings)
  const { times, first } = customers
  for (let day = 0; day < tally.profits.length; day++) {
    shelf.begin()
    const end = first[day + 1] ?? 0
    for (let customer = first[day] ?? 0; customer < end; customer++) shelf.walkIn(times[customer] ?? 0)
    shelf.until(Number.POSITIVE_INFINITY)
    const left = shelf.stock
    const profit =
      price * shelf.sold +
      salvage * left -
      cost * bakedPieces -
      lostSale * shelf.lost -
      (price + 2 * lostSale) * shelf.missing -
      (stalePerHour * shelf.ageMin) / 60
    tally.profits[day] = (tally.profits[day] ?? 0) + profit
    tally.lost += shelf.lost
    tally.missing += shelf.missing
    tally.left += left
    tally.sold += shelf.sold
    tally.ageMin += shelf.ageMin
  }
}

/** One variety's pieces for sale on one day. A hold is a number: whoever takes, takes the oldest pieces. */
class ShelfOfVariety {
  stock = 0
  sold = 0
  lost = 0
  missing = 0
  ageMin = 0
  readonly #happenings: readonly Happening[]
  readonly #readyAt: Float64Array
  readonly #pieces: Float64Array
  #next = 0
  #nextAt = Number.POSITIVE_INFINITY
  #held = 0
  #oldest = 0
  #leftOfOldest = 0

  constructor(happenings: readonly Happening[]) {
    this.#happenings = happenings
    const batches = happenings.filter(({ kind }) => kind === 'ready')
    this.#readyAt = Float64Array.from(batches, ({ at }) => at)
    this.#pieces = Float64Array.from(batches, ({ pieces }) => pieces)
  }

  begin(): void {
    this.stock = this.sold = this.lost = this.missing = this.ageMin = 0
    this.#next = this.#held = this.#oldest = 0
    this.#leftOfOldest = this.#pieces[0] ?? 0
    this.#nextAt = this.#happenings[0]?.at ?? Number.POSITIVE_INFINITY
  }

  /** Lets happen what comes up to a minute, that minute included. */
  until(minute: number): void {
    while (this.#nextAt <= minute && this.#next < this.#happenings.length) {
      const happening = this.#happenings[this.#next++]
      if (happening !== undefined) this.#happen(happening)
      this.#nextAt = this.#happenings[this.#next]?.at ?? Number.POSITIVE_INFINITY
    }
  }

  walkIn(at: number): void {
    if (this.#nextAt <= at) this.until(at)
    if (this.stock > this.#held) this.#take(1, at)
    else this.lost++
  }

  #happen({ kind, at, pieces }: Happening): void {
    if (kind === 'ready') this.stock += pieces
    else if (kind === 'hold') this.#held += pieces
    else {
      const filled = Math.min(pieces, this.stock)
      this.#held -= pieces
      this.missing += pieces - filled
      this.#take(filled, at)
    }
  }

  #take(pieces: number, at: number): void {
    this.stock -= pieces
    this.sold += pieces
    let wanted = pieces
    while (wanted > 0) {
      while (this.#leftOfOldest === 0) this.#leftOfOldest = this.#pieces[++this.#oldest] ?? 0
      const taken = Math.min(wanted, this.#leftOfOldest)
      this.#leftOfOldest -= taken
      wanted -= taken
      this.ageMin += taken * (at - (this.#readyAt[this.#oldest] ?? at))
    }
  }
}

function scoreOf({ profits, lost, missing, left, sold, ageMin }: Tally, { loads }: BakePlan): Score {
  const days = profits.length
  const profit = profits.reduce((sum, one) => sum + one, 0) / days
  const variance = profits.reduce((sum, one) => sum + (one - profit) ** 2, 0) / Math.max(1, days - 1)
  return {
    profit,
    standardError: Math.sqrt(variance / days),
    lost: lost / days,
    missing: missing / days,
    left: left / days,
    age: ageMin / sold,
    firstKettleStart: Math.min(...loads.map(({ kettleStart }) => kettleStart)),
  }
}
