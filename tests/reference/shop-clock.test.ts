import { describe, expect, it } from 'vitest'
import { isZone, localDate, localInstant, shopClock } from '../../server/live/shop-clock.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * Changes of the clocks. Source of every value: Python zoneinfo (tzdata 2025b), spot-checked in Node 20's ICU (tzdata
 * 2025c); computed outside this project. Governments change rules: a failure here may mean a newer table, then look up
 * what changed. No tolerance: clocks change at an exact millisecond.
 */
const CHANGES = [
  ['America/New_York', '2026-03-08T07:00Z', -300, -240],
  ['America/New_York', '2026-11-01T06:00Z', -240, -300],
  ['America/New_York', '2027-03-14T07:00Z', -300, -240],
  ['America/New_York', '2028-11-05T06:00Z', -240, -300],
  ['America/Los_Angeles', '2026-03-08T10:00Z', -480, -420],
  ['America/Los_Angeles', '2027-11-07T09:00Z', -420, -480],
  ['Europe/Paris', '2026-03-29T01:00Z', 60, 120],
  ['Europe/Paris', '2026-10-25T01:00Z', 120, 60],
  ['Europe/London', '2027-03-28T01:00Z', 0, 60],
  ['Europe/London', '2028-10-29T01:00Z', 60, 0],
  ['Australia/Sydney', '2026-04-04T16:00Z', 660, 600],
  ['Australia/Sydney', '2026-10-03T16:00Z', 600, 660],
  ['Australia/Lord_Howe', '2026-04-04T15:00Z', 660, 630],
  ['Australia/Lord_Howe', '2026-10-03T15:30Z', 630, 660],
] as const

describe('the table of offsets', () => {
  it.each(CHANGES)('%s changes at %s from %i to %i minutes', (zone, at, before, after) => {
    const { offsets } = shopClock(zone, epochMs(Date.parse(at) - 30 * 86_400_000))
    const index = offsets.findIndex(({ fromMs }) => fromMs === Date.parse(at))
    expect(offsets[index]?.offsetMinutes).toBe(after)
    expect(offsets[index - 1]?.offsetMinutes).toBe(before)
  })

  it('a zone without summer time has one offset', () => {
    const { offsets } = shopClock('America/Phoenix', epochMs(Date.parse('2026-01-01T00:00Z')))
    expect(offsets.map(({ offsetMinutes }) => offsetMinutes)).toEqual([-420])
  })

  it('looks ahead for a year and a half: three changes from any day', () => {
    const { offsets } = shopClock('America/Chicago', epochMs(Date.parse('2026-11-24T12:00Z')))
    expect(offsets.map(({ fromMs }) => new Date(fromMs).toISOString().slice(0, 16)).slice(1)).toEqual([
      '2027-03-14T08:00',
      '2027-11-07T07:00',
      '2028-03-12T08:00',
    ])
  })

  it.each([
    ['America/Chicago', true],
    ['Moon/Base', false],
    ['', false],
  ])('%s is a zone: %s', (name, expected) => {
    expect(isZone(name)).toBe(expected)
  })
})

describe('local times', () => {
  /** 20:00 the evening before to 4:30: an overnight chill, in elapsed minutes. */
  it.each([
    ['2026-06-10', 'America/New_York', 510],
    ['2026-03-08', 'America/New_York', 450],
    ['2027-03-14', 'America/Chicago', 450],
    ['2028-03-12', 'America/Los_Angeles', 450],
    ['2026-11-01', 'America/New_York', 570],
    ['2027-11-07', 'America/New_York', 570],
    ['2026-03-29', 'Europe/Paris', 450],
    ['2027-10-31', 'Europe/London', 570],
    ['2026-03-08', 'America/Phoenix', 510],
    ['2026-04-05', 'Australia/Lord_Howe', 540],
    ['2026-10-04', 'Australia/Lord_Howe', 480],
  ] as const)('the night to %s in %s has %i minutes from 20:00 to 4:30', (date, zone, minutes) => {
    const evening = new Date(Date.parse(`${date}T12:00Z`) - 86_400_000).toISOString().slice(0, 10)
    const chilledMs = localInstant(zone, evening, 20 * 60)
    const pulledMs = localInstant(zone, date, 4 * 60 + 30)
    expect((pulledMs - chilledMs) / 60_000).toBe(minutes)
  })

  it.each([
    ['comes twice: the first', '2026-11-01', '1:30', '2026-11-01T05:30Z'],
    ['comes twice, its last minute', '2026-11-01', '1:59', '2026-11-01T05:59Z'],
    ['just before it comes twice', '2026-11-01', '0:59', '2026-11-01T04:59Z'],
    ['just after it came twice', '2026-11-01', '2:00', '2026-11-01T07:00Z'],
    ['does not come: it moves forward', '2026-03-08', '2:30', '2026-03-08T07:30Z'],
    ['just before what does not come', '2026-03-08', '1:59', '2026-03-08T06:59Z'],
    ['just after what does not come', '2026-03-08', '3:00', '2026-03-08T07:00Z'],
  ])('in New York, a time that %s (%s %s)', (_what, date, clock, expected) => {
    const [hours = 0, minutes = 0] = clock.split(':').map(Number)
    expect(localInstant('America/New_York', date, hours * 60 + minutes)).toBe(Date.parse(expected))
  })

  it.each([
    ['2026-11-24T05:59Z', '2026-11-23'],
    ['2026-11-24T06:00Z', '2026-11-24'],
    ['2026-07-24T04:59Z', '2026-07-23'],
    ['2026-07-24T05:00Z', '2026-07-24'],
  ])('at %s it is %s in Chicago', (at, date) => {
    expect(localDate('America/Chicago', epochMs(Date.parse(at)))).toBe(date)
  })
})
