import type { Act } from '../../shared-core/day/commands.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { piecesForSale, someLines, somethingForSale } from './draws.ts'
import type { Doing, Scene, SmallAct } from './people.ts'

const LINE = ['bench', 'wall', 'desk'] as const
const COUNTER = ['counter'] as const
const ANYBODY = ['desk', 'bench', 'counter', 'wall'] as const
const OPEN = ['morning', 'changeover', 'afternoon', 'close'] as const

/** What goes wrong in people's hands. The shop takes it as said, asks back, or refuses; it never miscounts. */
export const MISTAKES: readonly SmallAct[] = [
  // On the wrong shelf, noticed, taken back, and on the right one.
  {
    roles: LINE,
    parts: ['first-loads', 'morning'],
    weight: 3,
    do: ({ shop, chance }) => {
      const [wrong, right] = [chance.oneOf([...shop.shelves.keys()]), chance.oneOf([...shop.shelves.keys()])]
      const lines = someLines(shop, chance, 24)
      const on = (shelfId: typeof wrong): Act => ({ type: 'load', shelfId, plannedId: null, lines })
      return [on(wrong), 'take-back', on(right)]
    },
  },
  {
    roles: COUNTER,
    parts: OPEN,
    weight: 4,
    do: (scene) => twice({ type: 'sell', lines: someLines(scene.shop, scene.chance, 6) }, scene),
  },
  // Two rods changed places in somebody's head.
  {
    roles: COUNTER,
    parts: OPEN,
    weight: 2,
    do: ({ shown, shop, chance }) => {
      const id = somethingForSale(shown, shop, chance)
      return [{ type: 'count', varietyId: id, pieces: chance.oneOf([0, 3 * piecesForSale(shown, id), 400]) }]
    },
  },
  {
    roles: ['desk', 'counter'],
    parts: ['close', 'evening'],
    weight: 4,
    do: ({ shown }) => {
      const close: Act = { type: 'closeDay', ...(shown.day === null ? {} : { label: shown.day.label }) }
      return [close, close]
    },
  },
  // A screen that still shows yesterday.
  { roles: ['desk', 'counter'], parts: ['opening'], weight: 1, do: () => [{ type: 'closeDay', label: '2026-01-01' }] },
  {
    roles: ['desk', 'bench'],
    parts: ['opening', 'evening'],
    weight: 1,
    do: ({ shop, chance }) => {
      const lines = [...someLines(shop, chance, 12), { varietyId: varietyId('unheard-of'), pieces: 12 }]
      return [{ type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines }] }]
    },
  },
  { roles: ANYBODY, parts: 'all-day', weight: 5, do: takeBack },
]

function twice(act: Act, { chance }: Scene): Doing {
  return chance.permille(500) ? [act, act] : [act, act, 'take-back']
}

/** One's own last act, mostly; or what somebody did a while ago, which later acts may stand on. */
function takeBack({ shown, deviceId, chance }: Scene): Doing {
  const own = shown.traces.filter((trace) => trace.deviceId === deviceId)
  const trace = chance.permille(700) ? own.at(-1) : shown.traces[0]
  return trace === undefined ? [] : [{ type: 'takeBack', commandId: trace.commandId }]
}
