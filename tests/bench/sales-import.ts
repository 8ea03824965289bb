import { mkdtempSync, openSync, readSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { BLOCK_BYTES } from '../../server/sales/csv-walk.ts'
import { workHere } from '../../server/work/work-desk.ts'
import { epochMs } from '../../shared-core/units.ts'
import { shopWith } from '../core/support/shop.ts'
import { ms, quantile } from './figures.ts'

/**
 * A till's file of a million rows: taken as the server does, beside a bare csv-parse with a bare insert of the same
 * cells, block by block in the same run. Processor time, so that what else runs on the machine says little.
 */
const ROWS = Number(process.argv[process.argv.indexOf('--rows') + 1]) || 1_000_000
const ROWS_A_DAY = 1_400
const AIM = 0.5

const folder = mkdtempSync(join(tmpdir(), 'boilboard-bench-'))
try {
  await main()
} finally {
  rmSync(folder, { recursive: true, force: true })
}

async function main(): Promise<void> {
  const file = join(folder, 'till.csv')
  writeTill(file)
  const mb = statSync(file).size / 1024 / 1024
  console.log(
    `\nSales in: ${ROWS.toLocaleString('en-US')} rows, ${mb.toFixed(0)} MB (aim: at least half the bare speed)`,
  )
  const bare = bareMs(await loadSqlite(), file)
  const ours = await oursMs(file)
  const ratio = bare / ours.cpuMs
  const perSecond = (cpuMs: number) => `${Math.round((ROWS / cpuMs) * 1_000).toLocaleString('en-US')} rows/s`
  console.log(`  bare csv-parse and insert   ${perSecond(bare)}`)
  console.log(`  ours                        ${perSecond(ours.cpuMs)}, ${ratio.toFixed(2)} of it`)
  console.log(`  memory grew by              ${ours.grewMb.toFixed(0)} MB at most`)
  console.log(
    `  another question meanwhile  ${ms(quantile(ours.waitsMs, 0.5))} half of the time, ${ms(quantile(ours.waitsMs, 0.99))} at p99`,
  )
  console.log(`  days made of it             ${ours.daysMs.toFixed(0)} ms in chunks`)
  if (ratio < AIM) process.exitCode = 1
}

function writeTill(file: string): void {
  const names = ['Sesame', 'Poppy', 'Plain', 'Rye', 'Half dozen', 'Bagel with spread', 'Coffee', 'Dozen']
  const day = (row: number) => new Date(Date.UTC(2024, 0, 1 + Math.floor(row / ROWS_A_DAY)))
  writeFileSync(file, 'Date,Time,Receipt,Item,Qty,Price\n')
  for (let from = 0; from < ROWS; from += 50_000) {
    const rows = Array.from({ length: Math.min(50_000, ROWS - from) }, (_, n) => {
      const row = from + n
      const at = day(row)
      const minute = 360 + Math.floor(((row % ROWS_A_DAY) * 540) / ROWS_A_DAY)
      const date = `${at.getUTCMonth() + 1}/${at.getUTCDate()}/${at.getUTCFullYear()}`
      const time = `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`
      return `${date},${time},R${Math.floor(row / 2)},${names[(row * 7) % names.length]},${1 + (row % 3)},2.50\n`
    })
    writeFileSync(file, rows.join(''), { flag: 'a' })
  }
}

function cpuMs(since = 0): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1_000 - since
}

/** The same blocks, each a commit, into a table without any index. */
function bareMs(sqlite: Sqlite, file: string): number {
  const db = new sqlite.DatabaseSync(join(folder, 'bare.sqlite'))
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL; CREATE TABLE bare (a, b, c, d, e, f)')
  const insert = db.prepare('INSERT INTO bare VALUES (?, ?, ?, ?, ?, ?)')
  const fd = openSync(file, 'r')
  const block = Buffer.alloc(BLOCK_BYTES)
  const begun = cpuMs()
  for (let from = 0; ; ) {
    const read = readSync(fd, block, 0, BLOCK_BYTES, from)
    if (read === 0) break
    const whole = block.subarray(0, block.subarray(0, read).lastIndexOf(0x0a) + 1)
    db.exec('BEGIN')
    parse(whole, {
      onRecord: (cells: string[]) => {
        insert.run(...cells)
        return null
      },
    })
    db.exec('COMMIT')
    from += whole.length
  }
  const took = cpuMs(begun)
  db.close()
  return took
}

async function oursMs(file: string) {
  const desk = workHere({ salesFile: join(folder, 'sales.sqlite') })
  await desk.ask('shop', shopWith())
  const uploaded = { path: file, name: 'till.csv', sha256: '0'.repeat(64), atMs: epochMs(Date.parse('2026-11-26')) }
  const { file: waiting, mapping } = await desk.ask('salesReceive', uploaded)
  const before = process.memoryUsage().rss
  let most = before
  const waitsMs: number[] = []
  await desk.ask('salesTake', { id: waiting.id, mapping })
  let all = 0
  for (;;) {
    const [begun, atMs] = [cpuMs(), performance.now()]
    // Asked together: the second waits for as long as the block takes.
    const step = desk.ask('salesStep', null)
    const other = desk.ask('salesMeanings', { names: ['Dozen'] }).then(() => waitsMs.push(performance.now() - atMs))
    const now = await step
    await other
    most = Math.max(most, process.memoryUsage().rss)
    // The last of some hundred blocks also makes the days, which is a figure of its own.
    if (now === null || now.bytesRead === now.bytes) break
    all += cpuMs(begun)
  }
  const daysBegun = cpuMs()
  await desk.ask('salesMean', { meanings: [{ name: 'Dozen', meaning: { kind: 'unnamed', pieces: 12, among: null } }] })
  const daysMs = cpuMs(daysBegun)
  const taken = await desk.ask('salesFile', { id: waiting.id })
  if (!taken.ok || taken.value.taken !== ROWS) throw new Error(`not all taken: ${JSON.stringify(taken)}`)
  await desk.close()
  return { cpuMs: all, grewMb: (most - before) / 1024 / 1024, waitsMs: waitsMs.slice(0, -1), daysMs }
}
