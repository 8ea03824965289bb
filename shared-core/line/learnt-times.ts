import type { VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { DurationMs } from '../units.ts'
import { durationMs } from '../units.ts'
import type { LineDay } from './line-tally.ts'

/** How long something on the line really takes, beside what the set-up says. */
export interface LearntTime {
  readonly what: TimeKind
  /** Null: of all varieties. */
  readonly varietyId: VarietyId | null
  /** Taps that it rests on, and the days that they are of. */
  readonly taps: number
  readonly days: number
  /** Half of them took no longer; a quarter no longer, three quarters no longer. */
  readonly medianMs: DurationMs
  readonly quarterMs: DurationMs
  readonly threeQuartersMs: DurationMs
  /** Null: the set-up does not say. */
  readonly setUpMs: DurationMs | null
  /** The set-up's lies outside of what taps leave open (a 95 % interval of the median), by more than a twentieth. */
  readonly isOther: boolean
}
export type TimeKind = 'boil' | 'cycle' | 'boarding' | 'between' | 'firstSide' | 'bake'

/** Fewer say nothing; a variety's own need as many. */
const TAPS_MIN = 8

/**
 * What days have taught of the line's times: medians, as one forgotten tap must not count, for the whole shop and for
 * varieties that were tapped often enough alone or with others of the same bake.
 * @param days newest last; the caller says how many count
 * @returns in the order of the line, all varieties before single ones
 */
export function learntTimes(shop: Shop, days: readonly LineDay[]): readonly LearntTime[] {
  const whole = WHOLE.flatMap(({ what, of, setUpMs }) => learnt(what, null, taken(days, of), setUpMs(shop)))
  const varieties = [...shop.varieties.values()]
    .filter(({ retired }) => !retired)
    .sort((one, other) => one.order - other.order)
  const single = (['firstSide', 'bake'] as const).flatMap((what) =>
    varieties.flatMap((variety) => {
      const seconds = taken(days, (day) => ofVariety(shop, day, what, variety.id))
      return learnt(what, variety.id, seconds, windowOf(shop, what, variety.doughId, variety.id)?.targetMs ?? null)
    }),
  )
  return [...whole, ...single]
}

const WHOLE: readonly {
  readonly what: TimeKind
  readonly of: (day: LineDay) => readonly number[]
  readonly setUpMs: (shop: Shop) => DurationMs | null
}[] = [
  { what: 'boil', of: ({ boils }) => boils, setUpMs: ({ windows }) => windows.kettle?.targetMs ?? null },
  { what: 'cycle', of: ({ cycles }) => cycles, setUpMs: ({ kettle }) => kettle.cycleMs },
  { what: 'boarding', of: ({ boardings }) => boardings, setUpMs: ({ windows }) => windows.boards?.targetMs ?? null },
  { what: 'between', of: ({ between }) => between, setUpMs: ({ oven }) => oven.handlingMs },
]

/** A load bakes as long as its slowest variety: only loads in which this one is the slowest teach of it. */
function ofVariety(shop: Shop, day: LineDay, what: 'firstSide' | 'bake', id: VarietyId): readonly number[] {
  const target = (one: VarietyId) => {
    const variety = shop.varieties.get(one)
    return variety === undefined ? 0 : (windowOf(shop, what, variety.doughId, one)?.targetMs ?? 0)
  }
  const own = target(id)
  return day.loads.flatMap((load) => {
    if (!load.varietyIds.includes(id) || load.varietyIds.some((one) => target(one) > own)) return []
    return load[what] ?? []
  })
}

interface Taken {
  /** In rising order. */
  readonly seconds: readonly number[]
  readonly days: number
}

function taken(days: readonly LineDay[], of: (day: LineDay) => readonly number[]): Taken {
  const by = days.map(of)
  return { seconds: by.flat().sort((one, other) => one - other), days: by.filter((some) => some.length > 0).length }
}

function learnt(
  what: TimeKind,
  varietyId: VarietyId | null,
  { seconds, days }: Taken,
  setUpMs: DurationMs | null,
): readonly LearntTime[] {
  const taps = seconds.length
  if (taps < TAPS_MIN) return []
  // The median's own 95 % interval by ranks (binomial, normal approximation): n/2 ± 0.98·√n.
  const away = 0.98 * Math.sqrt(taps)
  const low = at(seconds, (taps - 1) / 2 - away)
  const high = at(seconds, (taps - 1) / 2 + away)
  const setUp = setUpMs === null ? null : setUpMs / 1_000
  return [
    {
      what,
      varietyId,
      taps,
      days,
      medianMs: ms(at(seconds, (taps - 1) / 2)),
      quarterMs: ms(at(seconds, (taps - 1) / 4)),
      threeQuartersMs: ms(at(seconds, (3 * (taps - 1)) / 4)),
      setUpMs,
      isOther: setUp !== null && (setUp < low || setUp > high) && isWorthIt(at(seconds, (taps - 1) / 2), setUp),
    },
  ]
}

/** A difference that nobody at the line would notice is none, however sure. Common sense, no source. */
function isWorthIt(median: number, setUp: number): boolean {
  return Math.abs(median - setUp) > Math.max(3, 0.05 * setUp)
}

/** The value at a place of a sorted list, between two of them in proportion. */
function at(sorted: readonly number[], place: number): number {
  const held = Math.min(sorted.length - 1, Math.max(0, place))
  const below = Math.floor(held)
  const one = sorted[below] ?? 0
  return one + ((sorted[below + 1] ?? one) - one) * (held - below)
}

function ms(seconds: number): DurationMs {
  return durationMs(Math.round(seconds) * 1_000)
}
