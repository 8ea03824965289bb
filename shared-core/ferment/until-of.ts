import { floatMark } from '../day/marks.ts'
import type { Batch, State, Until } from '../day/state.ts'
import type { PlaceReadings, Teaching } from '../dough/mix.ts'
import { assumedAt, readAt } from '../dough/places.ts'
import type { DoughRoom } from '../shop/formula.ts'
import type { DwellWindow, Shop } from '../shop/shop.ts'
import { milliCelsiusOf } from '../shop/temperature.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { clampMs, epochMs, later, spanMs } from '../units.ts'
import type { Course } from './course.ts'
import { airOf, courseTo, fermentedAtEnd, whenCooled, whenFermented } from './course.ts'

type Read = Pick<State, 'shop' | 'readings' | 'teachings' | 'marks'>

/**
 * When pieces may, should and must leave where they stand, by what they have gone through so far and what is read now.
 *
 * Proof: when they have fermented as long, at the temperature at which the set-up's window holds, as the window asks for,
 * times the pace that tests have taught. A warm room is ready sooner, a cold one later. Pieces are taken to be as warm as
 * the room. Where somebody found them not ready, no sooner than that person looks again.
 *
 * Chill: no sooner than the window and before they are cold (within 1 °C of the cooler, by first-order cooling); no later
 * than the window and before they are over-proofed, by a tenth more than the proof allows. The proof window speaks of
 * pieces that then cool as the set-up says, so what these ferment on while they cool is part of it: only what comes in too
 * late, or a warm cooler, ends a chill sooner. The window counts elapsed time, which a clock change does not touch.
 *
 * Everywhere else, and in a shop that has not said how its dough room is, what the set-up said when they came there.
 * @returns null without a window
 */
export function untilOf(state: Read, batch: Batch): Until | null {
  if (batch.until === null || (batch.stage !== 'proof' && batch.stage !== 'chill')) return batch.until
  const { shop } = state
  if (shop === null || shop.doughRoom === null) return batch.until
  const from = fromOf(state, shop, batch)
  const known = KNOWN.get(batch)
  if (known !== undefined && isSame(known.from, from, batch)) return known.until
  const clock = { shop, doughRoom: shop.doughRoom, batch, from }
  const until = batch.stage === 'proof' ? proofUntil(clock, batch.until) : chillUntil(clock, batch.until)
  KNOWN.set(batch, { from, until })
  return until
}

/** How far pieces have fermented at an instant, in ms at the temperature at which the set-up's proof window holds. */
export function fermentedBy(state: Read, batch: Batch, atMs: EpochMs): number {
  const before = batch.fermentedMs ?? 0
  const { shop } = state
  if (shop === null || shop.doughRoom === null || (batch.stage !== 'proof' && batch.stage !== 'chill')) return before
  const course = courseOf({ shop, doughRoom: shop.doughRoom, batch, from: fromOf(state, shop, batch) })
  return Math.round(fermentedAtEnd(courseTo(course, atMs)))
}

/**
 * How far they have proofed, as the proof window counts it: what they ferment on in a chill as the set-up has it is part of
 * that window and left out. What a float test is held against.
 */
export function proofedBy(state: Read, batch: Batch, atMs: EpochMs): number {
  const fermentedMs = fermentedBy(state, batch, atMs)
  const { shop } = state
  if (shop === null || shop.doughRoom === null || batch.stage !== 'chill') return fermentedMs
  const clock = { shop, doughRoom: shop.doughRoom, batch, from: fromOf(state, shop, batch) }
  return Math.max(0, Math.round(fermentedMs - usualInChillMs(clock, Math.max(0, atMs - batch.sinceMs))))
}

/** What a batch's clock is read off. All of it is replaced whole, never changed. */
interface From {
  readonly shop: Shop
  readonly room: PlaceReadings | undefined
  readonly cooler: PlaceReadings | undefined
  readonly teaching: Teaching | undefined
  /** When somebody looks again at pieces that were found not ready; null: nobody does. */
  readonly lookAtMs: EpochMs | null
}

/** A screen asks for the same clocks again and again; each is reckoned once for what it is read off. */
const KNOWN = new WeakMap<Batch, { readonly from: From; readonly until: Until }>()

interface Clock {
  readonly shop: Shop
  readonly doughRoom: DoughRoom
  readonly batch: Batch
  readonly from: From
}

/** Dough that has not come so far by then does not ferment: that is when somebody should look. */
const PROOF_LOOKED_AT_MS = spanMs(72, 'h')
const OVER_PROOFED = 1.1
/** Pieces are cold within so much of their cooler. */
const COLD_WITHIN_CELSIUS = 1

function proofUntil(clock: Clock, window: Until): Until {
  const { sinceMs } = clock.batch
  const needed = (atMs: EpochMs) => ((atMs - sinceMs) * paceOf(clock.from)) / 1_000
  const points = courseTo(courseOf(clock), later(sinceMs, PROOF_LOOKED_AT_MS), needed(window.latestAtMs))
  const when = (atMs: EpochMs) => whenFermented(points, needed(atMs)) ?? later(sinceMs, PROOF_LOOKED_AT_MS)
  const notBefore = (atMs: EpochMs) => epochMs(Math.max(when(atMs), clock.from.lookAtMs ?? 0))
  return {
    earliestAtMs: notBefore(window.earliestAtMs),
    targetAtMs: notBefore(window.targetAtMs),
    latestAtMs: notBefore(window.latestAtMs),
  }
}

