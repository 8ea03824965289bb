import type { OvenKind } from '../shop/shop.ts'
import type { HeatPrior } from './heat.ts'
import { fitHeat } from './heat.ts'
import type { Phase } from './phases.ts'

/** One thermometer in the oven's air, read by eye. Common practice, no source. */
export const READING_NOISE = 3

/**
 * Where nobody has read an oven yet. Common practice, no source: decks are ready in an hour or so, a rotating oven takes
 * longer, a hearth two to four hours; all tend to some 60 to 150 °C above what they bake at.
 */
const STARTING: { readonly [kind in OvenKind]: HeatPrior } = {
  shelves: { tau: 30, tauSpread: 0.5, limit: 340, limitSpread: 40, noise: READING_NOISE },
  rotating: { tau: 45, tauSpread: 0.5, limit: 340, limitSpread: 40, noise: READING_NOISE },
  hearth: { tau: 80, tauSpread: 0.6, limit: 420, limitSpread: 70, noise: READING_NOISE },
}

/** An empty oven that is off loses heat far more slowly than it takes it up. Common practice, no source. */
const COOLS_SLOWER = 4
const ROOM = 25

/** A shop's oven reaches what the shop bakes at, with this to spare; common practice, no source. */
const TO_SPARE = 60

/** Phases that are needed before the oven's own count half. */
const OWN_COUNT_HALF = 2

/**
 * What is held of an oven before this heat-up: its kind's, moved towards its own earlier heat-ups the more there are.
 * @param past earlier phases, of both directions
 * @param bakesAt the hottest that the shop bakes at, °C
 */
export function ovenPrior(kind: OvenKind, isHeating: boolean, past: readonly Phase[], bakesAt: number): HeatPrior {
  const ofKind = STARTING[kind]
  const heating = { ...ofKind, limit: Math.max(ofKind.limit, bakesAt + TO_SPARE) }
  const start = isHeating ? heating : coolingOf(ofKind)
  const fits = past
    .filter((phase) => phase.isHeating === isHeating && phase.readings.length >= 3)
    .flatMap(({ readings }) => fitHeat(readings, start)?.likeliest ?? [])
  if (fits.length === 0) return start
  const own = fits.length / (fits.length + OWN_COUNT_HALF)
  const tau = median(fits.map((fit) => Math.log(fit.tau)))
  const limit = median(fits.map((fit) => fit.limit))
  return {
    tau: Math.exp(own * tau + (1 - own) * Math.log(start.tau)),
    tauSpread: start.tauSpread * (1 - 0.7 * own),
    limit: own * limit + (1 - own) * start.limit,
    limitSpread: start.limitSpread * (1 - 0.7 * own),
    noise: start.noise,
  }
}

function coolingOf({ tau, tauSpread, noise }: HeatPrior): HeatPrior {
  return { tau: tau * COOLS_SLOWER, tauSpread, limit: ROOM, limitSpread: 15, noise }
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  const at = (sorted.length - 1) / 2
  return ((sorted[Math.floor(at)] ?? 0) + (sorted[Math.ceil(at)] ?? 0)) / 2
}
