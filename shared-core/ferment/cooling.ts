import { exponential, logarithm } from './exponential.ts'

/**
 * A piece follows the air around it by Newton's law, with the time constant that is measured (`DoughRoom.coolsIn`):
 *
 *   T(t) = T_air + (T_0 − T_air) · e^(−t/τ)          time to reach T = τ · ln((T_0 − T_air)/(T − T_air))
 *
 * Strictly for pieces within which heat moves much faster than it leaves them (Biot number below 0.1). A bagel has some
 * 0.4: a fitted first-order model then, whose τ is read off the shop's own trays. Bare in moving air 20 to 40 min, covered
 * on a full rack some hours.
 *
 * Source: from memory, Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5; heat of bread crumb in Rask,
 * J. Food Eng. 9 (1989) 167.
 */
export interface Cooling {
  /** °C, or °F throughout. */
  readonly from: number
  readonly air: number
  /** τ, in the unit of the times. */
  readonly timeConstant: number
}

/** The temperature so long after. @example cooledTo({ from: 24, air: 3, timeConstant: 60 }, 60) // 10.73 */
export function cooledTo({ from, air, timeConstant }: Cooling, after: number): number {
  return air + (from - air) * exponential(-after / timeConstant)
}

/**
 * How long until a temperature is reached, in the unit of the time constant.
 * @returns null: never, as the air is no colder than that (no warmer, for a piece that warms)
 * @example timeToReach({ from: 24, air: 3, timeConstant: 60 }, 5) // 141.08
 */
export function timeToReach({ from, air, timeConstant }: Cooling, wanted: number): number | null {
  if (from > air ? wanted >= from : wanted <= from) return 0
  const share = (from - air) / (wanted - air)
  return share > 0 && wanted !== air ? timeConstant * logarithm(share) : null
}
