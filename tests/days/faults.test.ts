import { describe, expect, it } from 'vitest'
import type { FaultKind } from './faults.ts'
import { FAULT_KINDS } from './faults.ts'
import { oneDay } from './one-day.ts'
import { drawnOptions, SHORT_DAY_MINUTES } from './options.ts'
import { Tally } from './tally.ts'

const SEEDS = [1, 2, 3, 4]

/** Days on which these kinds of faults fire often, and no other. */
async function daysOf(kinds: readonly FaultKind[]): Promise<Tally> {
  const tally = new Tally()
  const without = FAULT_KINDS.filter((kind) => !kinds.includes(kind))
  for (const seed of SEEDS) {
    const often = { actEveryMs: 25_000, devicePermille: 12, serverPermille: 25, setsServerClock: false }
    const result = await oneDay({ ...drawnOptions(seed, SHORT_DAY_MINUTES), ...often, without })
    expect(result.report).toBeNull()
    tally.add(result)
  }
  for (const kind of kinds) expect(tally.faults.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(SEEDS.length)
  return tally
}

describe('one kind of trouble alone', () => {
  it('[C16] given copies that are put back while devices are away, then the shop is what it was then, and goes on', async () => {
    const tally = await daysOf(['restore', 'cut', 'sleep'])
    expect(tally.counts.get('cutOff')).toBeGreaterThanOrEqual(SEEDS.length)
  })

  it('[C17] given devices that can keep nothing more and are loaded anew, then what was kept goes out once', async () => {
    await daysOf(['store-full', 'reload', 'cut'])
  })

  it('[C18] given devices that are shown out and let in again, then what was tapped meanwhile counts once', async () => {
    await daysOf(['shown-out', 'reload'])
  })

  it('[C19] given a disk that is full or slow for a while, then nothing is acknowledged that is not on it', async () => {
    await daysOf(['disk-full', 'disk-slow'])
  })
})
