import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { FINDS } from './finds.ts'
import { BUGS, calmOptions, drawnOptions } from './options.ts'
import { FAULT_KINDS } from './story.ts'
import { World } from './world.ts'

const MINUTES = 10
const FIXED_SEEDS = Array.from({ length: 20 }, (_, n) => 1_001 + n)
const fired = new Map<string, number>()

describe('simulated days', () => {
  it.each(FINDS)(
    '[C15] given seed $seed ($found), then screens agree after healing',
    async ({ seed, minutes, change }) => {
      expect(await new World({ ...drawnOptions(seed, minutes), ...change }).run()).toBeNull()
    },
  )

  it.each(FIXED_SEEDS)('[C15] given seed %i, then screens agree after healing', async (seed) => {
    const world = new World(drawnOptions(seed, MINUTES))
    const trouble = await world.run()
    for (const [kind, times] of world.story.faults) fired.set(kind, (fired.get(kind) ?? 0) + times)
    expect(trouble).toBeNull()
  })

  it('given all of these, then every kind of fault has fired', () => {
    expect([...fired.keys()].sort()).toEqual([...FAULT_KINDS].sort())
  })

  it('given the same seed again, then the same day', async () => {
    const [one, other] = [new World(drawnOptions(7, 4)), new World(drawnOptions(7, 4))]
    await one.run()
    await other.run()
    expect(hashState(other.checks.replay)).toBe(hashState(one.checks.replay))
    expect(String(other.story)).toBe(String(one.story))
  })
})

describe('the alarm works', () => {
  it.each(BUGS.filter((bug) => bug !== 'none'))('given %s, then the checks say so', async (bug) => {
    const found: string[] = []
    for (let seed = 1; found.length === 0 && seed <= 10; seed += 1) {
      const trouble = await new World({
        ...drawnOptions(seed, 8),
        repeatPermille: 50,
        appendFaultPermille: 120,
        serverClockPermille: 0,
        bug,
      }).run()
      if (trouble !== null) found.push(trouble)
    }
    expect(found).toHaveLength(1)
    expect(found[0]).toMatch(/^seed \d+: /)
  })

  it('given a day on which nothing goes wrong, then it is said to prove nothing', async () => {
    expect(await new World(calmOptions(1, 3)).run()).toContain('it proves nothing')
  })
})
