import { describe, expect, it } from 'vitest'
import { doughId } from '../../../shared-core/ids.ts'
import { Carry, carryNow } from '../../../shared-core/plan/carried.ts'
import type { PlanParts } from '../dough/plan-make.ts'
import { doughShop, noonOf, planState, THURSDAY, TOMORROW } from '../dough/plan-make.ts'
import { at, batch, until } from '../support/make.ts'

const PLAIN = doughId('plain')

/** Chilled since last evening, good until so many hours later; the day after today's work is over. */
const chilled = (id: string, pieces: number, latest: number) =>
  batch({
    id,
    stage: 'chill',
    dough: 'plain',
    pieces,
    since: at('18:00', -1),
    until: { ...until('2:00', '8:00', '8:00'), latestAtMs: at('18:00', latest) },
  })

function carryOf(parts: PlanParts, date = THURSDAY): Carry {
  const state = planState({ recordedAt: at('14:00'), ...parts })
  return new Carry(doughShop(), noonOf, carryNow({ state, shop: doughShop(), noonOf }, date))
}

describe('what is there for a day to come', () => {
  it('[Q59] given 40 chilled for two days, when tomorrow is advised 24, then 16 are there for the day after', () => {
    const carry = carryOf({ batches: [chilled('a', 40, 2)] })
    expect(carry.on(TOMORROW).get(PLAIN)).toBe(40)
    carry.pass(TOMORROW, new Map([[PLAIN, 24]]))
    expect(carry.on(THURSDAY).get(PLAIN)).toBe(16)
  })

  it('[Q59] given pieces typed for tomorrow, orders with them, when it is passed, then these count, not the advice', () => {
    const wanted = { [TOMORROW]: { plain: 30 } }
    const carry = carryOf({ batches: [chilled('a', 40, 2)], wanted, ordered: { [TOMORROW]: { plain: 6 } } })
    carry.pass(TOMORROW, new Map([[PLAIN, 10]]))
    expect(carry.on(THURSDAY).get(PLAIN)).toBe(4)
    expect(carry.orders(TOMORROW, new Map())).toEqual([{ doughId: PLAIN, varietyId: null, pieces: 6 }])
  })

  it('[Q59] given two chills, when tomorrow takes some, then of the one whose window closes first; past it none is there', () => {
    const carry = carryOf({ batches: [chilled('late', 20, 2), chilled('soon', 20, 1)] })
    expect(carry.on(THURSDAY).get(PLAIN)).toBe(20)
    carry.pass(TOMORROW, new Map([[PLAIN, 20]]))
    expect(carry.on(THURSDAY).get(PLAIN)).toBe(20)
  })

  it('[Q59] given today still open and nothing said of it, when it is passed, then all that is chilled is today’s', () => {
    const carry = carryOf({ batches: [chilled('a', 40, 2)], recordedAt: at('5:00') })
    carry.pass('2026-11-24', new Map())
    expect(carry.on(TOMORROW).get(PLAIN)).toBeUndefined()
  })
})
