import { createHash } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { join } from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localDate } from '../live/shop-clock.ts'
import type { ImportDesk } from '../sales/import-desk.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import type { DemoAt } from './demo-at.ts'
import { demoShop } from './demo-shop.ts'
import { PAST_DAYS } from './past-days.ts'
import { tillHistory } from './till-history.ts'

/** Sixteen weeks: each weekday often enough to be known, each special day seen. */
const TILL_DAYS = 16 * 7

export interface TakingHistory {
  readonly work: Pick<WorkDesk, 'ask'>
  readonly imports: Pick<ImportDesk, 'goOn'>
  readonly nowMs: EpochMs
  readonly seed: number
  /** Left out: sixteen weeks. */
  readonly days?: number
  readonly at?: DemoAt
}

/**
 * Puts in what the demo's till kept of the weeks before its journal, as somebody at the desk would: the file, what its
 * names mean, then take. Day by day and in the background, so that the page is up meanwhile.
 */
export async function takeHistory({ work, imports, nowMs, seed, days = TILL_DAYS, at }: TakingHistory): Promise<void> {
  const shop = demoShop(nowMs, at)
  const first = dateAfter(localDate(shop.profile.zone, nowMs), -PAST_DAYS - days)
  const dates = Array.from({ length: days }, (_, n) => dateAfter(first, n))
  const { fileName, text, meanings } = tillHistory(shop, { seed, dates })
  const path = join(await work.ask('salesFolder', null), 'demo-till.csv')
  const sha256 = await written(path, text)
  const { file, mapping } = await work.ask('salesReceive', { path, name: fileName, sha256, atMs: nowMs })
  await work.ask('salesMean', { meanings })
  await work.ask('salesTake', { id: file.id, mapping })
  imports.goOn()
}

/** @returns its SHA-256 */
async function written(path: string, text: Iterable<string>): Promise<string> {
  const hash = createHash('sha256')
  const out = createWriteStream(path)
  for (const day of text) {
    hash.update(day)
    out.write(day)
    await nextTurn()
  }
  await new Promise<void>((resolve, reject) => {
    out.on('error', reject)
    out.end(resolve)
  })
  return hash.digest('hex')
}
