import { describe, expect, it } from 'vitest'
import { rolesOf } from '../../server/devices/permissions.ts'
import { OUT_FRONT } from '../../shared-core/day/decide-out-front.ts'
import { ACT_TYPES } from '../core/support/any-act.ts'

describe('what the wall and the counter decide by themselves', () => {
  it.each(['wall', 'counter'] as const)('given all that the %s may do, then it has a decider of each', (role) => {
    const may = ACT_TYPES.filter((type) => rolesOf(type).includes(role))
    expect(may.length).toBeGreaterThan(15)
    expect(may.filter((type) => !(type in OUT_FRONT))).toEqual([])
  })
})
