import type { DayDemand } from './demand.ts'
import { partBy } from './exposure.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'
import { differingOf, told } from './told.ts'
import { errorOf, Weighing } from './weighing.ts'

/** What mornings have told of the rest of the day so far. */
export interface Morning {
  /** Of what an item's days differ from what was expected, the part that what came so far shares with the rest, when `over` (0 to 1) of the opening hours is over. */
  own(over: number): number
  /** The same of the whole shop; and how far its days are off: variance of (asked / expected), beyond chance. */
  shop(over: number): number
  readonly shopSpread: number
  /** Pieces by which sales come, E[s²] / E[s] of purchases: of the shop, and of an item. */
  readonly shopLump: number
  lumpOf(itemId: string): number
}

/** Looked at when so much of the opening hours is over. */
const LOOKS = [0.25, 0.45, 0.65]
const HALF_LIFE_DAYS = 60
const KEEP = 0.5 ** (1 / HALF_LIFE_DAYS)
/** An item's purchases are taken to be as large as the shop's until so many pieces were seen. */
const LUMP_WORTH = 50
/** Before anything is learnt: days of the shop are off by 10 %, known as if from so many days. */
const SPREAD_BEFORE = 0.01
const SPREAD_DAYS = 10

/** Sums over purchases. */
interface Sizes {
  pieces: number
  squares: number
}

/** An item's day in two, at a look: what came and what was expected, before it and after. */
interface Halves {
  readonly id: string
  readonly demand: DayDemand
  readonly before: number
  readonly after: number
  readonly expectedBefore: number
  readonly expectedAfter: number
}

/**
 * How much mornings tell of the rest of the day. In some shops a slow morning is a slow day, in others it only rained
 * until ten; so it is learnt, for items and for the shop as a whole: of some parts between nothing and all, each is
 * weighed by how well it would have foretold the rests of the days so far. Items that sold out, or of which pieces went
 * unseen, teach nothing of this that day.
 */
export class Mornings implements Morning {
  readonly #own = LOOKS.map(() => new Weighing())
  readonly #shop = LOOKS.map(() => new Weighing())
  readonly #sizes = new Map<string, Sizes>()
  readonly #allSizes: Sizes = { pieces: 0, squares: 0 }
  #surplus = SPREAD_BEFORE * SPREAD_DAYS
  #surplusDays = SPREAD_DAYS

