import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PACE_LEAST, PACE_MOST, paceFrom, TESTS_MAX, taught } from '../../../shared-core/ferment/teach.ts'
import { doughId } from '../../../shared-core/ids.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at } from '../support/make.ts'

const notReady = (share: number) => ({ share, passed: false })
const passed = (share: number) => ({ share, passed: true })
const anyTest = fc.record({ share: fc.integer({ min: 0, max: 3_000 }), passed: fc.boolean() })

describe('what float and poke tests teach', () => {
  it('[D49] given no test, then the set-up’s window', () => {
    expect(paceFrom([])).toBe(1_000)
  })

  it('[D49] given a dough that is ready at 1150 on five mornings, then its pace comes near that', () => {
    const morning = [notReady(1_000), notReady(1_075), passed(1_150)]
    const five = paceFrom([morning, morning, morning, morning, morning].flat())
    // Between 1075, not ready, and 1150: the nearer to the set-up's.
    expect(five).toBe(1_075)
    expect(paceFrom(morning)).toBe(1_022)
    expect(paceFrom(morning)).toBeLessThan(five)
  })

  it('[D49] given one odd test among good ones, then little changes', () => {
    const good = [passed(1_020), notReady(950), passed(1_040), notReady(960), passed(1_010), notReady(970)]
    expect(Math.abs(paceFrom([...good, notReady(1_900)]) - paceFrom(good))).toBeLessThan(25)
    expect(Math.abs(paceFrom([...good, passed(100)]) - paceFrom(good))).toBeLessThan(25)
  })

  it('[D49] given passes when the board said so or later, however many, then nothing is learnt: the board was right', () => {
    expect(paceFrom([passed(2_000)])).toBe(1_000)
    expect(paceFrom(Array.from({ length: TESTS_MAX }, (_, n) => passed(1_000 + n)))).toBe(1_000)
  })

  it('[D49] given a dough that is ready at 900 on ten mornings, then it is believed, little by little', () => {
    const mornings = (count: number) => paceFrom(Array.from({ length: count }, () => passed(900)))
    expect([mornings(1), mornings(2), mornings(10)]).toEqual([978, 956, 900])
  })

  it('[D49] given any tests and one more, then a pass makes no dough slower, a "not ready" none quicker, within bounds', () => {
    fc.assert(
      fc.property(fc.array(anyTest, { maxLength: 12 }), fc.integer({ min: 0, max: 3_000 }), (tests, share) => {
        const before = paceFrom(tests)
        expect(paceFrom([...tests, passed(share)])).toBeLessThanOrEqual(before)
        expect(paceFrom([...tests, notReady(share)])).toBeGreaterThanOrEqual(before)
        expect(before).toBeGreaterThanOrEqual(PACE_LEAST)
        expect(before).toBeLessThanOrEqual(PACE_MOST)
      }),
      { numRuns: 60 },
    )
  })

  it('[D49] given more tests than are kept, then the oldest go, whatever order they arrive in', () => {
    const plain = doughId('plain')
    let teaching = taught(undefined, { doughId: plain, atMs: at('6:00'), share: 900, passed: false })
    for (let n = 1; n <= TESTS_MAX; n += 1) {
      teaching = taught(teaching, { doughId: plain, atMs: epochMs(at('6:00') - n * 1_000), share: 1_000, passed: true })
    }
    expect(teaching.tests).toHaveLength(TESTS_MAX)
    expect(teaching.tests.at(-1)).toEqual({ atMs: at('6:00'), share: 900, passed: false })
    expect(teaching.pace).toBe(paceFrom(teaching.tests))
    expect(Number.isInteger(teaching.pace)).toBe(true)
  })
})
