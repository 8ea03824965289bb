import type { WaterPlan } from './mix.ts'

/**
 * The water that brings a dough to the temperature wished. The rule adds up what warms it and takes the water as what is
 * missing to as many times the wish:
 *
 *   water = 3 · wished − (flour + room + friction)
 *   water = 4 · wished − (flour + room + pre-ferment + friction)
 *
 * The friction factor is defined in these sums: of three it warms the dough by a third of itself, of four by a quarter, so
 * one learnt with three is no use with four. The same in °C and °F, where a friction is a difference (24 °F is 13.3 °C).
 *
 * Source: pmq.com, "In Lehmann's Terms", spring 2003 (three); thefreshloaf.com/node/57180 (four).
 * @param temps flour, room and, where there is one, the pre-ferment
 * @example waterDegrees({ wished: 80, temps: [65, 75], friction: 35 }) // 65
 */
export function waterDegrees({ wished, temps, friction }: Warmed & { readonly wished: number }): number {
  return (temps.length + 1) * wished - sum(temps) - friction
}

/** What the dough comes to with a water. @example doughDegrees({ water: 65, temps: [65, 75], friction: 35 }) // 80 */
export function doughDegrees({ water, temps, friction }: Warmed & { readonly water: number }): number {
  return (sum(temps) + friction + water) / (temps.length + 1)
}

/** The factor that a trial shows. @example frictionDegrees({ dough: 81, water: 64, temps: [73, 70] }) // 36 */
export function frictionDegrees({ dough, water, temps }: Trial): number {
  return (temps.length + 1) * dough - sum(temps) - water
}

export interface Warmed {
  readonly temps: readonly number[]
  readonly friction: number
}

export interface Trial {
  readonly dough: number
  readonly water: number
  readonly temps: readonly number[]
}

/**
 * What melting takes, as so many degrees of as much water: L/c. 144 BTU/lb are 80 °C, by which the trade's rule with its
 * 112 goes (144 − 32) and published tables too; 334 kJ/kg over 4.186 kJ/(kg·K) are 79.79 °C, 0.3 % more ice.
 *
 * Source: from memory, W. Gisslen, Professional Baking.
 */
export const MELTING_CELSIUS = 80
/** Ice warms at half the heat of water (2.1 kJ/(kg·K)), from memory. */
const ICE_PER_WATER = 0.5

/**
 * How much of the water is put in as ice, in its place: the total stays. What the tap's part gives up, the ice takes.
 *
 *   ice = total · (tap − wanted) / (tap + L/c + 0.5 · (0 − ice at))          in °C
 *
 * In °F with L/c of 144: total · (tap − wanted) / (tap + 112). It holds for a wanted temperature below freezing too, where
 * some of the ice melts only in the dough.
 * @returns between 0 (the tap is cold enough) and the total; more than all would be needed: the total
 * @example iceOf({ total: 40, tap: 20, wanted: 10 }) // 4
 */
export function iceOf({ total, tap, wanted, iceAt = 0, melting = MELTING_CELSIUS }: Icing): number {
  if (wanted >= tap) return 0
  return Math.min(total, (total * (tap - wanted)) / (tap + melting - ICE_PER_WATER * iceAt))
}

export interface Icing {
  readonly total: number
  /** °C. */
  readonly tap: number
  readonly wanted: number
  /** °C, at most 0; left out: about to melt. */
  readonly iceAt?: number
  /** L/c in °C. */
  readonly melting?: number
}

/** The one temperature that acts like tap water with ice in it. @example mixedDegrees({ total: 40, ice: 4, tap: 20 }) // 10 */
export function mixedDegrees({ total, ice, tap }: { readonly [part in 'total' | 'ice' | 'tap']: number }): number {
  return total === 0 ? tap : ((total - ice) * tap - ice * MELTING_CELSIUS) / total
}

/** Warmer water than this yeast in the flour does not bear: 49 °C, 120 °F (common practice, no source). */
export const YEAST_BEARS_MILLI_CELSIUS = 49_000

export interface WaterAsked {
  readonly wishedMilliCelsius: number
  /** Flour, room and, where there is one, pre-ferment. */
  readonly tempsMilliCelsius: readonly number[]
  /** A difference. */
  readonly frictionMilliCelsius: number
  readonly tapMilliCelsius: number
  readonly hotTapMilliCelsius: number
  readonly hasIce: boolean
  /** All water of the mix sheet. */
  readonly waterMilligrams: number
  /** What the scale shows at the finest: ice is weighed out. */
  readonly stepMilligrams: number
}

/** The water of a mix: how warm, how much of it as ice, and what the dough comes to where no water reaches it. */
export function planWater(asked: WaterAsked): WaterPlan {
  const warmed = { temps: asked.tempsMilliCelsius, friction: asked.frictionMilliCelsius }
  const wished = asked.wishedMilliCelsius
  const water = waterDegrees({ ...warmed, wished })
  const most = Math.max(asked.tapMilliCelsius, Math.min(asked.hotTapMilliCelsius, YEAST_BEARS_MILLI_CELSIUS))
  const least = asked.hasIce ? -MELTING_CELSIUS * 1_000 : asked.tapMilliCelsius
  const used = Math.min(Math.max(water, least), most)
  const missed = {
    milliCelsius: Math.round(used),
    doughMilliCelsius: Math.round(doughDegrees({ ...warmed, water: used })),
  }
  if (water > most) return { ...missed, ...allLiquid(asked), reach: 'tooWarm' }
  if (water >= asked.tapMilliCelsius) {
    const reach = water > asked.tapMilliCelsius ? 'needsWarm' : 'reached'
    return { ...missed, ...allLiquid(asked), doughMilliCelsius: wished, reach }
  }
  if (!asked.hasIce) return { ...missed, ...allLiquid(asked), reach: 'tooCold' }
  const iced = { ...icedWater(asked, used), milliCelsius: Math.max(0, missed.milliCelsius) }
  return water < least
    ? { ...iced, doughMilliCelsius: missed.doughMilliCelsius, reach: 'tooCold' }
    : { ...iced, doughMilliCelsius: wished, reach: 'reached' }
}

function allLiquid({ waterMilligrams }: WaterAsked): Pick<WaterPlan, 'iceMilligrams' | 'waterMilligrams'> {
  return { iceMilligrams: 0, waterMilligrams }
}

/** Rounded to the scale's step, so that it can be weighed; the total stays. */
function icedWater(
  { waterMilligrams: total, tapMilliCelsius, stepMilligrams }: WaterAsked,
  wantedMilliCelsius: number,
): Pick<WaterPlan, 'iceMilligrams' | 'waterMilligrams'> {
  const ice = iceOf({ total, tap: tapMilliCelsius / 1_000, wanted: wantedMilliCelsius / 1_000 })
  const step = Math.max(1, stepMilligrams)
  const iceMilligrams = Math.min(total, Math.round(ice / step) * step)
  return { iceMilligrams, waterMilligrams: total - iceMilligrams }
}

function sum(values: readonly number[]): number {
  return values.reduce((all, one) => all + one, 0)
}
