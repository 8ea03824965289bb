import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { Profile } from '../../../shared-core/demand/demand.ts'
import { exposureOf, partBy, profileFrom } from '../../../shared-core/demand/exposure.ts'
import { Profiles } from '../../../shared-core/demand/profiles.ts'
import type { SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { drawer } from '../support/draw.ts'
import { arrivals, chances, dayOf, HOURS, itemDay } from './drawn-days.ts'

const MONDAY = '2026-03-02'
/** Everybody comes in the last hours. */
const LATE: Profile = [
  [360, 0],
  [660, 0.1],
  [840, 1],
]

function learnt(days: readonly SalesDay[], guesses: ConstructorParameters<typeof Profiles>[0] = []): Profiles {
  const profiles = new Profiles(guesses)
  for (const day of days) profiles.learn(day)
  return profiles
}

describe('what a profile is', () => {
  it('[Q20] given a shop without sales, when a profile is asked for, then it is busiest at opening', () => {
    const profile = new Profiles().of('plain', null, MONDAY, 360, 840)
    expect(profile[0]).toEqual([360, 0])
    expect(profile.at(-1)).toEqual([840, 1])
    expect(partBy(profile, 600)).toBeCloseTo(0.65, 6)
    expect(partBy(profile, 420)).toBeGreaterThan(2 * (1 - partBy(profile, 780)))
  })

  it('[Q20] given any days, when profiles are asked for, then they go from 0 at opening to 1 at close and never fall', () => {
    const { upTo, oneOf } = drawer(20)
    const profiles = new Profiles([{ id: 'rye', group: 'dark', usual: 9 }])
    for (let place = 0; place < 40; place += 1) {
      const openMinute = oneOf([300, 352.5, 360, 431])
      const closeMinute = oneOf([840, 905, 1440, 1500])
      const sold = Array.from({ length: upTo(9) }, () => ({ minute: 250 + upTo(1300), pieces: oneOf([1, 1, 12]) }))
      const fromMinute = openMinute + upTo(200)
      const gone = oneOf([[], [{ fromMinute, toMinute: closeMinute }]])
      const rye = itemDay(sold, { gone })
      profiles.learn({
        date: dateAfter(MONDAY, place),
        openMinute,
        closeMinute,
        specials: [],
        items: new Map([['rye', rye]]),
      })
      const profile = profiles.of(
        oneOf(['rye', 'new']),
        oneOf(['dark', null]),
        dateAfter(MONDAY, place),
        openMinute,
        closeMinute,
      )
      expect([profile[0], profile.at(-1)]).toEqual([
        [openMinute, 0],
        [closeMinute, 1],
      ])
      for (const [at, [minute, part]] of profile.slice(1).entries()) {
        expect(minute).toBeGreaterThan(profile[at]?.[0] ?? 0)
        expect(part).toBeGreaterThanOrEqual(profile[at]?.[1] ?? 0)
      }
    }
  })

  it('[Q23] given time without any, when exposure is asked for, then it is what came less what came meanwhile', () => {
    expect(exposureOf(HOURS, [])).toBe(1)
    expect(exposureOf(HOURS, [{ fromMinute: 510, toMinute: 840 }])).toBeCloseTo(0.5, 12)
    expect(exposureOf(HOURS, [{ fromMinute: 420, toMinute: 510 }], 600)).toBeCloseTo(0.45, 12)
    expect(exposureOf(HOURS, [{ fromMinute: 420, toMinute: 840 }], 465)).toBeCloseTo(0.2, 12)
    expect(exposureOf(HOURS, [{ fromMinute: 300, toMinute: 900 }])).toBe(0)
    expect(exposureOf(HOURS, [{ fromMinute: 600, toMinute: 840 }], 510)).toBeCloseTo(0.5, 12)
  })

  it('[Q23] given a minute of the day, when what is left of the profile is asked for, then it goes from 0 to 1 again', () => {
    const rest = profileFrom(HOURS, 555)
    expect(rest[0]).toEqual([555, 0])
    expect(partBy(rest, 600)).toBeCloseTo((0.75 - 0.625) / 0.375, 12)
    expect(rest.at(-1)).toEqual([840, 1])
    expect(profileFrom(HOURS, 300)).toEqual(HOURS)
    expect(profileFrom(HOURS, 850)).toEqual([
      [850, 0],
      [850, 1],
    ])
  })
})

describe('what a profile learns', () => {
  it('[Q21] given an item that is often gone by half past eight, when learnt, then its afternoon is no weaker', () => {
    const chance = chances(21)
    const whole: SalesDay[] = []
    const cut: SalesDay[] = []
    for (let place = 0; place < 60; place += 1) {
      const sold = arrivals(chance, 40, LATE)
      const date = dateAfter(MONDAY, place)
      whole.push(dayOf({ plain: itemDay(sold) }, date))
      const early = { gone: [{ fromMinute: 510, toMinute: 840 }] }
      const kept =
        place % 3 > 0
          ? itemDay(
              sold.filter(({ minute }) => minute < 510),
              early,
            )
          : itemDay(sold)
      cut.push(dayOf({ plain: kept }, date))
    }
    const part = (days: readonly SalesDay[]) => partBy(learnt(days).of('plain', null, '2026-05-04', 360, 840), 510)
    expect(part(whole)).toBeLessThan(0.08)
    expect(Math.abs(part(cut) - part(whole))).toBeLessThan(0.03)
  })

  it('[Q21] given pieces that went unseen, when learnt, then the profile is as without them', () => {
    const sold = arrivals(chances(5), 60, LATE)
    const of = (unseen: number) =>
      learnt([dayOf({ plain: itemDay(sold, { unseen }) })]).of('plain', null, MONDAY, 360, 840)
    expect(of(50)).toEqual(of(0))
  })

  it('[Q22] given items whose customers come late, when one of their group is new, then it is expected late too', () => {
    const chance = chances(22)
    const guesses = ['rye', 'dark rye', 'new'].map((id) => ({ id, group: 'dark', usual: 10 }))
    const days = Array.from({ length: 40 }, (_, place) =>
      dayOf(
        {
          plain: itemDay(arrivals(chance, 90)),
          rye: itemDay(arrivals(chance, 12, LATE)),
          'dark rye': itemDay(arrivals(chance, 8, LATE)),
        },
        dateAfter(MONDAY, place),
      ),
    )
    const profiles = learnt(days, guesses)
    const byHalfPastEight = (id: string, group: string | null) =>
      partBy(profiles.of(id, group, '2026-04-13', 360, 840), 510)
    expect(byHalfPastEight('rye', 'dark')).toBeLessThan(0.15)
    expect(byHalfPastEight('new', 'dark')).toBeLessThan(0.2)
    expect(byHalfPastEight('new', null)).toBeGreaterThan(0.35)
    expect(byHalfPastEight('plain', null)).toBeCloseTo(0.5, 1)
  })

  it('[Q22] given Sundays on which people sleep in, when learnt, then Mondays stay early', () => {
    const chance = chances(23)
    const days = Array.from({ length: 84 }, (_, place) => {
      const date = dateAfter(MONDAY, place)
      return dayOf({ plain: itemDay(arrivals(chance, 100, place % 7 === 6 ? LATE : HOURS)) }, date)
    })
    const profiles = learnt(days)
    expect(partBy(profiles.of('plain', null, '2026-05-25', 360, 840), 510)).toBeCloseTo(0.5, 1)
    expect(partBy(profiles.of('plain', null, '2026-05-31', 360, 840), 510)).toBeLessThan(0.25)
  })

  it('[Q22] given a few sales only, when learnt, then an item stays near the shop, and dozens move it less than singles', () => {
    const chance = chances(24)
    const days = Array.from({ length: 30 }, (_, place) =>
      dayOf({ plain: itemDay(arrivals(chance, 90)) }, dateAfter(MONDAY, place)),
    )
    const late = (pieces: number, times: number) => {
      const sold = Array.from({ length: times }, (_, place) => ({ minute: 700 + place, pieces }))
      const profiles = learnt([...days, dayOf({ rare: itemDay(sold) }, '2026-04-02')])
      return partBy(profiles.of('rare', null, '2026-04-03', 360, 840), 600)
    }
    expect(late(1, 1)).toBeGreaterThan(0.6)
    expect(late(12, 1)).toBeGreaterThan(late(1, 12) + 0.1)
  })

  it('[Q24] given a shop that comes to be asked later while an item is off, when the item is back, then it follows', () => {
    const chance = chances(25)
    const days = Array.from({ length: 100 }, (_, place) => {
      const profile = place < 50 ? HOURS : LATE
      const plain = itemDay(arrivals(chance, 80, profile))
      const rye = place < 50 ? itemDay(arrivals(chance, 15, profile)) : itemDay([], { offered: false })
      return dayOf({ plain, rye }, dateAfter(MONDAY, place))
    })
    const profiles = learnt(days)
    const byHalfPastEight = (id: string) => partBy(profiles.of(id, null, '2026-06-10', 360, 840), 510)
    expect(byHalfPastEight('plain')).toBeLessThan(0.3)
    expect(Math.abs(byHalfPastEight('rye') - byHalfPastEight('plain'))).toBeLessThan(0.08)
  })
})
