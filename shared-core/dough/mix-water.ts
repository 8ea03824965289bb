import type { State } from '../day/state.ts'
import { DEFAULT_MIXER } from '../shop/default-rules.ts'
import type { Degrees, DoughRoom } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { milliCelsiusOf, milliDifferenceOf } from '../shop/temperature.ts'
import { milligrams } from '../shop/weight.ts'
import type { EpochMs } from '../units.ts'
import { withFriction } from './friction.ts'
import type { Friction, Mix, Place, SheetLine, WaterPlan } from './mix.ts'
import { placeNow, readAt } from './places.ts'
import { frictionDegrees, mixedDegrees, planWater } from './water.ts'

type Read = Pick<State, 'readings' | 'frictions' | 'recordedAtMs'>

/**
 * The water of a mix by what is known: temperatures read with the mix, else readings of their places, else the set-up's;
 * a pre-ferment that nobody read stands in the room. The friction factor is what was learnt, else the formula's.
 * @returns null where no water is in the mix, or the shop has not said how its dough room is
 */
export function waterFor(state: Read, shop: Shop, mix: Mix): WaterPlan | null {
  const { doughRoom } = shop
  const waterMilligrams = waterOf(shop, mix)
  if (doughRoom === null || waterMilligrams === 0) return null
  const atMs = mix.mixedAtMs ?? state.recordedAtMs
  return planWater({
    wishedMilliCelsius: milliCelsiusOf(mix.formula.doughAt),
    tempsMilliCelsius: tempsOf(state, shop, { mix, doughRoom, atMs }),
    frictionMilliCelsius: frictionOf(state, shop, mix),
    tapMilliCelsius: tapOf(state, shop, { mix, doughRoom, atMs }),
    hotTapMilliCelsius: milliCelsiusOf(doughRoom.hotTapAt),
    hasIce: doughRoom.hasIce,
    waterMilligrams,
    stepMilligrams: milligrams(doughRoom.scaleStep),
  })
}

/** Whose friction it is: a formula's in one mixer, of three temperatures or, with a pre-ferment, of four. */
export function frictionKey(shop: Shop, mix: Mix): string {
  return `${mix.formula.id} ${factorsOf(shop, mix)} ${mixerOf(shop, mix)}`
}

/**
 * What the dough's temperature teaches of the mixer. The water is what was read, else what was planned, its ice counted.
 * A second reading of the same mix puts the first one right.
 * @param mix with the temperature just read
 * Only from what somebody read: flour and room with the mix or at their places, water read or weighed out as planned.
 * What is assumed teaches nothing.
 * @returns null where the dough was not read, or something that it follows from
 */
export function frictionTaught(state: Read, shop: Shop, mix: Mix, atMs: EpochMs): Friction | null {
  const { doughRoom } = shop
  const { dough } = mix.temps
  const plan = mix.water ?? waterFor(state, shop, mix)
  if (doughRoom === null || dough === null || plan === null) return null
  const at = { mix, doughRoom, atMs: mix.mixedAtMs ?? atMs }
  if (!isAllRead(state, shop, at)) return null
  const water = waterThatWentIn(plan, mix.temps.water, tapOf(state, shop, at))
  const temps = tempsOf(state, shop, at)
  const milliCelsius = Math.round(frictionDegrees({ dough: milliCelsiusOf(dough), water, temps }))
  const id = frictionKey(shop, mix)
  const before = state.frictions.get(id)
  const prior = milliDifferenceOf(mix.formula.friction)
  const whose = { id, formulaId: mix.formula.id, mixer: mixerOf(shop, mix), factors: factorsOf(shop, mix), prior }
  return withFriction(before, whose, { atMs, mixId: mix.id, milliCelsius })
}

interface At {
  readonly mix: Mix
  readonly doughRoom: DoughRoom
  readonly atMs: EpochMs
}

/** Whether flour, room and water are known and not the set-up's; a pre-ferment is as warm as the room. */
function isAllRead(state: Read, shop: Shop, { mix, atMs }: At): boolean {
  const isRead = (place: 'flour' | 'room') =>
    mix.temps[place] !== null || readAt(state.readings.get(place), place, atMs) !== null
  const isWeighed = mix.lines.some((line) => isStartWater(shop, line) && line.weighedAtMs !== null)
  return isRead('flour') && isRead('room') && (mix.temps.water !== null || isWeighed)
}

/** Flour, room and, where there is one, pre-ferment. */
function tempsOf(state: Read, shop: Shop, { mix, doughRoom, atMs }: At): readonly number[] {
  const known = (read: Degrees | null, place: Place, assumed: Degrees) =>
    read === null ? (placeNow(state, shop, place, atMs) ?? milliCelsiusOf(assumed)) : milliCelsiusOf(read)
  const room = known(mix.temps.room, 'room', doughRoom.roomAt)
  const flour = known(mix.temps.flour, 'flour', doughRoom.flourAt)
  if (factorsOf(shop, mix) === 3) return [flour, room]
  const { preferment } = mix.temps
  return [flour, room, preferment === null ? room : milliCelsiusOf(preferment)]
}

function tapOf(state: Read, shop: Shop, { mix, doughRoom, atMs }: At): number {
  const { tap } = mix.temps
  return tap !== null ? milliCelsiusOf(tap) : (placeNow(state, shop, 'tap', atMs) ?? milliCelsiusOf(doughRoom.tapAt))
}

/** With more ice than melts before the flour goes in, a thermometer shows freezing: then what the ice takes is reckoned. */
function waterThatWentIn(plan: WaterPlan, read: Degrees | null, tap: number): number {
  const ice = plan.iceMilligrams
  if (ice > 0) {
    const total = ice + plan.waterMilligrams
    const mixed = mixedDegrees({ total, ice, tap: tap / 1_000 }) * 1_000
    return read === null || mixed < 0 ? mixed : milliCelsiusOf(read)
  }
  return read === null ? plan.milliCelsius : milliCelsiusOf(read)
}

function frictionOf(state: Read, shop: Shop, mix: Mix): number {
  return state.frictions.get(frictionKey(shop, mix))?.milliCelsius ?? milliDifferenceOf(mix.formula.friction)
}

function factorsOf(shop: Shop, { lines }: Mix): 3 | 4 {
  const kinds = lines.map(({ preparationId }) =>
    preparationId === null ? null : shop.preparations.get(preparationId)?.kind,
  )
  return kinds.includes('preferment') ? 4 : 3
}

function mixerOf(shop: Shop, { mixer }: Mix): string {
  return mixer === '' ? (shop.mixer?.name ?? DEFAULT_MIXER.name) : mixer
}

/** All water that goes in at the start, in milligrams. */
function waterOf(shop: Shop, { lines }: Mix): number {
  return lines.reduce((sum, line) => (isStartWater(shop, line) ? sum + line.milligrams : sum), 0)
}

function isStartWater(shop: Shop, { at, ingredientId }: SheetLine): boolean {
  return at === 'start' && ingredientId !== null && shop.ingredients.get(ingredientId)?.kind === 'water'
}
