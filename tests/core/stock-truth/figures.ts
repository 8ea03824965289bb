import type { Look, Played } from './shop-days.ts'

/** How well numbers agree with the truth, over many looks at rods. */
export interface Agreement {
  readonly looks: number
  /** Mean and nine-in-ten of the distance, in pieces. */
  readonly off: number
  readonly offNine: number
  /** Mean of likely − truth, and its standard error; days are the draws, as looks of one day go together. */
  readonly bias: number
  readonly biasError: number
  /** Share of looks in which the truth lay within what the rod said. */
  readonly covered: number
  readonly within3: number
}

export function agreementOf(
  days: readonly (readonly Look[])[],
  numberOf: (look: Look) => number = (look) => look.likely,
): Agreement {
  const looks = days.flat()
  const offs = looks.map((look) => Math.abs(numberOf(look) - look.truth)).sort((one, other) => one - other)
  const biases = days.filter((day) => day.length > 0).map((day) => mean(day.map((look) => numberOf(look) - look.truth)))
  const bias = mean(biases)
  const spread = Math.sqrt(mean(biases.map((one) => (one - bias) ** 2)))
  return {
    looks: looks.length,
    off: mean(offs),
    offNine: offs[Math.floor(0.9 * offs.length)] ?? 0,
    bias,
    biasError: spread / Math.sqrt(Math.max(1, biases.length - 1)),
    covered: mean(looks.map((look) => (Math.abs(look.likely - look.truth) <= look.within ? 1 : 0))),
    within3: mean(looks.map((look) => (Math.abs(numberOf(look) - look.truth) <= 3 ? 1 : 0))),
  }
}

/** The looks of one kind, day by day. */
export function byDay(
  played: readonly Played[],
  kind: Look['kind'],
  isDay: (day: number) => boolean,
): readonly (readonly Look[])[] {
  return played.flatMap(({ looks, sweeps }) =>
    sweeps.flatMap((_sweeps, day) =>
      isDay(day) ? [looks.filter((look) => look.kind === kind && look.day === day)] : [],
    ),
  )
}

export function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
}
