import type { BakeLoad, BakeOff, VarietyGiven } from '../../shared-core/plan/bake-off/bake-off.ts'
import { drawCustomers, partBy } from '../reference/bake-off/customers.ts'

/**
 * A simulated morning: customers as they really come, and what the shop knows of them at each minute. Orders are left out
 * here: what is judged is how plans follow demand that is not as it was foretold.
 */
export interface Morning {
  readonly given: BakeOff
  /** By variety: minutes at which somebody comes, in order. */
  readonly customers: readonly Float64Array[]
}

/** How far a day may be from its forecast besides its own law: all varieties together, and each (logarithms). */
export interface Away {
  readonly common: number
  readonly each: number
}

/** @param seed of the morning; the same for all ways of baking, so that they meet the same customers */
export function morningOf(given: BakeOff, seed: number, away: Away, random: () => number): Morning {
  const common = away.common * random()
  const plain = { ...given, orders: [] }
  const customers = given.varieties.map((variety, index) => {
    const factor = Math.exp(common + away.each * random() - (away.common ** 2 + away.each ** 2) / 2)
    const real = { ...variety, demand: { ...variety.demand, mean: variety.demand.mean * factor } }
    return drawCustomers(plain, real, index, { days: 1, seed }).times.slice(0, countOf(plain, real, index, seed))
  })
  return { given: plain, customers }
}

function countOf(given: BakeOff, variety: VarietyGiven, index: number, seed: number): number {
  return drawCustomers(given, variety, index, { days: 1, seed }).first[1] ?? 0
}

/** One rod by a minute. */
export interface Rod {
  readonly stock: number
  readonly sold: number
  readonly lost: number
  /** Part of the day's demand that came while there was some, and pieces sold in it. */
  readonly seenPart: number
  readonly ageMin: number
}

/** First ready, first sold. @param loads all that are out by then and whose pieces are ready count */
export function rodAt({ given, customers }: Morning, index: number, loads: readonly BakeLoad[], until: number): Rod {
  const variety = given.varieties[index]
  const times = customers[index]
  if (variety === undefined || times === undefined) throw new Error(`there is no variety ${index}`)
  const lots = [
    { at: given.open, pieces: variety.onShelf },
    ...loads.flatMap(({ out, lines }) =>
      lines.filter(([name]) => name === variety.name).map(([, pieces]) => ({ at: out + given.coolMin, pieces })),
    ),
  ].sort((one, other) => one.at - other.at)
  let [stock, sold, lost, ageMin, next, oldest, taken] = [0, 0, 0, 0, 0, 0, 0]
  let [seenPart, since] = [0, given.open]
  const part = (minute: number) => partBy(variety.demand.profile, minute)
  const arrive = (minute: number) => {
    while (next < lots.length && (lots[next]?.at ?? 0) <= minute) {
      if (stock === 0) since = Math.max(given.open, lots[next]?.at ?? 0)
      stock += lots[next]?.pieces ?? 0
      next += 1
    }
  }
  for (const at of times) {
    if (at > until) break
    arrive(at)
    if (stock === 0) {
      lost += 1
      continue
    }
    stock -= 1
    sold += 1
    while (taken >= (lots[oldest]?.pieces ?? 0)) {
      oldest += 1
      taken = 0
    }
    taken += 1
    ageMin += at - Math.max(given.open, lots[oldest]?.at ?? at)
    if (stock === 0) seenPart += part(at) - part(since)
  }
  arrive(until)
  if (stock > 0) seenPart += Math.max(0, part(until) - part(since))
  return { stock, sold, lost, seenPart, ageMin }
}

/** Money of the day in the instance's unit. */
export function profitOf(morning: Morning, loads: readonly BakeLoad[]): number {
  const { given } = morning
  return given.varieties.reduce((sum, variety, index) => {
    const baked = loads.reduce(
      (pieces, load) => pieces + load.lines.reduce((n, [name, count]) => n + (name === variety.name ? count : 0), 0),
      0,
    )
    const { sold, lost, ageMin } = rodAt(morning, index, loads, given.close)
    const left = variety.onShelf + baked - sold
    return (
      sum +
      variety.price * sold -
      variety.cost * baked +
      variety.salvage * left -
      variety.lostSale * lost -
      (variety.stalePerHour * ageMin) / 60
    )
  }, 0)
}

/** The problem that is left at a minute, by what the shop has seen: the gamma–Poisson posterior of each variety's day. */
export function restAt(morning: Morning, now: number, done: readonly BakeLoad[]): BakeOff {
  const { given } = morning
  const running = done.filter(({ out }) => out + given.coolMin > now)
  const taken = new Map<string, number>()
  for (const { lines } of done)
    for (const [name, pieces] of lines) {
      const dough = given.varieties.find((one) => one.name === name)?.dough ?? ''
      taken.set(dough, (taken.get(dough) ?? 0) + pieces)
    }
  const varieties = given.varieties.map((variety, index) => {
    const { stock, sold, seenPart } = rodAt(
      morning,
      index,
      done.filter((load) => !running.includes(load)),
      now,
    )
    const { mean, dispersion, profile } = variety.demand
    const seen = Math.max(0, seenPart)
    return {
      ...variety,
      onShelf: stock,
      demand: { mean: (dispersion + sold) / (dispersion / mean + seen), dispersion: dispersion + sold, profile },
    }
  })
  const doughs = Object.fromEntries(
    Object.entries(given.doughs).map(([name, dough]) => [name, { pieces: dough.pieces - (taken.get(name) ?? 0) }]),
  )
  return { ...given, now, running, varieties, doughs }
}
