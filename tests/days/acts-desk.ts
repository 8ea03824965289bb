import { durationMs, epochMs, spanMs } from '../../shared-core/units.ts'
import { someLines, someOf } from './draws.ts'
import type { Scene, SmallAct } from './people.ts'

const DESK = ['desk'] as const
const BACK = ['desk', 'bench'] as const
const ANYBODY = ['desk', 'bench', 'counter', 'wall'] as const
const TILL = ['desk', 'counter'] as const

/** Lists, plans, the ends of a day, and what people say of it. */
export const AT_DESK: readonly SmallAct[] = [
  { roles: ['desk', 'bench', 'counter'], parts: ['opening'], weight: 6, do: () => [{ type: 'openDay' }] },
  { roles: ANYBODY, parts: ['opening', 'changeover'], weight: 14, do: doStep },
  { roles: ANYBODY, parts: ['opening', 'changeover'], weight: 4, do: giveStep },
  { roles: ANYBODY, parts: ['opening', 'first-loads'], weight: 5, do: testFloat },
  {
    roles: ANYBODY,
    parts: 'all-day',
    weight: 2,
    do: ({ chance }) => [{ type: 'readOven', shelfId: null, degrees: chance.between(380, 520), unit: 'F' }],
  },
  {
    roles: DESK,
    parts: 'all-day',
    weight: 1,
    do: ({ chance }) => [
      {
        type: 'noteImport',
        name: 'till.csv',
        sha256: '0123456789abcdef'.repeat(4),
        rows: chance.between(1, 9_999),
        from: '2025-01-01',
        to: '2025-12-31',
      },
    ],
  },
  { roles: BACK, parts: ['opening', 'evening'], weight: 5, do: carryIn },
  { roles: BACK, parts: ['opening', 'first-loads', 'morning', 'evening'], weight: 4, do: typeList },
  { roles: BACK, parts: 'all-day', weight: 1, do: forbidLoads },
  {
    roles: ANYBODY,
    parts: 'all-day',
    weight: 1,
    do: ({ chance }) => [{ type: 'writeNote', text: chance.oneOf(['rye slow', 'salt is short', 'oven 3 runs hot']) }],
  },
  {
    roles: ANYBODY,
    parts: 'all-day',
    weight: 1,
    do: ({ shown, chance }) => {
      const note = someOf(shown.notes.keys(), chance)
      return note === undefined ? [] : [{ type: 'clearNote', noteId: note }]
    },
  },
  {
    roles: ANYBODY,
    parts: ['changeover'],
    weight: 4,
    do: ({ chance }) => [{ type: 'slipChangeover', slipMs: chance.between(-1, 4) * 60_000 * 15 }],
  },
  {
    roles: ANYBODY,
    parts: ['changeover', 'afternoon'],
    weight: 4,
    do: ({ shop, chance }) => [
      {
        type: 'changeOverShelf',
        shelfId: chance.oneOf([...shop.shelves.keys()]),
        to: chance.oneOf(['secondMenu', 'secondMenu', 'bagels']),
      },
    ],
  },
  { roles: TILL, parts: ['close'], weight: 12, do: closeDay },
  {
    roles: TILL,
    parts: ['close', 'evening', 'opening'],
    weight: 4,
    do: ({ shown }) =>
      shown.day === null && shown.lastDay?.before != null ? [{ type: 'reopenDay', label: shown.lastDay.label }] : [],
  },
  { roles: DESK, parts: 'all-day', weight: 8, do: changeSetUp },
  {
    roles: DESK,
    parts: 'all-day',
    weight: 3,
    do: ({ shown, chance }) => {
      const setUpId = someOf(shown.setUps.keys(), chance)
      return setUpId === undefined ? [] : [{ type: 'dropSetUp', setUpId }]
    },
  },
]

function doStep({ shop, part, chance }: Scene) {
  const list = part === 'opening' ? 'opening' : 'changeover'
  const step = someOf(
    [...shop.steps.values()].filter((one) => one.list === list),
    chance,
  )
  const personId = someOf(shop.people.keys(), chance) ?? null
  return step === undefined ? [] : [{ type: 'doStep', stepId: step.id, doughId: null, personId } as const]
}

function giveStep({ shop, chance }: Scene) {
  const stepId = someOf(shop.steps.keys(), chance)
  const personId = chance.permille(300) ? null : (someOf(shop.people.keys(), chance) ?? null)
  return stepId === undefined ? [] : [{ type: 'giveStep', stepId, doughId: null, personId } as const]
}

function testFloat({ shop, chance }: Scene) {
  const passed = chance.permille(600)
  const lookAgainMs = passed ? null : spanMs(15, 'min')
  return [
    { type: 'testFloat', doughId: chance.oneOf([...shop.doughs.keys()]), passed, lookAgainMs, personId: null } as const,
  ]
}

/** A delivery, or trays that were found: put into the cooler some hours ago. */
function carryIn({ shop, chance, nowMs }: Scene) {
  const doughId = chance.oneOf([...shop.doughs.keys()])
  const sinceMs = chance.permille(300) ? null : epochMs(Math.round(nowMs) - chance.between(1, 14) * 3_600_000)
  return [
    { type: 'carryIn', doughId, varietyId: null, pieces: 12 * chance.between(1, 8), stage: 'chill', sinceMs } as const,
  ]
}

function typeList({ shop, chance, nowMs, part }: Scene) {
  const loads = Array.from({ length: chance.between(1, 5) }, (_, n) => ({
    shelfId: chance.permille(200) ? chance.oneOf([...shop.shelves.keys()]) : null,
    inAtMs: part === 'evening' || chance.permille(600) ? null : epochMs(Math.round(nowMs) + n * 60_000),
    lines: someLines(shop, chance, 24),
  }))
  return [{ type: 'setLoadList', loads } as const]
}

/** A shelf or a variety that the plan must leave out for a while, or nothing any more. */
function forbidLoads({ shop, chance, nowMs }: Scene) {
  const fromMs = epochMs(Math.round(nowMs) + chance.between(0, 120) * 60_000)
  const toMs = epochMs(fromMs + chance.between(1, 180) * 60_000)
  const shelfId = chance.permille(500) ? chance.oneOf([...shop.shelves.keys()]) : null
  const varietyId = chance.permille(500) ? chance.oneOf([...shop.varieties.keys()]) : null
  const forbids = chance.permille(800) ? [{ shelfId, varietyId, fromMs, toMs }] : []
  return [{ type: 'forbidLoads', forbids } as const]
}

function closeDay({ shown, chance }: Scene) {
  if (shown.day === null) return []
  const { label } = shown.day
  return [
    { type: 'closeDay', label, ...(chance.permille(500) ? { crewMinutes: chance.between(60, 2_000) } : {}) } as const,
  ]
}

function changeSetUp({ shown, shop, chance }: Scene) {
  const shelf = chance.oneOf([...shop.shelves.values()])
  const dough = chance.oneOf([...shop.doughs.values()])
  const changes = chance.oneOf([
    [{ entity: 'shelf', value: { ...shelf, pieces: chance.between(24, 60) } }],
    [{ entity: 'kettle', value: { ...shop.kettle, cycleMs: durationMs(chance.between(45, 120) * 1_000) } }],
    [{ entity: 'dough', value: { ...dough, retired: !dough.retired && chance.permille(200) } }],
  ] as const)
  const fromMs = epochMs(shown.recordedAtMs + chance.between(1, 10) * 60_000)
  return [{ type: 'changeSetUp', changes, ...(chance.permille(500) ? { fromMs } : {}) } as const]
}
