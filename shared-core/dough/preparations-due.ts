import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { PreparationId } from '../ids.ts'
import type { Preparation } from '../shop/formula.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { buildsLeft } from './builds-left.ts'
import type { NoonOf } from './dates.ts'
import { beginOf, minuteOn } from './dates.ts'
import type { MixAhead } from './mixes-ahead.ts'
import { mixesAhead } from './mixes-ahead.ts'
import { seedMilligrams, totalPercent, WHOLE } from './percents.ts'
import type { Looked } from './plan-days.ts'

/** A pre-ferment or soaker to begin, or a culture to feed. */
export interface PreparationDue {
  readonly preparationId: PreparationId
  /** The day of boiling that it is for; null: the culture is fed. */
  readonly forDate: string | null
  /** Flour, water and the rest, without the seed: what mixes take of it, less what was made already. */
  readonly milligrams: number
  /** Of the ripe one that it is built from. */
  readonly seedMilligrams: number
  /** When it may be begun, should be, and must be, so that it is ripe for the earliest mix that uses it. */
  readonly begin: { readonly earliestAtMs: EpochMs; readonly targetAtMs: EpochMs; readonly latestAtMs: EpochMs }
  /** The earliest mix that uses it; null: the culture is fed. */
  readonly usedAtMs: EpochMs | null
  readonly status: 'coming' | 'due' | 'late'
}

/** Mixes of today, tomorrow and the day after; each is for three days later at most. */
const MIX_DAYS = 2
const DAYS_AHEAD_MAX = 3

/**
 * What must be made for the mixes of today, tomorrow and the day after, and cultures to feed today, the soonest first.
 *
 *   begin = start of the earliest mix that uses it − (latest … target … earliest until ripe)
 *
 * Spans are elapsed time, over a change of the clocks too. A culture is fed each day, closed days too, unless it was fed or
 * built today already, or a dough asks for it to be built today.
 * @param localDate the shop's date now, YYYY-MM-DD
 * @example a poolish of 12 h for a mix at 6:00 // begin at 18:00 the evening before
 */
export function preparationsDue(
  state: State,
  shop: Shop,
  nowMs: EpochMs,
  localDate: string,
  noonOf: NoonOf,
): PreparationDue[] {
  const looked: Looked = { state, shop, noonOf }
  const lastMixDate = dateAfter(localDate, MIX_DAYS)
  const mixes = mixesAhead(looked, dateAfter(lastMixDate, DAYS_AHEAD_MAX)).filter(
    ({ mixDate }) => mixDate >= localDate && mixDate <= lastMixDate,
  )
  const made = madeFor(state)
  const due = inUse(shop.preparations).flatMap((preparation) => {
    const builds = buildsDue({ preparation, mixes, made, nowMs })
    const feeding = feedingDue(looked, preparation, { builds, nowMs, localDate })
    return feeding === null ? builds : [...builds, feeding]
  })
  return due.sort(
    (one, other) => one.begin.targetAtMs - other.begin.targetAtMs || (one.preparationId < other.preparationId ? -1 : 1),
  )
}

/** What is made and not used yet, by preparation and day; what was fed counts for no day. */
export function madeFor(state: Pick<State, 'mixes' | 'builds'>): ReadonlyMap<string, number> {
  const left = buildsLeft(state)
  const made = new Map<string, number>()
  for (const { id, preparationId, forDate } of state.builds.values()) {
    if (forDate === null) continue
    const key = madeKey(preparationId, forDate)
    made.set(key, (made.get(key) ?? 0) + (left.get(id) ?? 0))
  }
  return made
}

export function madeKey(preparationId: PreparationId, forDate: string): string {
  return `${forDate} ${preparationId}`
}

/** A preparation is weighed to a percent or so: nobody begins another for less. Common practice, no source. */
const ENOUGH_SHARE = 0.99

/** What is missing of so much of a preparation, in whole milligrams; nothing where it is all there but for a percent. */
export function stillToMake(wanted: number, made: number): number {
  return made >= wanted * ENOUGH_SHARE ? 0 : Math.ceil(wanted - made)
}

interface ForBuilds {
  readonly preparation: Preparation
  readonly mixes: readonly MixAhead[]
  readonly made: ReadonlyMap<string, number>
  readonly nowMs: EpochMs
}

function buildsDue({ preparation, mixes, made, nowMs }: ForBuilds): PreparationDue[] {
  const { id, ready } = preparation
  const wanted = new Map<string, { milligrams: number; usedAtMs: EpochMs }>()
  for (const { bakeDate, startAtMs, lines } of mixes) {
    const some = lines.reduce((sum, line) => (line.preparationId === id ? sum + line.milligrams : sum), 0)
    if (some === 0) continue
    const before = wanted.get(bakeDate)
    const usedAtMs = before === undefined || startAtMs < before.usedAtMs ? startAtMs : before.usedAtMs
    wanted.set(bakeDate, { milligrams: (before?.milligrams ?? 0) + some, usedAtMs })
  }
  return [...wanted].flatMap(([forDate, { milligrams: some, usedAtMs }]) => {
    const missing = stillToMake(some, made.get(madeKey(id, forDate)) ?? 0)
    if (missing === 0) return []
    const begin = {
      earliestAtMs: epochMs(usedAtMs - ready.latestMs),
      targetAtMs: epochMs(usedAtMs - ready.targetMs),
      latestAtMs: epochMs(usedAtMs - ready.earliestMs),
    }
    const status = statusOf(begin, nowMs)
    const seed = seedMilligrams(preparation, missing)
    return [{ preparationId: id, forDate, milligrams: missing, seedMilligrams: seed, begin, usedAtMs, status }]
  })
}

function feedingDue(
  { state, shop, noonOf }: Looked,
  preparation: Preparation,
  on: { readonly builds: readonly PreparationDue[]; readonly nowMs: EpochMs; readonly localDate: string },
): PreparationDue | null {
  if (preparation.fedWith === null) return null
  const dayFromMs = beginOf(noonOf, on.localDate)
  const dayToMs = beginOf(noonOf, dateAfter(on.localDate, 1))
  const isToday = (atMs: EpochMs) => atMs >= dayFromMs && atMs < dayToMs
  const ofIt = [...state.builds.values()].filter(
    ({ preparationId, dropped }) => preparationId === preparation.id && !dropped,
  )
  if (ofIt.some(({ madeAtMs }) => isToday(madeAtMs))) return null
  if (on.builds.some(({ begin }) => isToday(begin.targetAtMs))) return null
  const some = Math.round((milligrams(preparation.fedWith) * totalPercent(preparation.lines)) / WHOLE)
  const begin = {
    earliestAtMs: dayFromMs,
    targetAtMs: minuteOn(noonOf, on.localDate, shop.doughRoom?.fromMinute ?? FEED_MINUTE),
    latestAtMs: epochMs(dayToMs - 1),
  }
  return {
    preparationId: preparation.id,
    forDate: null,
    milligrams: some,
    seedMilligrams: seedMilligrams(preparation, some),
    begin,
    usedAtMs: null,
    status: statusOf(begin, on.nowMs),
  }
}

/** In the morning, where nobody has said when work begins. Common practice, no source. */
const FEED_MINUTE = 480

function statusOf({ targetAtMs, latestAtMs }: PreparationDue['begin'], nowMs: EpochMs): PreparationDue['status'] {
  return nowMs < targetAtMs ? 'coming' : nowMs <= latestAtMs ? 'due' : 'late'
}
