import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { DayDemand, ItemGuess } from '../../../shared-core/demand/demand.ts'
import { Learner } from '../../../shared-core/demand/learner.ts'
import type { DayAsked, ItemDay, SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { drawer } from '../support/draw.ts'

/** A Monday. */
const MONDAY = '2026-01-05'
const OPEN = 360
const CLOSE = 840

/** A day on which each item sold so many pieces, one at a time, evenly over the day. */
function dayOf(
  date: string,
  pieces: Readonly<Record<string, number | Partial<ItemDay>>>,
  ...specials: string[]
): SalesDay {
  const items = Object.entries(pieces).map(([id, sold]) => {
    const item: ItemDay = { sold: [], unseen: 0, gone: [], offered: true }
    return [id, typeof sold === 'number' ? { ...item, sold: singles(sold) } : { ...item, ...sold }] as const
  })
  return { date, openMinute: OPEN, closeMinute: CLOSE, specials, items: new Map(items) }
}

function singles(count: number, untilMinute = CLOSE) {
  const span = untilMinute - OPEN
  return Array.from({ length: count }, (_, at) => ({ minute: OPEN + (span * (at + 0.5)) / count, pieces: 1 }))
}

/** So many days from Monday on, each as `made` says by its place. */
function daysOf(count: number, made: (place: number) => Parameters<typeof dayOf>[1]): SalesDay[] {
  return Array.from({ length: count }, (_, place) => dayOf(dateAfter(MONDAY, place), made(place)))
}

function learnt(days: readonly SalesDay[], guesses: readonly ItemGuess[] = []): Learner {
  const learner = new Learner(guesses)
  for (const day of days) learner.learn(day)
  return learner
}

function askedOf(date: string, ...specials: string[]): DayAsked {
  return { date, openMinute: OPEN, closeMinute: CLOSE, specials }
}

function of(learner: Learner, id: string, asked: DayAsked): DayDemand {
  const demand = learner.ahead(asked).get(id)
  if (demand === undefined) throw new Error(`no forecast of ${id}`)
  return demand
}

const meanOn = (learner: Learner, id: string, place: number) => of(learner, id, askedOf(dateAfter(MONDAY, place))).mean
const isSaturday = (place: number) => place % 7 === 5

describe('days ahead', () => {
  it('[Q1] given a day that is learnt, when it or one before it is asked for or learnt, then it is refused as our own fault', () => {
    const learner = learnt(daysOf(3, () => ({ sesame: 20 })))
    const past = dateAfter(MONDAY, 2)
    expect(() => learner.ahead(askedOf(past))).toThrow(/not after 2026-01-07/)
    expect(() => learner.learn(dayOf(past, { sesame: 20 }))).toThrow(/not after 2026-01-07/)
    expect(learner.ahead(askedOf(dateAfter(MONDAY, 3))).size).toBe(1)
  })

  it('[Q2] given the same days with items and guesses in another order, when asked, then every number is the same', () => {
    const pieces = fc.record({ sesame: fc.nat(40), poppy: fc.nat(9), onion: fc.nat(3), salt: fc.nat(90) })
    fc.assert(
      fc.property(fc.array(pieces, { minLength: 15, maxLength: 30 }), (all) => {
        const guesses = ['sesame', 'onion', 'salt'].map((id) => ({ id, group: 'plain', usual: null }))
        const days = daysOf(all.length, (place) => all[place] ?? {})
        const turned = days.map((day) => ({ ...day, items: new Map([...day.items].reverse()) }))
        const asked = askedOf(dateAfter(MONDAY, all.length), 'fair')
        const one = learnt(days, guesses).ahead(asked)
        const other = learnt(turned, guesses.toReversed()).ahead(asked)
        expect(new Map([...other].sort())).toEqual(new Map([...one].sort()))
      }),
      { numRuns: 20 },
    )
  })

  it('[Q3] given any days, when a day is asked for, then its mean is level times weekday times special day', () => {
    const learner = learnt(daysOf(28, (place) => ({ sesame: isSaturday(place) ? 60 : 30 })))
    const { mean, parts } = of(learner, 'sesame', askedOf(dateAfter(MONDAY, 33), 'fair'))
    expect(parts.level * parts.weekday * parts.special).toBeCloseTo(mean, 9)
    expect(parts.weekday).toBeGreaterThan(1.4)
  })

  it('[Q4] given a guess of 40 and days that sell 20, when asked from the first day on, then it moves from one to the other and says what it rests on', () => {
    const learner = new Learner([{ id: 'sesame', group: null, usual: 40 }])
    const first = of(learner, 'sesame', askedOf(MONDAY))
    expect(first).toMatchObject({ basis: 'guess' })
    expect(first.mean).toBeCloseTo(40, 0)
    // A guess is off by half: k of 4 or less.
    expect(first.dispersion).toBeLessThan(4)
    const means = [first.mean]
    for (const day of daysOf(20, () => ({ sesame: 20 }))) {
      learner.learn(day)
      const next = of(learner, 'sesame', askedOf(dateAfter(day.date, 1)))
      means.push(next.mean)
      expect(next.basis).toBe(means.length <= 14 ? 'few' : 'many')
    }
    expect(means.slice(0, 8)).toEqual(means.slice(0, 8).toSorted((one, other) => other - one))
    expect(means[7]).toBeLessThan(26)
    expect(means[20]).toBeCloseTo(20, -0.5)
    expect(of(learner, 'sesame', askedOf(dateAfter(MONDAY, 20))).dispersion).toBeGreaterThan(8)
  })

  it('[Q5] given a new item of a group that sells 30 a day, when nobody guessed, then it is forecast as the group’s, unsure', () => {
    const guesses = ['sesame', 'poppy', 'onion'].map((id) => ({ id, group: 'plain', usual: null }))
    const learner = learnt(
      daysOf(21, () => ({ sesame: 30, poppy: 30 })),
      [...guesses, { id: 'cocoa', group: 'sweet', usual: null }],
    )
    const onion = of(learner, 'onion', askedOf(dateAfter(MONDAY, 21)))
    expect(onion.mean).toBeCloseTo(30, -1)
    expect(onion).toMatchObject({ basis: 'guess' })
    expect(onion.dispersion).toBeLessThan(2)
    const cocoa = of(learner, 'cocoa', askedOf(dateAfter(MONDAY, 21)))
    expect(cocoa.mean).toBeLessThan(2)
    expect(cocoa.basis).toBe('nothing')
  })

  it('[Q5] given guesses of 90 and 40 in a dough, when nothing has sold yet, then a third variety of it is taken to be as those', () => {
    const learner = new Learner([
      { id: 'sesame', group: 'plain', usual: 90 },
      { id: 'poppy', group: 'plain', usual: 40 },
      { id: 'onion', group: 'plain', usual: null },
      { id: 'cocoa', group: 'sweet', usual: null },
    ])
    // The geometric mean: √(90 · 40).
    expect(of(learner, 'onion', askedOf(MONDAY)).mean).toBeCloseTo(60, -1)
    expect(of(learner, 'onion', askedOf(MONDAY))).toMatchObject({ basis: 'guess' })
    expect(of(learner, 'cocoa', askedOf(MONDAY)).mean).toBeLessThan(2)
    expect(of(learner, 'cocoa', askedOf(MONDAY)).basis).toBe('nothing')
    // Its first day says something.
    learner.learn(dayOf(MONDAY, { cocoa: 9 }))
    expect(of(learner, 'cocoa', askedOf(dateAfter(MONDAY, 1))).basis).toBe('few')
  })

  it('[Q6] given Saturdays that sell twice as much, when an item came a week ago, then its Saturday is lifted as well', () => {
    const days = daysOf(54, (place) => {
      const times = isSaturday(place) ? 2 : 1
      return { sesame: 40 * times, poppy: 25 * times, ...(place >= 48 ? { onion: 20 } : {}) }
    })
    const learner = learnt(days)
    const [saturday, monday] = [meanOn(learner, 'sesame', 54), meanOn(learner, 'sesame', 56)]
    expect(saturday / monday).toBeGreaterThan(1.8)
    expect(meanOn(learner, 'onion', 54) / meanOn(learner, 'onion', 56)).toBeGreaterThan(1.6)
  })

  it('[Q6] given one item that sells on Sundays as others do on Saturdays, when asked, then its own weekday wins over the shop’s', () => {
    const days = daysOf(84, (place) => ({
      sesame: isSaturday(place) ? 80 : 40,
      poppy: isSaturday(place) ? 80 : 40,
      rye: place % 7 === 6 ? 80 : 40,
    }))
    const learner = learnt(days)
    expect(meanOn(learner, 'rye', 90) / meanOn(learner, 'rye', 89)).toBeGreaterThan(1.4)
  })

  it('[Q7] given fairs that double sales, when a fair is asked for, then every item is lifted and plain days are as before', () => {
    const days = Array.from({ length: 60 }, (_, place) => {
      const isFair = place % 20 === 9
      const [sesame, poppy] = isFair ? [80, 40] : [40, 20]
      return dayOf(dateAfter(MONDAY, place), { sesame, poppy }, ...(isFair ? ['fair'] : []))
    })
    const learner = learnt(days)
    const date = dateAfter(MONDAY, 60)
    const fair = of(learner, 'poppy', askedOf(date, 'fair'))
    expect(fair.parts.special).toBeGreaterThan(1.6)
    expect(fair.mean / of(learner, 'poppy', askedOf(date)).mean).toBeCloseTo(fair.parts.special, 9)
    expect(of(learner, 'poppy', askedOf(date)).mean).toBeCloseTo(20, -0.5)
    expect(of(learner, 'poppy', askedOf(date, 'snow')).parts.special).toBe(1)
  })

  it('[Q7] given the first fair ever, when the plain day after it is asked for, then it is as it was', () => {
    const days = daysOf(30, () => ({ sesame: 30, poppy: 12 }))
    const learner = learnt(days)
    const date = dateAfter(MONDAY, 31)
    const before = of(learner, 'sesame', askedOf(date)).mean
    learner.learn(dayOf(dateAfter(MONDAY, 30), { sesame: 60, poppy: 24 }, 'fair'))
    expect(of(learner, 'sesame', askedOf(date)).mean).toBeCloseTo(before, 0)
    expect(of(learner, 'sesame', askedOf(date, 'fair')).mean).toBeGreaterThan(1.4 * before)
  })

  it('[Q8] given days on which an item is not on the menu, when they are learnt, then its forecast stays as it was', () => {
    const off = { offered: false }
    const before = learnt(daysOf(20, () => ({ sesame: 30, poppy: 12 })))
    const after = learnt(daysOf(27, (place) => ({ sesame: 30, poppy: place < 20 ? 12 : off })))
    const was = of(before, 'poppy', askedOf(dateAfter(MONDAY, 20)))
    const is = of(after, 'poppy', askedOf(dateAfter(MONDAY, 27)))
    expect(is.parts.level).toBeCloseTo(was.parts.level, 9)
    expect(is.basis).toBe(was.basis)
  })

  it('[Q9] given an item that nobody buys for ten days and then again, when asked, then little is expected meanwhile and at once what it used to sell', () => {
    const days = daysOf(41, (place) => ({ sesame: 30, soup: place >= 30 && place < 40 ? 0 : 15 }))
    const learner = learnt(days.slice(0, 30))
    const means: number[] = []
    for (const day of days.slice(30)) {
      learner.learn(day)
      means.push(of(learner, 'soup', askedOf(dateAfter(day.date, 1))).mean)
    }
    expect(means[9]).toBeLessThan(3)
    expect(means[10]).toBeGreaterThan(13)
  })

  it('[Q9] given an item that days leave out, when they are learnt, then none of it was sold', () => {
    const left = learnt(daysOf(40, (place) => ({ sesame: 30, ...(place < 30 ? { soup: 15 } : {}) })))
    const none = learnt(daysOf(40, (place) => ({ sesame: 30, soup: place < 30 ? 15 : 0 })))
    expect(left.ahead(askedOf(dateAfter(MONDAY, 40)))).toEqual(none.ahead(askedOf(dateAfter(MONDAY, 40))))
    // One that never sold may not have been there yet.
    const guessed = learnt(
      daysOf(40, () => ({ sesame: 30 })),
      [{ id: 'rye', group: null, usual: 20 }],
    )
    expect(meanOn(guessed, 'rye', 40)).toBeCloseTo(20, 0)
  })

  it('[Q9] given an item for Saturdays only, when nobody says so, then it is expected on Saturdays', () => {
    const learner = learnt(daysOf(110, (place) => ({ sesame: 40, rye: isSaturday(place) ? 30 : 0 })))
    expect(meanOn(learner, 'rye', 110)).toBeGreaterThan(20)
    learner.learn(dayOf(dateAfter(MONDAY, 110), { sesame: 40, rye: 30 }))
    expect(meanOn(learner, 'rye', 113)).toBeLessThan(4)
  })

  it('[Q18] given an item that nobody has bought for a week, when two and three days ahead are asked for, then it is likelier back, and others are as ever', () => {
    const learner = learnt(daysOf(35, (place) => ({ sesame: 30, soup: place < 28 ? 15 : 0 })))
    const [soup, sesame] = ['soup', 'sesame'].map((id) => [35, 36, 37].map((place) => meanOn(learner, id, place)))
    expect(soup).toEqual(soup?.toSorted((one, other) => one - other))
    expect(soup?.[2]).toBeGreaterThan(1.5 * (soup?.[0] ?? 0))
    for (const mean of sesame ?? []) expect(mean).toBeCloseTo(30, 0)
  })

  it('[Q18] given a shop that is closed on Sundays, when Monday is asked for on Saturday night, then it is one day ahead', () => {
    const days = daysOf(41, (place) => ({ sesame: 30, soup: place < 34 ? 15 : 0 }))
    const learner = learnt(days.filter((_, place) => place % 7 !== 6))
    const every = learnt(days)
    expect(days.at(-2)?.date).toBe('2026-02-13')
    const steps = (one: Learner, from: number) => meanOn(one, 'soup', from + 1) / meanOn(one, 'soup', from)
    // From Saturday on: Sunday is no day on which it could have come back.
    expect(steps(learner, 41)).toBeLessThan(1.05)
    expect(steps(every, 41)).toBeGreaterThan(1.2)
  })

  it('[Q11] given pieces that nobody saw go, when a day is learnt, then they count as much as those that were seen', () => {
    const seen = learnt(daysOf(10, () => ({ sesame: 30 })))
    const unseen = learnt(daysOf(10, () => ({ sesame: { sold: singles(20), unseen: 10 } })))
    expect(meanOn(unseen, 'sesame', 10)).toBeCloseTo(meanOn(seen, 'sesame', 10), 6)
  })

  it('[Q12] given as many pieces a day by the dozen as one at a time, when asked, then the dozens spread further', () => {
    const dozens = (place: number) => ({
      sold: Array.from({ length: [1, 2, 3, 2][place % 4] ?? 0 }, (_, at) => ({ minute: 400 + at * 60, pieces: 12 })),
    })
    const learner = learnt(daysOf(40, (place) => ({ single: 24, dozen: dozens(place) })))
    const asked = askedOf(dateAfter(MONDAY, 40))
    const [single, dozen] = [of(learner, 'single', asked), of(learner, 'dozen', asked)]
    expect(dozen.mean).toBeCloseTo(single.mean, -1)
    expect(variance(dozen)).toBeGreaterThan(3 * variance(single))
  })

  it('[Q12] given items that stray by a tenth and by eight tenths of their mean, when asked, then each spreads as far as it has', () => {
    const { upTo } = drawer(3)
    // Even between 1 − s and 1 + s: a variance of s² / 3 of the mean squared.
    const strayed = (mean: number, most: number) => Math.round(mean * (1 - most + (2 * most * upTo(1000)) / 1000))
    const learner = learnt(daysOf(150, () => ({ steady: strayed(120, 0.1), wild: strayed(120, 0.8) })))
    const asked = askedOf(dateAfter(MONDAY, 150))
    const spreadOf = (id: string) => Math.sqrt(variance(of(learner, id, asked))) / of(learner, id, asked).mean
    expect(spreadOf('wild')).toBeGreaterThan(0.8 * Math.sqrt(0.64 / 3))
    expect(spreadOf('wild')).toBeLessThan(1.4 * Math.sqrt(0.64 / 3))
    expect(spreadOf('steady')).toBeLessThan(0.2)
  })

  it('[Q13] given a single day of ten times as much, when the next is asked for, then it follows by a few pieces only', () => {
    const learner = learnt(daysOf(30, (place) => ({ sesame: place === 29 ? 300 : 30 })))
    expect(meanOn(learner, 'sesame', 30)).toBeLessThan(36)
    expect(meanOn(learner, 'sesame', 30)).toBeGreaterThan(30)
  })
})

describe('days that sold out', () => {
  it('[Q10] given any day that sold out at any minute, when compared with the same sales all day, then no forecast of the days after is lower', () => {
    const some = fc.record({ sold: fc.nat(30), goneAt: fc.integer({ min: OPEN, max: CLOSE - 1 }) })
    const history = fc.array(fc.record({ sesame: fc.nat(40), poppy: fc.nat(4) }), { minLength: 1, maxLength: 30 })
    fc.assert(
      fc.property(history, some, fc.constantFrom('sesame', 'poppy'), (all, { sold, goneAt }, id) => {
        const days = daysOf(all.length, (place) => all[place] ?? {})
        const date = dateAfter(MONDAY, all.length)
        const pieces = singles(sold, goneAt)
        const whole = dayOf(date, { sesame: 20, poppy: 2, [id]: { sold: pieces } })
        const gone = [{ fromMinute: goneAt, toMinute: CLOSE }]
        const cut = dayOf(date, { sesame: 20, poppy: 2, [id]: { sold: pieces, gone } })
        const [uncensored, censored] = [learnt([...days, whole]), learnt([...days, cut])]
        for (let next = 1; next <= 7; next += 1) {
          const asked = askedOf(dateAfter(date, next))
          for (const [each, demand] of uncensored.ahead(asked)) {
            expect(of(censored, each, asked).mean).toBeGreaterThanOrEqual(demand.mean * (1 - 1e-9))
          }
        }
      }),
      { numRuns: 100 },
    )
  })

  it('[Q10] given a demand of 40 a day that sells out at 25 each day, when asked, then far more than 25 is forecast', () => {
    // Even sales all day, so that 25 of 40 are gone after 25/40 of it.
    const goneAt = OPEN + ((CLOSE - OPEN) * 25) / 40
    const gone = [{ fromMinute: goneAt, toMinute: CLOSE }]
    const days = daysOf(40, (place) => ({
      sesame: place < 20 ? 40 : { sold: singles(25, goneAt), gone },
      poppy: 40,
    }))
    const learner = learnt(days)
    expect(meanOn(learner, 'sesame', 40)).toBeGreaterThan(36)
    expect(meanOn(learner, 'sesame', 40)).toBeLessThan(44)
  })
})

function variance({ mean, dispersion }: DayDemand): number {
  return mean + mean ** 2 / dispersion
}
