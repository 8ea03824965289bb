import type { DayDemand, Profile } from '../../../shared-core/demand/demand.ts'
import type { Morning } from '../../../shared-core/demand/mornings.ts'
import type { ItemDay, Purchase, SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { drawer } from '../support/draw.ts'

/** Six to two, half of the demand by half past eight. */
export const HOURS: Profile = [
  [360, 0],
  [420, 0.2],
  [510, 0.5],
  [600, 0.75],
  [840, 1],
]

export interface Chances {
  /** Above 0, below 1. */
  readonly part: () => number
  /** Of a gamma distribution of mean 1 and that shape. */
  readonly rate: (shape: number) => number
}

/** Repeatable chance; the gamma by Marsaglia and Tsang, ACM TOMS 26 (2000), normals by Box and Muller. */
export function chances(seed: number): Chances {
  const { upTo } = drawer(seed)
  const part = () => (upTo(2 ** 32 - 2) + 0.5) / 2 ** 32
  const normal = () => Math.sqrt(-2 * Math.log(part())) * Math.cos(2 * Math.PI * part())
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * part() ** (1 / shape)
    const d = shape - 1 / 3
    for (;;) {
      const x = normal()
      const v = (1 + x / Math.sqrt(9 * d)) ** 3
      if (v > 0 && Math.log(part()) < x ** 2 / 2 + d - d * v + d * Math.log(v)) return d * v
    }
  }
  return { part, rate: (shape) => (shape === Number.POSITIVE_INFINITY ? 1 : gamma(shape) / shape) }
}

/** Purchases of one piece by a Poisson process of that many a day and that profile. */
export function arrivals({ part }: Chances, pieces: number, profile: Profile = HOURS): Purchase[] {
  const bought: Purchase[] = []
  const wait = () => -Math.log(part()) / pieces
  for (let at = wait(); at < 1; at += wait()) bought.push({ minute: minuteAt(profile, at), pieces: 1 })
  return bought
}

function minuteAt(profile: Profile, at: number): number {
  let from = profile[0] ?? [0, 0]
  for (const to of profile) {
    if (at <= to[1] && to[1] > from[1]) return from[0] + ((to[0] - from[0]) * (at - from[1])) / (to[1] - from[1])
    from = to
  }
  return from[0]
}

export function itemDay(sold: readonly Purchase[], more: Partial<ItemDay> = {}): ItemDay {
  return { sold, unseen: 0, gone: [], offered: true, ...more }
}

/** A day of the six-to-two shop. */
export function dayOf(items: Readonly<Record<string, ItemDay>>, date = '2026-03-02'): SalesDay {
  return { date, openMinute: 360, closeMinute: 840, specials: [], items: new Map(Object.entries(items)) }
}

export function demandOf(mean: number, dispersion: number, profile: Profile = HOURS): DayDemand {
  return { mean, dispersion, profile, basis: 'many', parts: { level: mean, weekday: 1, special: 1 } }
}

/** What mornings have told, said outright. */
export function morningOf(own: number, shop = 0, shopSpread = 0.02, lump = 1): Morning {
  return { own: () => own, shop: () => shop, shopSpread, shopLump: lump, lumpOf: () => lump }
}
