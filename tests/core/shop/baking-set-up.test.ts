import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../shared-core/day/events.ts'
import { upcastEntry } from '../../../shared-core/day/upcast.ts'
import { DEFAULT_BAKING } from '../../../shared-core/shop/default-rules.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopWith } from '../support/shop.ts'
import { problemsOfFile, shopOf, smallFile } from './set-up-file-maker.ts'

const BAKING = {
  advice: false,
  changeGainCents: 350,
  stalePercentPerHour: 5,
  carryPercent: 40,
  boardWait: { minutes: 10 },
  unit: 4,
  tolerance: { seconds: 90 },
  door: { load: { seconds: 45 }, flip: { minutes: 2 }, out: { seconds: 40 } },
  turn: { seconds: 20 },
  people: [
    { from: '03:30', people: 2 },
    { from: '07:00', people: 1 },
  ],
  showUntil: '09:30',
  contactCents: 25,
}

describe('how loads are planned, in the set-up file', () => {
  it('[I1] given a file that says it, then the shop has it, and its own file says the same', () => {
    const oven = { kind: 'shelves', shelves: [{ id: '1', name: '1', pieces: 72, emptyBy: '10:30' }] }
    const varieties = [{ id: 'plain', name: 'Plain', dough: 'plain', showLeast: 12, avoids: ['egg', 'sesame'] }]
    const shop = shopOf({ ...smallFile(), oven, varieties, baking: BAKING })
    expect(shop.baking).toEqual({
      advice: false,
      changeGainCents: 350,
      stalePercentPerHour: 5,
      carryPercent: 40,
      boardWaitMs: 600_000,
      unitPieces: 4,
      toleranceMs: 90_000,
      door: { loadMs: 45_000, flipMs: 120_000, outMs: 40_000 },
      turnMs: 20_000,
      people: [
        { fromMinute: 210, people: 2 },
        { fromMinute: 420, people: 1 },
      ],
      showUntilMinute: 570,
      contactCents: 25,
    })
    expect([...shop.shelves.values()]).toMatchObject([{ emptyByMinute: 630 }])
    expect([...shop.varieties.values()]).toMatchObject([{ showLeast: 12, avoids: ['egg', 'sesame'] }])
    expect(toSetUpFile(shop)).toMatchObject({ oven, varieties, baking: BAKING })
  })

  it.each([
    [6, 6],
    [12, 6],
    [5, 1],
    [8, 1],
  ])('[I1] given boards of %i and no word of it, then pieces are boarded by %i', (pieces, unit) => {
    const shop = shopOf({ ...smallFile(), boards: { count: 24, pieces } })
    expect(shop.baking).toEqual({ ...DEFAULT_BAKING, unitPieces: unit })
  })

  it.each<[string, object, string, string, string]>([
    [
      'times out of order',
      { people: [...BAKING.people].reverse() },
      '/baking/people/1/from',
      '03:30 is not after 07:00, the time before it in the list.',
      'Times in order, each of them once.',
    ],
    [
      'a time twice',
      { people: [1, 2].map((people) => ({ from: '04:00', people })) },
      '/baking/people/1/from',
      '04:00 is not after 04:00, the time before it in the list.',
      'Times in order, each of them once.',
    ],
    [
      'a crowd',
      { people: [{ from: '04:00', people: 100 }] },
      '/baking/people/0/people',
      '"people" is 100.',
      'A whole number from 0 to 99.',
    ],
    [
      'a show that ends as the shop opens',
      { showUntil: '06:00' },
      '/baking/showUntil',
      'Varieties are wanted on show until 06:00, when the shop is closed.',
      'After 06:00, and 15:00 at the latest.',
    ],
    [
      'a show after the close',
      { showUntil: '15:01' },
      '/baking/showUntil',
      'Varieties are wanted on show until 15:01, when the shop is closed.',
      'After 06:00, and 15:00 at the latest.',
    ],
    [
      'a word for a number',
      { door: { load: 'fast' } },
      '/baking/door/load',
      '"load" is the text "fast".',
      'An object with "minutes", "seconds".',
    ],
  ])('[I3] given %s, then it is refused with its place', (_what, baking, path, wrong, right) => {
    expect(problemsOfFile({ ...smallFile(), baking })).toEqual([{ path, wrong, right }])
  })

  it('[I3] given a shelf that is to be empty before the oven is ready, then it is refused, unless it is retired', () => {
    const shelf = { id: '2', name: '2', pieces: 72, emptyBy: '04:30' }
    const file = (one: object) => ({
      ...smallFile(),
      oven: { kind: 'shelves', shelves: [{ id: '1', name: '1', pieces: 72 }, one] },
    })
    expect(problemsOfFile(file(shelf))).toEqual([
      {
        path: '/oven/shelves/1/emptyBy',
        wrong: 'It is to be empty by 04:30, before the oven is ready.',
        right: 'After 04:30, or the shelf retired.',
      },
    ])
    expect(problemsOfFile(file({ ...shelf, retired: true }))).toEqual([])
    expect(problemsOfFile(file({ ...shelf, emptyBy: '04:31' }))).toEqual([])
  })

  it('[I3] given an allergen avoided twice, then once is right', () => {
    const [plain, ...rest] = smallFile().varieties
    const varieties = [{ ...plain, avoids: ['egg', 'egg'] }, ...rest]
    expect(problemsOfFile({ ...smallFile(), varieties })).toEqual([
      { path: '/varieties/0/avoids', wrong: '"egg" is named twice.', right: 'Each allergen once.' },
    ])
  })
})

describe('set-ups of before there was any of it', () => {
  const withoutNew = (value: object) =>
    Object.fromEntries(
      Object.entries(value).filter(([field]) => !['showLeast', 'avoids', 'emptyByMinute'].includes(field)),
    )

  it.each([
    ['setUpChanged', 4, 'changes'],
    ['setUpPlanned', 3, 'setUp'],
  ] as const)('[I2] given %s of version %i, then nothing is avoided, on show or emptied apart', (type, v, where) => {
    const { varieties, shelves } = shopWith()
    const changes = [
      ...[...varieties.values()].map((value) => ({ entity: 'variety', value: withoutNew(value) })),
      ...[...shelves.values()].map((value) => ({ entity: 'shelf', value: withoutNew(value) })),
    ]
    const held = where === 'changes' ? { changes } : { setUp: { id: 'p', fromMs: 0, deviceId: 'd', changes } }
    const entry = { events: [{ v, atMs: 0, type, ...held }] } as unknown as Entry
    const [event] = upcastEntry(entry).events
    const read =
      event?.type === 'setUpChanged' ? event.changes : event?.type === 'setUpPlanned' ? event.setUp.changes : []
    expect(read).toEqual([
      ...[...varieties.values()].map((value) => ({ entity: 'variety', value })),
      ...[...shelves.values()].map((value) => ({ entity: 'shelf', value })),
    ])
  })

  it.each([
    [6, 6],
    [5, 1],
  ])('[I2] given a first set-up without the rules and boards of %i, then common practice by %i', (pieces, unit) => {
    const shop = shopWith({ boards: { ...shopWith().boards, pieces } })
    const old = setUpChanges(null, shop).filter(({ entity }) => entity !== 'baking')
    expect(applySetUp(null, old).baking).toEqual({ ...DEFAULT_BAKING, unitPieces: unit })
  })

  it('[I2] given other boards later, then what was boarded together stays', () => {
    const shop = applySetUp(shopWith(), [{ entity: 'boards', value: { ...shopWith().boards, pieces: 5 } }])
    expect(shop.baking.unitPieces).toBe(6)
  })
})
