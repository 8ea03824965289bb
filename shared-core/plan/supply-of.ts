import { partBy } from '../demand/exposure.ts'
import { varietyId } from '../ids.ts'
import type { PlanSupply } from '../live/plan.ts'
import type { BakeLoad, BakeOff, VarietyGiven } from './bake-off/bake-off.ts'
import type { Expected } from './bake-off/expected.ts'
import { coolMinOf } from './bake-off/load-parts.ts'
import type { Problem } from './bake-off-of.ts'
import { oneDecimal } from './figures.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'

const EVERY_MIN = 30
/** Standard normal at 90 %. */
const Z90 = 1.2816

/** By variety: what there will be, and what will be asked for, from now (or from the opening) to the close. */
export function supplyOf(
  asked: PlanAsked,
  { given }: Problem,
  loads: readonly BakeLoad[],
  expected: Expected,
): readonly PlanSupply[] {
  return given.varieties.map((variety) => {
    const { lost = 0, left = 0 } = expected.varieties.get(variety.name) ?? {}
    return {
      varietyId: varietyId(variety.name),
      forSale: variety.onShelf,
      ready: readyOf(given, variety, loads).map(([minute, pieces]) => [instantOf(asked, minute), pieces] as const),
      asked: askedBy(given, variety).map(([minute, ...pieces]) => [instantOf(asked, minute), ...pieces] as const),
      lost: oneDecimal(lost),
      left: oneDecimal(left),
    }
  })
}

/** Pieces of a variety that become ready, summed up, with what is running and set. @returns `[minute, so far]` */
export function readyOf(given: BakeOff, variety: VarietyGiven, loads: readonly BakeLoad[]): [number, number][] {
  const steps = [...(given.running ?? []), ...(given.pinned ?? []), ...loads].flatMap(({ out, lines }) =>
    lines.flatMap(([name, pieces]) =>
      name === variety.name ? [[out + coolMinOf(given, variety), pieces] as const] : [],
    ),
  )
  let sum = 0
  return steps
    .sort(([one], [other]) => one - other)
    .map(([minute, pieces]) => {
      sum += pieces
      return [minute, sum]
    })
}

function askedBy(given: BakeOff, { demand }: VarietyGiven): [number, number, number, number][] {
  const from = Math.max(given.open, given.now ?? given.open)
  const came = partBy(demand.profile, from)
  const rows: [number, number, number, number][] = []
  for (let minute = from; ; minute = Math.min(given.close, minute + EVERY_MIN)) {
    const mean = demand.mean * Math.max(0, partBy(demand.profile, minute) - came)
    const [q10, q90] = [quantileNear(mean, demand.dispersion, -Z90), quantileNear(mean, demand.dispersion, Z90)]
    rows.push([minute, Math.round(q10), oneDecimal(mean), Math.round(q90)])
    if (minute >= given.close) return rows
  }
}

/**
 * A quantile of pieces with that mean and dispersion, near enough to be drawn: as of a gamma of the same mean and variance.
 * Source: Wilson & Hilferty, The Distribution of Chi-Square, PNAS 17 (1931).
 * @param z standard normal at the chance
 */
export function quantileNear(mean: number, dispersion: number, z: number): number {
  if (mean <= 0) return 0
  const shape = 1 / (1 / mean + 1 / dispersion)
  return mean * Math.max(0, 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape))) ** 3
}