  own(over: number): number {
    return between(this.#own, over)
  }

  shop(over: number): number {
    return between(this.#shop, over)
  }

  get shopSpread(): number {
    return Math.max(0, this.#surplus / this.#surplusDays)
  }

  get shopLump(): number {
    return (this.#allSizes.squares + LUMP_WORTH) / (this.#allSizes.pieces + LUMP_WORTH)
  }

  lumpOf(itemId: string): number {
    const item = this.#sizes.get(itemId)
    if (item === undefined) return this.shopLump
    return (item.squares + LUMP_WORTH * this.shopLump) / (item.pieces + LUMP_WORTH)
  }

  /** @param ahead what was expected of the day before it began */
  learn(day: SalesDay, ahead: ReadonlyMap<string, DayDemand>): void {
    for (const [place, over] of LOOKS.entries()) {
      const minute = day.openMinute + over * (day.closeMinute - day.openMinute)
      this.#learnLook(place, halvesOf(day, ahead, minute))
    }
    this.#learnSpread(halvesOf(day, ahead, day.closeMinute))
    forget(this.#allSizes)
    for (const [id, item] of day.items) this.#learnSizes(id, item)
  }

  #learnLook(place: number, items: readonly Halves[]): void {
    const [shopParts, ownParts] = [this.#shop[place], this.#own[place]]
    const [expectedBefore, expectedAfter] = [sumOf(items, 'expectedBefore'), sumOf(items, 'expectedAfter')]
    if (shopParts === undefined || ownParts === undefined || expectedBefore <= 0 || expectedAfter <= 0) return
    const before = sumOf(items, 'before')
    const after = sumOf(items, 'after')
    const differing = { spread: this.shopSpread, lump: this.shopLump }
    const factorOf = (part: number) => told({ ...differing, part }, before, expectedBefore).factor
    const shopFactor = factorOf(shopParts.part)
    const variance = expectedAfter * this.shopLump + expectedAfter ** 2 * this.shopSpread
    shopParts.learn((part) => errorOf((after - expectedAfter * factorOf(part)) / Math.sqrt(variance)), KEEP)
    this.#learnOwn(ownParts, items, shopFactor)
  }

  /** An item counts by its expected error in pieces, as it does for who bakes: squared errors over that error. */
  #learnOwn(parts: Weighing, items: readonly Halves[], shopFactor: number): void {
    const rests = items.map(({ id, demand, before, after, expectedBefore, expectedAfter }) => {
      const rest = expectedAfter * shopFactor
      const error = Math.sqrt(rest + rest ** 2 / demand.dispersion)
      return { demand, before, after, expectedBefore: expectedBefore * shopFactor, rest, error, lump: this.lumpOf(id) }
    })
    const usual = rests.reduce((sum, { error }) => sum + error, 0) / rests.length
    parts.learn((part) => {
      let errors = 0
      for (const { demand, before, after, expectedBefore, rest, error, lump } of rests) {
        const { factor } = told(differingOf(demand, part, lump), before, expectedBefore)
        if (error > 0) errors += (errorOf((after - rest * factor) / error) * error) / usual
      }
      return errors
    }, KEEP)
  }

  #learnSpread(items: readonly Halves[]): void {
    const asked = sumOf(items, 'before')
    const expected = sumOf(items, 'expectedBefore')
    this.#surplus *= KEEP
    this.#surplusDays *= KEEP
    if (expected <= 0) return
    this.#surplus += ((asked - expected) ** 2 - expected * this.shopLump) / expected ** 2
    this.#surplusDays += 1
  }

  #learnSizes(id: string, item: ItemDay): void {
    const sizes = this.#sizes.get(id) ?? { pieces: 0, squares: 0 }
    this.#sizes.set(id, sizes)
    forget(sizes)
    for (const { pieces } of item.sold) {
      sizes.pieces += pieces
      sizes.squares += pieces ** 2
      this.#allSizes.pieces += pieces
      this.#allSizes.squares += pieces ** 2
    }
  }
}

/** Items that were there all day and whose every piece has a time, cut at a minute. */
function halvesOf(day: SalesDay, ahead: ReadonlyMap<string, DayDemand>, minute: number): Halves[] {
  const halves: Halves[] = []
  for (const [id, demand] of ahead) {
    const item = day.items.get(id)
    if (demand.basis !== 'many') continue
    if (item !== undefined && (!item.offered || item.gone.length > 0 || item.unseen !== 0)) continue
    let before = 0
    let after = 0
    for (const purchase of item?.sold ?? []) {
      if (purchase.minute < minute) before += purchase.pieces
      else after += purchase.pieces
    }
    const part = partBy(demand.profile, minute)
    halves.push({
      id,
      demand,
      before,
      after,
      expectedBefore: demand.mean * part,
      expectedAfter: demand.mean * (1 - part),
    })
  }
  return halves
}

/** The part at a time of the day, between looks on a straight line. */
function between(looks: readonly Weighing[], over: number): number {
  let [lastOver, lastPart] = [0, looks[0]?.part ?? 0]
  for (const [place, look] of looks.entries()) {
    const at = LOOKS[place] ?? 1
    if (over <= at) return lastPart + ((look.part - lastPart) * Math.max(0, over - lastOver)) / (at - lastOver)
    lastOver = at
    lastPart = look.part
  }
  return lastPart
}

function forget(sizes: Sizes): void {
  sizes.pieces *= KEEP
  sizes.squares *= KEEP
}

function sumOf(items: readonly Halves[], what: 'before' | 'after' | 'expectedBefore' | 'expectedAfter'): number {
  return items.reduce((sum, item) => sum + item[what], 0)
}
