import type { LineDay, OvenRead } from '../line/line-tally.ts'
import type { HeatCourse, HeldBack, NextHeat, OvenHeat, SecondHeat } from '../live/oven-heat.ts'
import type { Shop, Temperature } from '../shop/shop.ts'
import { milliCelsius } from '../shop/temperature.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { HeatFit, HeatPrior, HeatReading, Reached } from './heat.ts'
import { fitHeat, temperatureAt, whenReached } from './heat.ts'
import { ovenPrior, READING_NOISE } from './oven-prior.ts'
import type { Phase } from './phases.ts'
import { phasesOf } from './phases.ts'

export interface HeatAsked {
  readonly shop: Shop
  readonly nowMs: EpochMs
  /** Today's readings, and those of earlier days, oldest first. */
  readonly today: readonly OvenRead[]
  readonly days: readonly LineDay[]
  /** When the oven is empty of bagels and when the second menu bakes, today's slip in both; null: no second menu. */
  readonly changeover: { readonly emptyAtMs: EpochMs; readonly toMs: EpochMs } | null
  /** When the oven is to be ready next. */
  readonly readyAtMs: EpochMs | null
}

/** Older than this a reading says nothing of the next load. */
const READING_AGE_MS_MAX = 15 * 60_000
/** Colder than wanted by less than this nobody would wait. */
const COLD_MIN = 8
const ROOM = 22

/** What the oven's readings say of it, today and in general. */
export function ovenHeat(asked: HeatAsked): OvenHeat {
  const readings = wholeOven(asked.today)
  const past = asked.days.flatMap((day) => phasesOf(wholeOven(day.readings).map(inMinutes), READING_NOISE))
  const phases = phasesOf(readings.map(inMinutes), READING_NOISE)
  const running = phases[phases.length - 1] ?? null
  const fit = running === null || running.readings.length < 2 ? null : fitOf(asked.shop, running, past)
  return {
    readings: readings.map(({ atMs, milliCelsius: of }) => ({ atMs, milliCelsius: of })),
    basis: fit !== null ? 'readings' : past.some(({ readings: some }) => some.length >= 3) ? 'past' : 'kind',
    course: running === null || fit === null ? null : courseOf(running, fit, asked.nowMs),
    second: secondOf(asked, readings, past),
    turnOn: turnOnOf(asked, past),
    next: nextOf(asked, readings, running, past),
    heldBack: heldBackOf(asked.shop, past),
  }
}

function wholeOven(reads: readonly OvenRead[]): readonly OvenRead[] {
  return reads.filter(({ shelfId }) => shelfId === null)
}

function inMinutes({ atMs, milliCelsius: of }: OvenRead): HeatReading {
  return { minute: atMs / 60_000, celsius: of / 1_000 }
}

function fitOf(shop: Shop, phase: Phase, past: readonly Phase[]): HeatFit | null {
  return fitHeat(phase.readings, priorOf(shop, phase.isHeating, past))
}

function priorOf({ oven }: Shop, isHeating: boolean, past: readonly Phase[]): HeatPrior {
  const bakesAt = [oven.bakeAt, oven.secondAt].flatMap((one) => (one === null ? [] : celsiusOf(one)))
  return ovenPrior(oven.kind, isHeating, past, Math.max(0, ...bakesAt))
}

function courseOf(phase: Phase, fit: HeatFit, nowMs: EpochMs): HeatCourse {
  const from = phase.readings[0]?.minute ?? fit.lastMinute
  const to = Math.max(fit.lastMinute, nowMs / 60_000) + 30
  const curve = Array.from({ length: 31 }, (_, n) => {
    const minute = from + ((to - from) * n) / 30
    const { mean, spread } = temperatureAt(fit, minute)
    return [instant(minute), milli(mean), milli(spread)] as const
  })
  return {
    isHeating: phase.isHeating,
    tauMinutes: Math.round(fit.likeliest.tau),
    limitMilliCelsius: milli(fit.likeliest.limit),
    noiseMilliCelsius: milli(fit.noise),
    curve,
  }
}

