import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { FAULT_KINDS } from './faults.ts'
import { FINDS } from './finds.ts'
import { oneDay } from './one-day.ts'
import type { Bug, WorldOptions } from './options.ts'
import { BUGS, calmOptions, drawnOptions, SHORT_DAY_MINUTES } from './options.ts'
import { findLine, shrink } from './shrink.ts'
import { Tally } from './tally.ts'
import { World } from './world.ts'

/** Whole days, each with all hours of a shop in a quarter of an hour. */
const DAYS_A_TEST = 10
const FIXED_SEEDS = Array.from({ length: 20 }, (_, n) => 1_001 + n * DAYS_A_TEST)
const FILE_SEEDS = [3, 9]

const shortDay = (seed: number): WorldOptions => drawnOptions(seed, SHORT_DAY_MINUTES)

describe('simulated days', () => {
  const tally = new Tally()

  it.each(FINDS)('[C15] given seed $seed ($found), then all holds', async ({ seed, dayMinutes, change }) => {
    expect((await oneDay({ ...drawnOptions(seed, dayMinutes), ...change })).report).toBeNull()
  })

  it.each(FIXED_SEEDS)(
    '[C15] given 10 days from seed %i on, then all holds at each step, and screens agree after healing',
    async (first) => {
      for (let seed = first; seed < first + DAYS_A_TEST; seed += 1) {
        const result = await oneDay(shortDay(seed))
        expect(result.report).toBeNull()
        tally.add(result)
      }
    },
  )

  it('given all of these, then every kind of fault has fired and every kind of act was done', () => {
    expect(tally.days).toBe(FIXED_SEEDS.length * DAYS_A_TEST)
    expect(tally.missing()).toEqual([])
  })

  it.each(FILE_SEEDS)('[C15] given seed %i on a real file, then all holds', async (seed) => {
    expect((await oneDay({ ...shortDay(seed), isOnFile: true })).report).toBeNull()
  })

  it('given the same seed again, then the same day', async () => {
    const [one, other] = [new World(shortDay(7)), new World(shortDay(7))]
    await one.run()
    await other.run()
    expect(hashState(other.checks.replay)).toBe(hashState(one.checks.replay))
    expect(String(other.story)).toBe(String(one.story))
  })

  it('given days on which nothing goes wrong, then they are said to prove nothing', async () => {
    const calm = new Tally()
    calm.add(await oneDay(calmOptions(1, SHORT_DAY_MINUTES)))
    expect(calm.missing()).toContain('the fault restore never fired')
  })
})

/** The first of some days on which a planted bug is noticed. */
async function caught(bug: Bug, change: Partial<WorldOptions> = {}) {
  for (let seed = 1; seed <= 30; seed += 1) {
    const options: WorldOptions = { ...shortDay(seed), ...SO_THAT_IT_SHOWS, ...change, bug }
    const result = await oneDay(options)
    if (result.report !== null) return { options, result }
  }
  throw new Error(`nobody noticed that ${bug}`)
}

/** Much of what a bug needs to come out. */
const SO_THAT_IT_SHOWS = {
  screens: 5,
  actEveryMs: 15_000,
  repeatPermille: 30,
  appendFaultPermille: 60,
  devicePermille: 8,
  serverPermille: 8,
  setsServerClock: false,
} as const

describe('the alarm works', () => {
  it.each([
    ['a screen loses an entry', 'differs from the journal'],
    ['a page forgets its queue', 'is lost'],
    ['a screen trusts its clock', 'ms off and claims'],
    ['a screen lets people tap what it cannot keep and does not say so', 'does not say so'],
    // A repeat may be told first by pieces that would be there twice under one id.
    ['the server forgets its answers', /is done twice|was answered .* and then|accounted for/],
    ['the server miscounts a sale', 'accounted for'],
    // Which alarm is the first depends on the day; a screen may have folded what the disk forgot.
    ['the disk forgets the last append', /is done twice|and on disk as undefined|differs from the journal/],
    ['the copy lacks its last entry', 'is not the copy that was made'],
  ] as const)('given that %s, then the checks say so', async (bug, words) => {
    const { result, options } = await caught(bug)
    expect(result.report).toMatch(new RegExp(`^seed ${options.seed}: `))
    expect(result.trouble).toMatch(words)
  })

  // Only a screen that was away while as much was done anew as was cut off takes the new entries for the old ones.
  it('given that a copy put back is on the old course, then the checks say so', async () => {
    const without = FAULT_KINDS.filter((kind) => kind !== 'restore' && kind !== 'cut' && kind !== 'sleep')
    const change = { actEveryMs: 25_000, devicePermille: 12, serverPermille: 25, without }
    const { result } = await caught('a copy put back is on the old course', change)
    expect(result.trouble).toMatch(/is told fetched-anew|differs from the journal|does not show/)
  })

  it('given a day that goes wrong, then the smallest such day is found, and goes wrong again', async () => {
    const { options, result } = await caught('the copy lacks its last entry')
    const shrunk = await shrink(options, result, oneDay)
    expect(shrunk.options.untilSecond).toBeLessThanOrEqual(Math.ceil(result.atSecond))
    expect(shrunk.options.screens).toBeLessThan(options.screens)
    expect(shrunk.result.faults.map(([kind]) => kind)).toContain('restore')
    expect(shrunk.result.faults.length).toBeLessThan(result.faults.length)
    expect((await oneDay(shrunk.options)).report).toBe(shrunk.result.report)
    expect(findLine(shrunk)).toContain(`seed: ${options.seed},`)
    // Some fifty days on a machine that may be busy; the time only says "hung".
  }, 120_000)

  it('given the bugs, then each has its words here', () => {
    expect(BUGS).toHaveLength(10)
  })
})
