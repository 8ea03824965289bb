import { CARE_KINDS } from '../../shared-core/day/said.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import type { BatchStage } from '../../shared-core/shop/shop.ts'
import { someLines, someOf } from './draws.ts'
import type { Scene, SmallAct } from './people.ts'

const LINE = ['bench', 'wall', 'desk'] as const
const BENCH = ['bench', 'desk'] as const
const BAKING = ['first-loads', 'morning', 'changeover'] as const

/** The way of a load: pulled, boiled, boarded, loaded, flipped, taken out; often only the last three are tapped. */
export const AT_LINE: readonly SmallAct[] = [
  { roles: LINE, parts: BAKING, weight: 6, do: pull },
  { roles: LINE, parts: BAKING, weight: 6, do: dip },
  {
    roles: LINE,
    parts: BAKING,
    weight: 4,
    do: ({ shown, chance }) => {
      const batch = someOf(inStage(shown, 'kettle'), chance)
      return batch === undefined ? [] : [{ type: 'lift', batchId: batch.id }]
    },
  },
  { roles: LINE, parts: BAKING, weight: 4, do: board },
  { roles: LINE, parts: BAKING, weight: 16, do: load },
  // A flip that nobody thought of is an out from the first side, some time later.
  { roles: LINE, parts: [...BAKING, 'afternoon'], weight: 16, do: flip },
  { roles: LINE, parts: [...BAKING, 'afternoon', 'close'], weight: 16, do: takeOut },
  { roles: BENCH, parts: BAKING, weight: 2, do: changeLoad },
  { roles: BENCH, parts: BAKING, weight: 2, do: moveLoad },
  { roles: BENCH, parts: [...BAKING, 'opening', 'evening'], weight: 4, do: moveBatch },
  { roles: BENCH, parts: [...BAKING, 'close'], weight: 2, do: waste },
  {
    roles: LINE,
    parts: 'all-day',
    weight: 2,
    do: ({ shown, chance }) => {
      const unsureIds = [...shown.unsure.keys()].slice(0, chance.between(1, 4))
      return unsureIds.length === 0 ? [] : [{ type: 'confirmPresumed', unsureIds }]
    },
  },
  {
    roles: LINE,
    parts: ['opening', ...BAKING, 'close'],
    weight: 5,
    do: ({ chance }) => [{ type: 'care', care: chance.oneOf([...CARE_KINDS]) }],
  },
  {
    roles: LINE,
    parts: ['opening'],
    weight: 2,
    do: ({ chance }) => [{ type: 'setBoards', usable: chance.between(12, 24) }],
  },
  { roles: BENCH, parts: ['evening', 'close'], weight: 10, do: shape },
  {
    roles: LINE,
    parts: BAKING,
    weight: 1,
    do: ({ shown, chance }) => {
      const planned = someOf(shown.planned.values(), chance)
      return planned === undefined ? [] : [{ type: 'skipPlanned', plannedId: planned.id }]
    },
  },
]

function pull({ shown, shop, chance }: Scene) {
  const chilled = someOf(inStage(shown, 'chill'), chance)
  const tray = shop.doughs.get(chilled?.doughId ?? ('none' as never))?.trayPieces ?? 15
  if (chilled === undefined) return []
  const { doughId, varietyId } = chilled
  return [{ type: 'pull', doughId, varietyId, pieces: tray * chance.between(1, 3) } as const]
}

function dip({ shown, shop, chance }: Scene) {
  const ready = someOf([...inStage(shown, 'rack'), ...inStage(shown, 'chill')], chance)
  if (ready === undefined) return []
  const { doughId, varietyId, pieces } = ready
  return [{ type: 'dip', doughId, varietyId, pieces: Math.min(pieces, shop.kettle.pieces) } as const]
}

function board({ shown, shop, chance }: Scene) {
  const wet = someOf(inStage(shown, 'boards'), chance)
  const variety = someOf(
    [...shop.varieties.values()].filter(({ doughId }) => doughId === wet?.doughId),
    chance,
  )
  if (wet === undefined || variety === undefined) return []
  return [{ type: 'board', lines: [{ varietyId: variety.id, pieces: Math.min(wet.pieces, 24) }] } as const]
}

function load({ shown, shop, chance }: Scene) {
  const taken = new Set([...shown.loads.values()].map(({ shelfId }) => shelfId))
  const shelfId = someOf(
    [...shop.shelves.keys()].filter((id) => !taken.has(id)),
    chance,
  )
  if (shelfId === undefined) return []
  const planned = [...shown.planned.values()].find(({ done }) => !done)
  if (planned !== undefined) return [{ type: 'load', shelfId, plannedId: planned.id, lines: planned.lines } as const]
  return [{ type: 'load', shelfId, plannedId: null, lines: someLines(shop, chance, 24) } as const]
}

function flip({ shown, nowMs, chance }: Scene) {
  const due = [...shown.loads.values()].filter(
    ({ phase, flip: when }) => phase === 'first-side' && when !== null && when.earliestAtMs <= nowMs,
  )
  const one = someOf(due, chance)
  return one === undefined ? [] : [{ type: 'flip', loadId: one.id } as const]
}

function takeOut({ shown, nowMs, chance }: Scene) {
  const due = [...shown.loads.values()].filter(({ out }) => out !== null && out.earliestAtMs <= nowMs)
  const one = someOf(due, chance)
  if (one === undefined) return []
  const inside = [...shown.batches.values()].find(({ loadId }) => loadId === one.id)
  const isPart = inside?.varietyId != null && inside.pieces > 1 && chance.permille(100)
  const lines = isPart ? [{ varietyId: inside.varietyId, pieces: inside.pieces - 1 }] : null
  return [{ type: 'out', loadId: one.id, from: one.phase, lines } as const]
}

function changeLoad({ shown, shop, chance }: Scene) {
  const one = someOf(shown.loads.values(), chance)
  return one === undefined ? [] : [{ type: 'changeLoad', loadId: one.id, lines: someLines(shop, chance, 24) } as const]
}

function moveLoad({ shown, shop, chance }: Scene) {
  const one = someOf(shown.loads.values(), chance)
  if (one === undefined) return []
  const to = chance.oneOf(['first-side', 'second-side', 'boards'] as const)
  return [
    { type: 'moveLoad', loadId: one.id, from: one.phase, to, shelfId: chance.oneOf([...shop.shelves.keys()]) } as const,
  ]
}

function moveBatch({ shown, chance }: Scene) {
  const one = someOf(shown.batches.values(), chance)
  if (one === undefined) return []
  const to = chance.oneOf(['proof', 'chill', 'rack', 'kettle', 'boards'] as const)
  const pieces = chance.permille(600) ? one.pieces : chance.between(1, one.pieces)
  return [{ type: 'moveBatch', batchId: one.id, from: one.stage, to, pieces } as const]
}

function waste({ shown, chance }: Scene) {
  const one = someOf(shown.batches.values(), chance)
  if (one === undefined) return []
  return [{ type: 'wasteBatch', batchId: one.id, from: one.stage, pieces: chance.between(1, one.pieces) } as const]
}

function shape({ shop, chance }: Scene) {
  const { id } = chance.oneOf([...shop.doughs.values()])
  const stage = chance.oneOf(['proof', 'chill'] as const)
  return [{ type: 'shape', doughId: id, varietyId: null, pieces: 12 * chance.between(1, 10), stage } as const]
}

function inStage({ batches }: State, stage: BatchStage): Batch[] {
  return [...batches.values()].filter((batch) => batch.stage === stage)
}
