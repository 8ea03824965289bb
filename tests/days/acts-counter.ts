import { AT_ORDERS } from './acts-orders.ts'
import { piecesForSale, someLines, someOf, somethingForSale } from './draws.ts'
import type { Scene, SmallAct } from './people.ts'

const COUNTER = ['counter', 'desk', 'bench'] as const
const AT_IT = ['counter'] as const
const OPEN = ['morning', 'changeover', 'afternoon', 'close'] as const

/** Customers come from the door's opening on; counts and leftovers belong to the slack hours. */
export const AT_COUNTER: readonly SmallAct[] = [
  { roles: AT_IT, parts: OPEN, weight: 40, do: sell },
  {
    roles: AT_IT,
    parts: OPEN,
    weight: 6,
    do: ({ chance }) => [{ type: 'sellUnnamed', pieces: chance.oneOf([1, 6, 12, 13]) }],
  },
  {
    roles: AT_IT,
    parts: OPEN,
    weight: 5,
    do: ({ shop, chance }) => [{ type: 'keep', lines: someLines(shop, chance, 13) }],
  },
  {
    roles: AT_IT,
    parts: OPEN,
    weight: 8,
    do: ({ shown, chance }) => {
      const keep = someOf(shown.keeps.values(), chance)
      return keep === undefined ? [] : [{ type: chance.permille(800) ? 'handOver' : 'release', keepId: keep.id }]
    },
  },
  { roles: COUNTER, parts: OPEN, weight: 4, do: count },
  { roles: COUNTER, parts: OPEN, weight: 2, do: sweep },
  {
    roles: AT_IT,
    parts: OPEN,
    weight: 2,
    do: ({ shown, shop, chance }) => [{ type: 'lastOneGone', varietyId: somethingForSale(shown, shop, chance) }],
  },
  // A sandwich, a drop, a child at the door.
  {
    roles: COUNTER,
    parts: OPEN,
    weight: 4,
    do: ({ shown, shop, chance }) => [
      {
        type: 'remove',
        varietyId: somethingForSale(shown, shop, chance),
        pieces: chance.between(1, 4),
        fate: chance.oneOf(['kitchen', 'kitchen', 'wasted', 'given']),
      },
    ],
  },
  {
    roles: AT_IT,
    parts: ['opening', 'first-loads', 'morning'],
    weight: 3,
    do: ({ shop, chance }) => [{ type: 'dayOldIn', lines: someLines(shop, chance, 8) }],
  },
  {
    roles: AT_IT,
    parts: OPEN,
    weight: 4,
    do: ({ shown, chance }) => {
      const old = someOf(
        [...shown.stock.values()].filter(({ dayOld }) => dayOld > 0),
        chance,
      )
      if (old === undefined) return []
      const fate = chance.oneOf(['sold', 'sold', 'kitchen', 'wasted', 'given'] as const)
      return [{ type: 'dayOldOut', varietyId: old.varietyId, pieces: chance.between(1, old.dayOld), fate }]
    },
  },
  ...AT_ORDERS,
  // The driver fetches a standing order: all that is kept.
  {
    roles: AT_IT,
    parts: ['morning'],
    weight: 1,
    do: ({ shown }) => [...shown.keeps.keys()].map((keepId) => ({ type: 'handOver', keepId })),
  },
]

function sell({ shown, shop, chance }: Scene) {
  const varietyId = somethingForSale(shown, shop, chance)
  const lines = chance.permille(800)
    ? [{ varietyId, pieces: chance.oneOf([1, 1, 2, 6, 12]) }]
    : someLines(shop, chance, 13)
  return [{ type: 'sell', lines } as const]
}

/** What lies there: mostly what the books say, or a few less. */
function count({ shown, shop, chance }: Scene) {
  const varietyId = somethingForSale(shown, shop, chance)
  const pieces = Math.max(0, piecesForSale(shown, varietyId) - chance.oneOf([0, 0, 1, 2, 5]))
  return [{ type: 'count', varietyId, pieces } as const]
}

function sweep({ shown, shop, chance }: Scene) {
  const counts = [...shop.varieties.keys()].slice(0, chance.between(1, 5)).map((varietyId) => ({
    varietyId,
    pieces: Math.max(0, piecesForSale(shown, varietyId) - chance.oneOf([0, 1, 3])),
    within: chance.oneOf([0, 3]),
  }))
  return [{ type: 'sweep', counts } as const]
}
