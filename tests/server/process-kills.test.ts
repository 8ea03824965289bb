import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import type { Moment } from '../kills/moments.ts'
import { freePort, KILLING_SQLITE, ShopUnderLoad } from '../kills/shop-under-load.ts'
import { SERVER, withServerProcesses } from './support/server-process.ts'
import { tempFolder } from './support/temp-folder.ts'

withServerProcesses(KILLING_SQLITE)

const at = (kind: 'write' | 'snapshot' | 'migration' | 'opening', statement: string, count: number): Moment => ({
  kind,
  at: statement,
  count,
  when: 'before',
  isAtStop: kind === 'snapshot',
})

/** One of each kind, in an order in which each has something to meet; `npm run kills` draws hundreds. */
const MOMENTS: readonly Moment[] = [
  at('migration', 'CREATE TABLE refusals', 1),
  { kind: 'load', afterMs: 150 },
  at('write', 'INSERT INTO entries', 4),
  at('write', '^COMMIT', 6),
  at('snapshot', 'INSERT OR REPLACE INTO snapshots', 1),
  at('migration', 'user_version = ', 1),
  { kind: 'stop', afterMs: 60 },
  { kind: 'start', afterMs: 200 },
  { kind: 'load', afterMs: 40 },
  // Long enough to end by itself.
  { kind: 'stop', afterMs: 30_000 },
]

describe('a server that is killed while screens and scripts are at work', () => {
  it('[W5, W11, W12, W13] given kills in a start, a write, a snapshot, a step of the form, a stop and under load, when started again, then nothing answered is lost or done twice and all screens are the fold of the journal', async () => {
    const parts = { sqlite: await loadSqlite(), program: SERVER, folder: join(tempFolder(), 'kills'), seed: 20_261_124 }
    const shop = new ShopUnderLoad({ ...parts, port: await freePort() })
    for (const moment of MOMENTS) {
      const { isMet, code } = await shop.round(moment)
      expect([moment, isMet]).toEqual([moment, true])
      expect(shop.ledger.troubles).toEqual([])
      if (moment === MOMENTS.at(-1)) expect(code).toBe(0)
    }
    await shop.end()
    expect(shop.ledger.troubles).toEqual([])
    expect(shop.ledger.entries).toBeGreaterThan(20)
  }, 180_000)
})
