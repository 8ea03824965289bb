import { describe, expect, it } from 'vitest'
import { rolesOf } from '../../server/devices/permissions.ts'
import { AT_BENCH } from '../../shared-core/day/decide-bench.ts'
import { OUT_FRONT } from '../../shared-core/day/decide-out-front.ts'
import { ACT_TYPES } from '../core/support/any-act.ts'

describe('what screens decide by themselves', () => {
  it.each([
    ['wall', OUT_FRONT],
    ['counter', OUT_FRONT],
    ['bench', AT_BENCH],
  ] as const)('given all that the %s may do, then it has a decider of each', (role, deciders) => {
    const may = ACT_TYPES.filter((type) => rolesOf(type).includes(role))
    expect(may.length).toBeGreaterThan(15)
    expect(may.filter((type) => !(type in deciders))).toEqual([])
  })
})
