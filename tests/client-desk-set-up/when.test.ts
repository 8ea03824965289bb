import { describe, expect, it } from 'vitest'
import { readNumber, steppedTo } from '../../client/desk/set-up/fields/number-field.tsx'
import { isNewShop } from '../../client/desk/set-up/new-shop.ts'
import { hashOf, placeOf } from '../../client/desk/set-up/route.ts'
import { nextOpening, tomorrowText, typedMoment } from '../../client/desk/set-up/when.ts'
import { foundZones, zoneText } from '../../client/desk/set-up/zones.ts'
import { weekdayId } from '../../shared-core/ids.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import { NEW_SHOP_NAME } from '../../shared-core/shop/new-shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { batch, stateWith } from '../core/support/make.ts'
import { hours, STEPS, shopWith, table } from '../core/support/shop.ts'

/** Thursday, November 26, 2026, 11:00 in Chicago, six hours behind UTC. */
const NOW = epochMs(Date.parse('2026-11-26T17:00:00Z'))
const CLOCK: ShopClock = { zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }
const local = (atMs: number | null) =>
  atMs === null ? null : new Date(atMs - 6 * 3_600_000).toISOString().slice(0, 16)

describe('from when a change holds', () => {
  const closedOn = (...days: readonly string[]) =>
    table(days.map((day) => ({ id: weekdayId(day), hours: null, retired: false })))

  it.each([
    ['no list', shopWith(), '2026-11-27T04:30'],
    ['an opening list from an hour before', shopWith({ steps: table(STEPS) }), '2026-11-27T03:30'],
    ['a Friday that is closed', shopWith({ weekdays: closedOn('5') }), '2026-11-28T04:30'],
    [
      'a Friday with hours of its own',
      shopWith({ weekdays: table([{ id: weekdayId('5'), hours: hours({ ovenReadyMinute: 300 }), retired: false }]) }),
      '2026-11-27T05:00',
    ],
    [
      'an oven that is ready soon after midnight',
      shopWith({ hours: hours({ ovenReadyMinute: 20 }), steps: table(STEPS) }),
      '2026-11-27T00:00',
    ],
    ['no open day', shopWith({ weekdays: closedOn('1', '2', '3', '4', '5', '6', '7') }), null],
  ])('given %s, then the next opening begins at %s', (_what, shop, expected) => {
    expect(local(nextOpening(shop, CLOCK, NOW))).toBe(expected)
  })

  it.each([
    ['2026-11-26T11:01', '2026-11-26T11:01'],
    ['2026-12-24T05:00', '2026-12-24T05:00'],
    ['2026-11-26T11:00', null],
    ['2026-11-25T23:00', null],
    ['2028-01-01T00:00', null],
    ['2026-02-31T', null],
    ['', null],
  ])('given "%s" typed, then it is %s', (text, expected) => {
    expect(local(typedMoment(text, CLOCK, NOW))).toBe(expected)
  })

  it('given nothing typed yet, then the field stands at tomorrow', () => {
    expect(typedMoment(tomorrowText(CLOCK, NOW), CLOCK, NOW)).toBe(Date.parse('2026-11-27T06:00:00Z'))
  })
})

describe('a number', () => {
  it.each([
    ['36', 0, 36],
    [' 36 ', 0, 36],
    ['1,75', 2, 1.75],
    ['1.756', 2, 1.76],
    ['−5', 0, -5],
    ['3.5', 0, null],
    ['501', 0, null],
    ['', 0, null],
    ['.', 2, null],
    ['3 dozen', 0, null],
    ['1e2', 0, null],
  ])('given "%s" with %d digits, then it is read as %s', (text, decimals, value) => {
    expect(readNumber(text, { min: -10, max: 500, decimals })).toBe(value)
  })

  it.each([
    [36, 12, 48],
    [40, 12, 48],
    [40, -12, 36],
    [36, -12, 24],
    [3, -12, 1],
    [498, 12, 500],
    [1.6, 0.25, 1.75],
    [1.75, -0.25, 1.5],
  ])('given %d, when stepped by %d, then %d', (value, by, next) => {
    expect(steppedTo(value, by, { min: 1, max: 500 })).toBe(next)
  })
})

describe('time zones', () => {
  const ALL = [
    'Asia/Tokyo',
    'America/Chicago',
    'America/New_York',
    'America/St_Johns',
    'Europe/York',
    'Asia/Yekaterinburg',
    'UTC',
  ]
  it.each([
    ['chic', ['America/Chicago']],
    ['new y', ['America/New_York']],
    ['york', ['America/New_York', 'Europe/York']],
    ['ye', ['Asia/Yekaterinburg']],
    ['yo', ['America/New_York', 'Europe/York', 'Asia/Tokyo']],
    ['ork', ['America/New_York', 'Europe/York']],
    ['nowhere', []],
    [' ', []],
  ])('given "%s", then %j', (typed, zones) => {
    expect(foundZones(typed, ALL)).toEqual({ zones, hasMore: false })
  })

  it('given many, then six and that there are more', () => {
    const found = foundZones(
      'a',
      Array.from({ length: 9 }, (_, n) => `A/${n}`),
    )
    expect([found.zones.length, found.hasMore]).toEqual([6, true])
    expect(zoneText('America/New_York')).toBe('America / New York')
  })
})

describe('the place', () => {
  it.each([
    ['#set-up', { kind: 'overview' }],
    ['#set-up/oven', { kind: 'part', part: 'oven' }],
    ['#set-up/save', { kind: 'part', part: 'save' }],
    ['#set-up/guide/hours', { kind: 'guide', step: 'hours' }],
  ] as const)('given %s, then it is that, and back', (hash, place) => {
    expect(placeOf(hash)).toEqual(place)
    expect(hashOf(place)).toBe(hash)
  })

  it.each([
    ['#set-up/nonsense', { kind: 'overview' }],
    ['#set-up/guide/nonsense', { kind: 'guide', step: 'shop' }],
    ['#today', null],
    ['', null],
  ])('given %s, then %j', (hash, place) => {
    expect(placeOf(hash)).toEqual(place)
  })
})

describe('a new shop', () => {
  const base = shopWith()
  const named = shopWith({ profile: { ...base.profile, name: NEW_SHOP_NAME } })
  it.each([
    ['called as a new one, nothing done', stateWith({ shop: named, day: null }), true],
    ['called otherwise', stateWith({ day: null }), false],
    ['called as a new one, dough on the rack', stateWith({ shop: named, day: null, batches: [batch()] }), false],
  ])('given one %s, then new: %s', (_what, state, isNew) => {
    expect(isNewShop(state)).toBe(isNew)
  })
})