/** From the newest temperature known, or what bagels bake at, to what the second menu does, from the changeover on. */
function secondOf(asked: HeatAsked, readings: readonly OvenRead[], past: readonly Phase[]): SecondHeat | null {
  const { shop, changeover, nowMs } = asked
  const { bakeAt, secondAt } = shop.oven
  if (changeover === null || secondAt === null) return null
  const wanted = celsiusOf(secondAt)
  const fromMs = epochMs(Math.max(changeover.emptyAtMs, 0))
  const since = readings.filter(({ atMs }) => atMs >= fromMs).map(inMinutes)
  const last = readings[readings.length - 1]
  const young = last !== undefined && nowMs - last.atMs <= READING_AGE_MS_MAX
  const start = young ? last.milliCelsius / 1_000 : bakeAt === null ? null : celsiusOf(bakeAt)
  const begun = since.length > 0 ? since : start === null ? null : [{ minute: fromMs / 60_000, celsius: start }]
  if (begun === null) return null
  const first = begun[begun.length - 1]?.celsius ?? wanted
  const isHeating = wanted >= first
  const fit = fitHeat(begun, priorOf(shop, isHeating, past))
  const reached = fit === null ? null : whenReached(fit, wanted, Math.max(fit.lastMinute, fromMs / 60_000))
  return { milliCelsius: milli(wanted), fromMs, reached: spanOf(reached), wantedMs: changeover.toMs }
}

/** From a cold oven: by when to turn it on so that nine mornings of ten it is ready in time. */
function turnOnOf({ shop, readyAtMs }: HeatAsked, past: readonly Phase[]): OvenHeat['turnOn'] {
  const { bakeAt } = shop.oven
  if (bakeAt === null || readyAtMs === null) return null
  const fit = fitHeat([{ minute: 0, celsius: ROOM }], priorOf(shop, true, past))
  const { q50, q90 } = fit === null ? { q50: null, q90: null } : whenReached(fit, celsiusOf(bakeAt), 0)
  if (q50 === null || q90 === null) return null
  return {
    byMs: epochMs(Math.round(readyAtMs - q90 * 60_000)),
    likelyMs: epochMs(Math.round(readyAtMs - q50 * 60_000)),
    readyAtMs,
  }
}

function nextOf(
  { shop, nowMs }: HeatAsked,
  readings: readonly OvenRead[],
  running: Phase | null,
  past: readonly Phase[],
): NextHeat | null {
  const last = readings[readings.length - 1]
  if (shop.oven.bakeAt === null || last === undefined || nowMs - last.atMs > READING_AGE_MS_MAX) return null
  const wanted = celsiusOf(shop.oven.bakeAt)
  const now = last.milliCelsius / 1_000
  const isCold = wanted - now > COLD_MIN
  const readingsOfIt = running?.isHeating === true ? running.readings : [inMinutes(last)]
  const fit = isCold ? fitHeat(readingsOfIt, priorOf(shop, true, past)) : null
  const { q50 } = fit === null ? { q50: null } : whenReached(fit, wanted - COLD_MIN / 2, nowMs / 60_000)
  const waitUntilMs = q50 === null || q50 * 60_000 <= nowMs ? null : instant(q50)
  return { milliCelsius: last.milliCelsius, wanted: milli(wanted), waitUntilMs }
}

/** Each earlier heat-up of five readings and more: fitted on its first ones, told of its last third. */
function heldBackOf(shop: Shop, past: readonly Phase[]): HeldBack | null {
  let [heatUps, readings, celsius, minutes] = [0, 0, 0, 0]
  for (const [at, phase] of past.entries()) {
    if (!phase.isHeating || phase.readings.length < 5) continue
    const kept = Math.ceil((phase.readings.length * 2) / 3)
    // Only what came before it may teach of it.
    const fit = fitHeat(phase.readings.slice(0, kept), priorOf(shop, true, past.slice(0, at)))
    const last = phase.readings[phase.readings.length - 1]
    if (fit === null || last === undefined) continue
    heatUps += 1
    for (const held of phase.readings.slice(kept)) {
      readings += 1
      celsius += Math.abs(temperatureAt(fit, held.minute).mean - held.celsius)
    }
    const { q50 } = whenReached(fit, last.celsius, fit.lastMinute)
    minutes += Math.min(60, Math.abs((q50 ?? last.minute + 60) - last.minute))
  }
  if (heatUps === 0) return null
  return {
    heatUps,
    readings,
    milliCelsius: milli(celsius / readings),
    minutes: Math.round((10 * minutes) / heatUps) / 10,
  }
}

function spanOf(reached: Reached | null): SecondHeat['reached'] {
  if (reached === null || reached.q10 === null || reached.q50 === null || reached.q90 === null) return null
  return { earliestMs: instant(reached.q10), likelyMs: instant(reached.q50), latestMs: instant(reached.q90) }
}

function celsiusOf({ degrees, unit }: Temperature): number {
  return milliCelsius({ degrees, unit }) / 1_000
}

function milli(value: number): number {
  return Math.round(value * 1_000)
}

function instant(minute: number): EpochMs {
  return epochMs(Math.round(minute * 60_000))
}
