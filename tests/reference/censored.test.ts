import { describe, expect, it } from 'vitest'
import type { Profile } from '../../shared-core/demand/demand.ts'
import { exposureOf } from '../../shared-core/demand/exposure.ts'
import { negativeBinomial, quantile } from '../../shared-core/demand/pieces.ts'
import { restOf } from '../../shared-core/demand/rest.ts'
import { told } from '../../shared-core/demand/told.ts'
import { trueDemandOf } from '../../shared-core/demand/true-demand.ts'
import { updated } from '../../shared-core/stock/gamma-poisson.ts'
import { must } from '../../shared-core/support.ts'
import { dayOf, demandOf, itemDay, morningOf } from '../core/demand/drawn-days.ts'

/**
 * Sold-out days by the part of the day that was served, and the gamma–Poisson update. Figures computed with numpy and scipy,
 * not with this project's code. S / F as the maximum likelihood of a Poisson rate: from memory (gamma waiting time of the
 * S-th customer). The update: Gelman et al., Bayesian Data Analysis, section 2.6.
 */
const CUMULATIVE: Profile = [
  [420, 0],
  [480, 0.1],
  [540, 0.32],
  [600, 0.56],
  [660, 0.72],
  [720, 0.85],
  [780, 0.95],
  [840, 1],
]
const SOLD_OUT = [
  { sold: 84, at: 680, part: 0.76333333, divided: 110.04366812 },
  { sold: 60, at: 570, part: 0.44, divided: 136.36363636 },
  { sold: 96, at: 765, part: 0.925, divided: 103.78378378 },
  { sold: 70, at: 840, part: 1, divided: 70 },
]
const goneFrom = (fromMinute: number) => (fromMinute < 840 ? [{ fromMinute, toMinute: 840 }] : [])

describe('the part of a day that was served', () => {
  it.each(SOLD_OUT)('[Q35] given $sold sold by minute $at, then the part is $part and sold over it $divided', (row) => {
    const part = exposureOf(CUMULATIVE, goneFrom(row.at))
    expect(part).toBeCloseTo(row.part, 8)
    expect(row.sold / part).toBeCloseTo(row.divided, 6)
  })

  it('[Q35] given the four days, when pooled, then 99.0943, and with a prior Gamma(25, 0.25) 99.1613', () => {
    const events = SOLD_OUT.reduce((sum, { sold }) => sum + sold, 0)
    const exposure = SOLD_OUT.reduce((sum, { at }) => sum + exposureOf(CUMULATIVE, goneFrom(at)), 0)
    expect(events / exposure).toBeCloseTo(99.09429941, 6)
    const { shape, exposure: all } = updated({ shape: 25, exposure: 0.25 }, { events, exposure })
    expect([shape, shape / all]).toEqual([335, expect.closeTo(99.16132215, 6)])
  })

  it('[Q35] given a rate that is known to be 110, when 84 were sold by 11:20, then the day would have asked for 110.0333', () => {
    const demand = new Map([['plain', demandOf(110, Number.POSITIVE_INFINITY, CUMULATIVE)]])
    const day = {
      ...dayOf({ plain: itemDay([{ minute: 600, pieces: 84 }], { gone: goneFrom(680) }) }),
      openMinute: 420,
    }
    expect(must(trueDemandOf(demand, day, morningOf(1)), 'plain')).toBeCloseTo(110.03333333, 6)
  })

  it('[Q35] given it was gone in the first instant, when estimated, then it is the forecast and not without end', () => {
    const demand = new Map([['plain', demandOf(40, 6, CUMULATIVE)]])
    const day = { ...dayOf({ plain: itemDay([], { gone: goneFrom(420) }) }), openMinute: 420 }
    expect(must(trueDemandOf(demand, day, morningOf(1)), 'plain')).toBeCloseTo(40, 9)
  })
})

describe('the gamma–Poisson update', () => {
  it('[Q35] given a prior Gamma(4, 2) and 3, 5, 2 and 6, then Gamma(20, 6)', () => {
    // As a rate over what was expected: Gamma(4, 4), sixteen pieces where eight were expected.
    const { factor, shape } = told({ spread: 1 / 4, part: 1, lump: 1 }, 16, 8)
    expect(shape).toBeCloseTo(20, 12)
    expect(2 * factor).toBeCloseTo(3.33333333, 8)
  })

  it('[Q35] given a day of five such stretches, when four are over, then the fifth is NB with quantiles 3, 5, 6 and 7', () => {
    const even: Profile = [
      [360, 0],
      [860, 1],
    ]
    const day = dayOf({ plain: itemDay([3, 5, 2, 6].map((pieces, place) => ({ minute: 400 + 100 * place, pieces }))) })
    const rest = must(restOf(new Map([['plain', demandOf(10, 4, even)]]), day, 760, morningOf(1)), 'plain')
    const pieces = negativeBinomial(rest.mean, rest.dispersion)
    expect(pieces.variance).toBeCloseTo(3.88888889, 8)
    expect([0.5, 0.8, 0.9, 0.95].map((part) => quantile(pieces, part))).toEqual([3, 5, 6, 7])
    expect(pieces.cdf(0)).toBeCloseTo(0.04582096, 8)
  })
})