function chillUntil(clock: Clock, window: Until): Until {
  const course = courseOf(clock)
  const points = courseTo(course, window.latestAtMs)
  const overAtMs = whenFermented(points, overProofedMs(clock, window)) ?? window.latestAtMs
  const coldAtMs = whenCooled(course, points, COLD_WITHIN_CELSIUS) ?? window.latestAtMs
  const latestAtMs = epochMs(Math.min(window.latestAtMs, overAtMs))
  const earliestAtMs = epochMs(Math.min(Math.max(window.earliestAtMs, coldAtMs), latestAtMs))
  return { earliestAtMs, targetAtMs: clampMs(window.targetAtMs, earliestAtMs, latestAtMs), latestAtMs }
}

/**
 * A tenth more than the latest of the proof, and what pieces that went in by then still ferment in a cooler as the set-up
 * has it. The tenth, because a tray that came in some minutes late is not spoilt (common practice, no source).
 */
function overProofedMs(clock: Clock, window: Until): number {
  const proof = proofWindowOf(clock.shop, clock.batch)
  if (proof === null) return Number.POSITIVE_INFINITY
  return (
    (OVER_PROOFED * proof.latestMs * paceOf(clock.from)) / 1_000 +
    usualOfWindowMs(clock, window.latestAtMs - clock.batch.sinceMs)
  )
}

/** What pieces ferment on in so long a chill when all is as the set-up has it. */
function usualInChillMs({ shop, doughRoom }: Clock, forMs: number): number {
  const air = (assumedAt(shop, 'cooler') ?? 0) / 1_000
  const provesAt = milliCelsiusOf(doughRoom.provesAt) / 1_000
  const cooling = { from: provesAt, timeConstantMs: doughRoom.coolsIn }
  const usual = { sinceMs: epochMs(0), airAt: () => air, cooling, fermentedMs: 0, provesAt }
  return fermentedAtEnd(courseTo(usual, epochMs(forMs)))
}

/** The same for a whole chill window, of which a shop has a few: by its length. */
const USUAL = new WeakMap<Shop, Map<number, number>>()

function usualOfWindowMs(clock: Clock, forMs: number): number {
  const known = USUAL.get(clock.shop) ?? new Map<number, number>()
  USUAL.set(clock.shop, known)
  const usual = known.get(forMs) ?? usualInChillMs(clock, forMs)
  known.set(forMs, usual)
  return usual
}

function proofWindowOf(shop: Shop, { doughId, varietyId }: Batch): DwellWindow | null {
  const isProofed = shop.doughs.get(doughId)?.route.includes('proof') === true
  return isProofed ? windowOf(shop, 'proof', doughId, varietyId) : null
}

function courseOf({ shop, doughRoom, batch, from }: Clock): Course {
  const provesAt = milliCelsiusOf(doughRoom.provesAt) / 1_000
  const { sinceMs, fermentedMs = 0 } = batch
  const roomAt = airOf(shop, 'room', from.room, provesAt)
  if (batch.stage === 'proof') return { sinceMs, airAt: roomAt, cooling: null, fermentedMs, provesAt }
  const airAt = airOf(shop, 'cooler', from.cooler, provesAt)
  const cooling = { from: roomAt(sinceMs), timeConstantMs: doughRoom.coolsIn }
  return { sinceMs, airAt, cooling, fermentedMs, provesAt }
}

function paceOf({ teaching }: From): number {
  return teaching?.pace ?? 1_000
}

function fromOf({ readings, teachings, marks }: Read, shop: Shop, batch: Batch): From {
  const [room, cooler, teaching] = [readings.get('room'), readings.get('cooler'), teachings.get(batch.doughId)]
  return { shop, room, cooler, teaching, lookAtMs: lookAtMs(marks, batch) }
}

/** What was shaped since was not looked at. */
function lookAtMs(marks: Read['marks'], { stage, doughId, sinceMs }: Batch): EpochMs | null {
  const mark = marks.get(floatMark(doughId))
  if (stage !== 'proof' || mark?.kind !== 'float' || mark.atMs < sinceMs) return null
  return mark.lookAgainAtMs
}

/** Whether a batch's clock reads the same: a proof knows no cooler, a chill of the room only how warm pieces came from it. */
function isSame(one: From, other: From, { stage, sinceMs }: Batch): boolean {
  if (one.shop !== other.shop || one.teaching !== other.teaching) return false
  if (stage === 'proof') return one.room === other.room && one.lookAtMs === other.lookAtMs
  const cameFrom = ({ room }: From) => readAt(room, 'room', sinceMs)
  return one.cooler === other.cooler && (one.room === other.room || cameFrom(one) === cameFrom(other))
}
