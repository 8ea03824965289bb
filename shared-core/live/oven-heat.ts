import type { EpochMs } from '../units.ts'

/**
 * The oven's heat: what readings say of it, and what is to be expected. Advice, outside the fold. Temperatures are
 * thousandths of a °C.
 */
export interface OvenHeat {
  /** Today's readings of the oven as a whole, oldest first. */
  readonly readings: readonly { readonly atMs: EpochMs; readonly milliCelsius: number }[]
  /**
   * What the answers rest on: readings of this heat-up, this oven's earlier ones, ovens of its kind, or nothing but the
   * times that the shop typed.
   */
  readonly basis: 'readings' | 'past' | 'kind'
  /** How it has been heating or cooling since it last turned; null: fewer than two readings since then. */
  readonly course: HeatCourse | null
  /** When the second menu's temperature is reached; null: no second menu today, or nobody said at what it bakes. */
  readonly second: SecondHeat | null
  /** When to turn it on so that it is ready at the typed time; null: nobody said at what it bakes. */
  readonly turnOn: { readonly byMs: EpochMs; readonly likelyMs: EpochMs; readonly readyAtMs: EpochMs } | null
  /** Whether the next load goes into an oven that is too cold; null: no reading young enough says so. */
  readonly next: NextHeat | null
  /** How far off earlier heat-ups would have been foretold from their first readings; null: too few to say. */
  readonly heldBack: HeldBack | null
}

export interface HeatCourse {
  readonly isHeating: boolean
  readonly tauMinutes: number
  readonly limitMilliCelsius: number
  /** Standard deviation of one reading. */
  readonly noiseMilliCelsius: number
  /** From the first reading of it on: mean, and the standard deviation of the mean. */
  readonly curve: readonly (readonly [atMs: EpochMs, mean: number, spread: number])[]
}

export interface SecondHeat {
  readonly milliCelsius: number
  /** From when the oven is turned up or down: when it is empty. */
  readonly fromMs: EpochMs
  /** With 10, 50 and 90 % chance by then; null: not under this setting. */
  readonly reached: { readonly earliestMs: EpochMs; readonly likelyMs: EpochMs; readonly latestMs: EpochMs } | null
  /** When the second menu is to bake, by the set-up and today's slip. */
  readonly wantedMs: EpochMs
}

export interface NextHeat {
  readonly milliCelsius: number
  readonly wanted: number
  /** Null: it is hot enough. */
  readonly waitUntilMs: EpochMs | null
}

export interface HeldBack {
  readonly heatUps: number
  readonly readings: number
  /** Mean distance of held-back readings from what was foretold, and of the time at which the last was reached. */
  readonly milliCelsius: number
  readonly minutes: number
}
