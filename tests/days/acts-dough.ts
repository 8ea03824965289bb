import type { Act } from '../../shared-core/day/commands.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import type { Mix } from '../../shared-core/dough/mix.ts'
import { leftOf } from '../../shared-core/dough/mix-left.ts'
import type { Formula } from '../../shared-core/shop/formula.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Chance } from './chance.ts'
import { someOf } from './draws.ts'
import type { Doing, Scene, SmallAct } from './people.ts'

const ROOM = ['bench', 'desk'] as const
const DESK = ['desk'] as const
const ANYBODY = ['desk', 'bench', 'counter', 'wall'] as const
/** The dough room works from the afternoon on; small doughs are mixed in the morning too. */
const MIXING = ['opening', 'morning', 'afternoon', 'close', 'evening'] as const
const AN_HOUR_MS = 3_600_000

/** From what is wanted tomorrow to trays in the cooler, with what the room reads, counts and makes on the way. */
export const AT_DOUGH: readonly SmallAct[] = [
  { roles: ROOM, parts: [...MIXING], weight: 4, do: setWanted },
  { roles: ROOM, parts: [...MIXING], weight: 4, do: planMixes },
  { roles: ROOM, parts: [...MIXING], weight: 3, do: orderMixes },
  { roles: ROOM, parts: [...MIXING], weight: 22, do: nextOfMix },
  { roles: ROOM, parts: ['close', 'evening'], weight: 16, do: chill },
  { roles: ROOM, parts: [...MIXING], weight: 2, do: placeTrays },
  { roles: ROOM, parts: [...MIXING], weight: 3, do: makePreparation },
  { roles: ROOM, parts: [...MIXING], weight: 3, do: weighPieces },
  { roles: ROOM, parts: 'all-day', weight: 1, do: dropSomething },
  { roles: DESK, parts: 'all-day', weight: 2, do: countOrReceive },
  { roles: ANYBODY, parts: 'all-day', weight: 2, do: readPlace },
]

/** The date after the next midnight or the one after: people plan for tomorrow, whatever the zone. */
function someDate(nowMs: number, chance: Chance): string {
  return new Date(nowMs + chance.between(18, 60) * AN_HOUR_MS).toISOString().slice(0, 10)
}

function setWanted({ shop, nowMs, chance }: Scene): Doing {
  const lines = [...shop.doughs.values()].map(({ id }) => ({
    doughId: id,
    varietyId: null,
    pieces: 12 * chance.between(0, 12),
    ordered: chance.between(0, 13),
  }))
  return [{ type: 'setWanted', date: someDate(nowMs, chance), lines }]
}

function planMixes({ shop, nowMs, chance }: Scene): Doing {
  const mixes = Array.from({ length: chance.between(1, 3) }, () => {
    const formula = chance.oneOf([...shop.formulas.values()])
    const gives = doughsOf(shop, formula).map((doughId) => ({ doughId, pieces: 12 * chance.between(1, 5) }))
    const startAtMs = chance.permille(500) ? null : epochMs(Math.round(nowMs) + 600_000)
    return { formulaId: formula.id, flourMilligrams: chance.between(2, 12) * 1_000_000, startAtMs, gives }
  })
  return [{ type: 'planMixes', date: someDate(nowMs, chance), mixes }]
}

function orderMixes({ shown, chance }: Scene): Doing {
  const planned = [...shown.mixes.values()].filter(({ stage }) => stage === 'planned')
  const first = someOf(planned, chance)
  if (first === undefined) return []
  return [{ type: 'orderMixes', mixes: [{ mixId: first.id, startAtMs: null }] }]
}

/** Whatever comes next of a mix: weighed, read, mixed, rested, folded, shaped, ended. */
function nextOfMix(scene: Scene): Doing {
  const { shown, chance } = scene
  const mix = someOf(
    [...shown.mixes.values()].filter(({ stage }) => stage !== 'ended'),
    chance,
  )
  if (mix === undefined) return []
  const { id, stage, formula } = mix
  const to = (next: 'mixing' | 'rest' | 'bulk' | 'bench'): Act => ({
    type: 'moveMix',
    mixId: id,
    from: stage,
    to: next,
  })
  switch (stage) {
    case 'planned':
      return [...weighed(mix), ...read(mix, chance), to('mixing')]
    case 'mixing':
      return [to('rest'), { type: 'readMix', mixId: id, temp: 'dough', read: fahrenheit(chance.between(72, 84)) }]
    case 'rest':
      return [to(formula.bulk === null ? 'bench' : 'bulk')]
    case 'bulk':
      return chance.permille(500) ? [{ type: 'foldMix', mixId: id, fold: mix.folds + 1 }] : [to('bench')]
    default:
      return shapeOf(mix, scene)
  }
}

