import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SimDisk } from './disk.ts'
import { FileDisk } from './file-disk.ts'
import type { WorldOptions } from './options.ts'
import { World } from './world.ts'

export interface DayResult {
  /** What went wrong that must not, in a line; null when all held. */
  readonly trouble: string | null
  /** The same with the seed, the options and the story of the day. */
  readonly report: string | null
  /** When the day ended, in seconds since it began: early, when something went wrong. */
  readonly atSecond: number
  readonly counts: Readonly<Record<string, number>>
  readonly faults: readonly (readonly [string, number])[]
  readonly taken: readonly (readonly [string, number])[]
}

/** One day of these options, from nothing to the end. The same options give the same day. */
export async function oneDay(options: WorldOptions): Promise<DayResult> {
  const disk = options.isOnFile ? new FileDisk(await loadSqlite()) : new SimDisk()
  const world = new World(options, disk)
  try {
    const report = await world.run()
    const { trouble, counts, taken } = world.checks
    const { atSecond } = world
    return { trouble, report, atSecond, counts, faults: [...world.faults.counts], taken: [...taken] }
  } finally {
    disk.end()
  }
}
