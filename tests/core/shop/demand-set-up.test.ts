import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../shared-core/day/events.ts'
import { upcastEntry } from '../../../shared-core/day/upcast.ts'
import { specialDayId, varietyId } from '../../../shared-core/ids.ts'
import { DEFAULT_DEMAND } from '../../../shared-core/shop/default-rules.ts'
import { specialDayMisfits } from '../../../shared-core/shop/demand-rules.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import type { SpecialDay } from '../../../shared-core/shop/shop.ts'
import { shopWith } from '../support/shop.ts'
import { problemsOfFile, shopOf, smallFile } from './set-up-file-maker.ts'

const day = (spans: SpecialDay['spans']): SpecialDay => {
  return { id: specialDayId('fair'), name: 'Street fair', order: 0, kind: 'event', spans, retired: false }
}
const fileWith = (special: object) => ({
  ...smallFile(),
  specialDays: [{ id: 'fair', name: 'Street fair', kind: 'event', ...special }],
})

describe('what pieces are worth and special days, in the set-up file', () => {
  it('[Q80] given a file that says them, then the shop has them, and its own file says the same', () => {
    const file = {
      ...smallFile(),
      demand: { region: 'US-IL', disappointCents: 75, takeAnotherPercent: 40, dayOldSells: 12 },
      specialDays: [
        {
          id: 'thanksgiving',
          name: 'Thanksgiving',
          kind: 'holiday',
          dates: ['2026-11-26', { from: '2027-11-25', to: '2027-11-26' }],
        },
      ],
      varieties: [{ id: 'plain', name: 'Plain', dough: 'plain', kitchenCents: 260, usual: 120 }],
    }
    const shop = shopOf(file)
    expect(shop.demand).toEqual(file.demand)
    expect(shop.specialDays.get(specialDayId('thanksgiving'))?.spans).toEqual([
      { from: '2026-11-26', to: '2026-11-26' },
      { from: '2027-11-25', to: '2027-11-26' },
    ])
    expect(shop.varieties.get(varietyId('plain'))).toMatchObject({ kitchenCents: 260, usual: 120 })
    expect(toSetUpFile(shop)).toMatchObject({ demand: file.demand, specialDays: file.specialDays })
  })

  it.each([
    ['usa', '"region" is the text "usa".'],
    ['us-il', '"region" is the text "us-il".'],
    ['US-ILLINOIS', '"region" is the text "US-ILLINOIS".'],
  ])('[Q80] given the region "%s", then what would be right is said', (region, wrong) => {
    const [problem] = problemsOfFile({ ...smallFile(), demand: { region } })
    expect(problem).toMatchObject({ path: '/demand/region', wrong })
    expect(problem?.right).toContain('ISO 3166')
  })

  it.each<[string, unknown, string, string]>([
    ['no such day', ['2026-02-30'], '/specialDays/0/dates/0', 'There is no 2026-02-30.'],
    ['the wrong form', ['26.11.2026'], '/specialDays/0/dates/0', 'Entry 1 is the text "26.11.2026".'],
    [
      'an end before its beginning',
      [{ from: '2026-12-24', to: '2026-12-23' }],
      '/specialDays/0/dates/0',
      'It ends on 2026-12-23, before it begins on 2026-12-24.',
    ],
    [
      'a day twice',
      [{ from: '2026-12-20', to: '2026-12-24' }, '2026-12-24'],
      '/specialDays/0/dates/1',
      '2026-12-24 is not after 2026-12-24, where the dates before it end.',
    ],
    ['another century', ['1999-12-31'], '/specialDays/0/dates/0', 'It is from 1999-12-31 to 1999-12-31.'],
  ])('[Q81] given %s, then it is refused with its place', (_what, dates, path, wrong) => {
    expect(problemsOfFile(fileWith({ dates }))).toContainEqual(expect.objectContaining({ path, wrong }))
  })

  it('[Q81] given dates in order, also next to each other, then they fit', () => {
    const spans = [
      { from: '2024-02-29', to: '2024-02-29' },
      { from: '2024-03-01', to: '2024-03-02' },
    ]
    expect(specialDayMisfits(day(spans))).toEqual([])
  })

  it('[Q81] given two special days of one name in use, then one must have another', () => {
    const special = [1, 2].map((n) => ({ id: `fair-${n}`, name: 'Fair', kind: 'event' }))
    expect(problemsOfFile({ ...smallFile(), specialDays: special })).toMatchObject([{ path: '/specialDays/1/name' }])
  })
})

describe('set-ups of before there was any of it', () => {
  it.each([
    ['setUpChanged', 3, 'changes'],
    ['setUpPlanned', 2, 'setUp'],
  ] as const)(
    '[Q82] given a variety in %s of version %i, then it has no kitchen value and no guess',
    (type, v, where) => {
      const { kitchenCents: _, usual: __, ...value } = { ...[...shopWith().varieties.values()][0] }
      const changes = [{ entity: 'variety', value }]
      const held = where === 'changes' ? { changes } : { setUp: { id: 'p', fromMs: 0, deviceId: 'd', changes } }
      const entry = { events: [{ v, atMs: 0, type, ...held }] } as unknown as Entry
      const text = JSON.stringify(upcastEntry(entry).events)
      expect(text).toContain('"kitchenCents":null')
      expect(text).toContain('"usual":null')
    },
  )

  it('[Q82] given a first set-up without them, then the rules are common practice and no day is special', () => {
    const old = setUpChanges(null, shopWith()).filter(({ entity }) => entity !== 'demand')
    const shop = applySetUp(null, old)
    expect(shop.demand).toEqual(DEFAULT_DEMAND)
    expect(shop.specialDays.size).toBe(0)
  })

  it('[Q82] given a file without a special day that the shop has, then it is retired, its dates kept', () => {
    const fair = day([{ from: '2026-08-29', to: '2026-08-29' }])
    const before = shopWith({ specialDays: new Map([[fair.id, fair]]) })
    const after = applySetUp(before, setUpChanges(before, shopWith()))
    expect(after.specialDays.get(fair.id)).toEqual({ ...fair, retired: true })
  })
})