function weighed({ id, lines }: Mix): readonly Act[] {
  return lines.slice(0, 3).map((line) => ({
    type: 'weighLine',
    mixId: id,
    line: line.key,
    done: line.weighedAtMs === null,
  }))
}

function read({ id }: Mix, chance: Chance): readonly Act[] {
  if (chance.permille(500)) return []
  const temp = chance.oneOf(['room', 'flour', 'tap'] as const)
  return [{ type: 'readMix', mixId: id, temp, read: fahrenheit(chance.between(60, 80)) }]
}

/** Trays of it, until it is all; or nobody thinks of saying so. */
function shapeOf(mix: Mix, { shop, chance }: Scene): Doing {
  const doughId = someOf(doughsOf(shop, mix.formula), chance)
  if (doughId === undefined || chance.permille(80))
    return [{ type: 'endMix', mixId: mix.id, left: chance.oneOf(['lost', 'spoilt']) }]
  const isLast = leftOf(mix) < 3_000_000 || chance.permille(100)
  const pieces = 12 * chance.between(1, 4)
  const place = chance.permille(500) ? {} : { place: chance.oneOf(['Rack 1', 'Rack 2, level 3']) }
  return [{ type: 'shape', doughId, varietyId: null, pieces, stage: 'proof', mixId: mix.id, isLast, ...place }]
}

function chill({ shown, chance }: Scene): Doing {
  const batch = someOf(proofing(shown), chance)
  if (batch === undefined) return []
  return [{ type: 'moveBatch', batchId: batch.id, from: 'proof', to: 'chill', pieces: batch.pieces }]
}

function placeTrays({ shown, chance }: Scene): Doing {
  const batch = someOf(proofing(shown), chance)
  if (batch === undefined) return []
  return [{ type: 'placeBatch', batchId: batch.id, place: chance.oneOf(['Rack 1', 'Rack 3', null]) }]
}

function makePreparation({ shop, nowMs, chance }: Scene): Doing {
  const preparationId = someOf(shop.preparations.keys(), chance)
  if (preparationId === undefined) return []
  const forDate = chance.permille(200) ? null : someDate(nowMs, chance)
  return [{ type: 'makePreparation', preparationId, milligrams: chance.between(1, 6) * 1_000_000, forDate }]
}

function weighPieces({ shown, shop, chance }: Scene): Doing {
  const mix = someOf(shown.mixes.values(), chance)
  const doughId = someOf(mix === undefined ? shop.doughs.keys() : doughsOf(shop, mix.formula), chance)
  if (doughId === undefined) return []
  const weights = [0, 1, 2].map(() => ({ thousandths: chance.between(112_000, 128_000), unit: 'g' as const }))
  return [{ type: 'weighPieces', doughId, mixId: mix?.id ?? null, weights }]
}

function dropSomething({ shown, chance }: Scene): Doing {
  const mix = someOf(shown.mixes.values(), chance)
  const build = someOf(shown.builds.keys(), chance)
  if (build !== undefined && chance.permille(500)) return [{ type: 'dropBuild', buildId: build }]
  if (mix === undefined) return []
  return mix.stage === 'planned'
    ? [{ type: 'dropMix', mixId: mix.id }, 'take-back']
    : [{ type: 'endMix', mixId: mix.id, left: 'spoilt' }]
}

function countOrReceive({ shop, chance }: Scene): Doing {
  const ingredientId = someOf(shop.ingredients.keys(), chance)
  if (ingredientId === undefined) return []
  const weight = { thousandths: chance.between(1, 50) * 1_000, unit: 'lb' as const }
  if (chance.permille(500)) return [{ type: 'receiveIngredient', ingredientId, weight }]
  return [{ type: 'countIngredients', counts: [{ ingredientId, weight: chance.permille(100) ? null : weight }] }]
}

function readPlace({ chance }: Scene): Doing {
  const place = chance.oneOf(['room', 'cooler', 'flour', 'tap'] as const)
  return [
    {
      type: 'readPlace',
      place,
      read: fahrenheit(place === 'cooler' ? chance.between(34, 44) : chance.between(60, 84)),
    },
  ]
}

function fahrenheit(degrees: number) {
  return { thousandths: degrees * 1_000, unit: 'F' } as const
}

function doughsOf({ doughs }: Shop, { id }: Formula) {
  return [...doughs.values()].filter(({ formulaId, retired }) => formulaId === id && !retired).map((one) => one.id)
}

function proofing({ batches }: State): Batch[] {
  return [...batches.values()].filter(({ stage }) => stage === 'proof')
}
