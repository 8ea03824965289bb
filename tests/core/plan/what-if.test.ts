import { describe, expect, it } from 'vitest'
import { bakeOffOf } from '../../../shared-core/plan/bake-off-of.ts'
import { bottleneckOf } from '../../../shared-core/plan/bottleneck.ts'
import type { WhatIfChange } from '../../../shared-core/plan/what-if.ts'
import { whatIf } from '../../../shared-core/plan/what-if.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { at, lines } from '../support/make.ts'
import { asking, eveningLine, SHOP } from './plan-day-support.ts'

/** A kettle that is slow for its shop: it is what is short. */
const TIGHT = asking({
  shop: { ...SHOP, kettle: { ...SHOP.kettle, pieces: 6, cycleMs: durationMs(480_000) } },
})
const gain = (change: WhatIfChange, asked = TIGHT) => {
  const { before, after } = whatIf(asked, change)
  return after.profitCents - before.profitCents
}

describe('what if', () => {
  it('[I38] more of anything never brings less, and a faster kettle brings most where it is short', () => {
    const kettle = gain({ kind: 'kettle', cycleMs: durationMs(120_000) })
    const [shelf, boards] = [gain({ kind: 'shelf' }), gain({ kind: 'boards', more: 10 })]
    for (const cents of [kettle, shelf, boards]) expect(cents).toBeGreaterThanOrEqual(0)
    expect(kettle).toBeGreaterThan(150)
    expect(kettle).toBeGreaterThan(Math.max(shelf, boards))
  })

  it('[I38] a changeover later never brings less, one sooner never more', () => {
    expect(gain({ kind: 'changeover', byMs: 30 * 60_000 })).toBeGreaterThanOrEqual(0)
    expect(gain({ kind: 'changeover', byMs: -120 * 60_000 })).toBeLessThan(0)
  })

  it('[I38] an order takes pieces, and what of it is missing is a figure; an earlier opening starts sooner', () => {
    const order = whatIf(asking(), { kind: 'order', dueAtMs: at('8:15'), lines: lines('rye', 90) })
    expect(order.before.missing).toBe(0)
    expect(order.after.missing).toBeCloseTo(30, 0)
    const sooner = whatIf(asking(), { kind: 'opening', earlierMs: durationMs(60 * 60_000) })
    expect(sooner.after.firstKettleAtMs).toBeLessThan(sooner.before.firstKettleAtMs ?? 0)
  })

  it('[I38] with fewer people crew time falls, and with none there nothing is baked; where nobody said who is there, nothing changes', () => {
    const people = [{ fromMinute: 240, people: 2 }]
    const crew = asking({ shop: { ...SHOP, baking: { ...SHOP.baking, people } } })
    const one = whatIf(crew, { kind: 'people', fewer: 1 })
    expect(one.after.crewMinutes).toBeLessThan(one.before.crewMinutes ?? 0)
    expect(whatIf(crew, { kind: 'people', fewer: 2 }).after.baked).toBe(0)
    expect(gain({ kind: 'people', fewer: 1 }, asking())).toBe(0)
  })
})

describe('the bottleneck', () => {
  it('[I39] is the kettle where that is slow, dough where that is short, and none where there is enough of all', () => {
    expect(bottleneckOf(bakeOffOf(TIGHT), [])?.of).toBe('kettle')
    const little = eveningLine({ doughs: eveningLine().doughs.map((lot) => ({ ...lot, pieces: 30 })) })
    expect(bottleneckOf(bakeOffOf(asking({ line: little })), [])?.of).toBe('dough')
    const quiet = new Map([...asking().demand].map(([id, one]) => [id, { ...one, mean: one.mean / 8 }]))
    expect(bottleneckOf(bakeOffOf(asking({ demand: quiet })), [])).toBeNull()
  })
})
