import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { COPY_FILE } from '../../server/copies/copy-folder.ts'
import { compact } from '../../server/journal/compact.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { ForeignCpu, median } from './figures.ts'
import { startProcess } from './server-process.ts'
import { history } from './year.ts'

/** How a year of trading opens beside a morning, and how long folding it all anew takes after an upgrade. */
const LARGE_EVENTS = Number(process.env.BENCH_EVENTS ?? 1_500_000)
const SMALL_EVENTS = 1_500
const STARTS = 7
const ENTRIES_A_COMMIT = 5_000
const AIM_RATIO = 1.2
const AIM_REFOLD_S = 10

const folder = mkdtempSync(join(tmpdir(), 'boilboard-bench-'))
try {
  const large = await makeShop('large', LARGE_EVENTS)
  const small = await makeShop('small', SMALL_EVENTS)
  console.log(
    `\nStart-up: ${large.events} events in ${large.entries} entries (${large.fileMb.toFixed(0)} MB) beside ${small.events}`,
  )
  for (const shop of [large, small]) await copied(shop.folder)
  const foreign = new ForeignCpu([process.pid])
  const times: { [name: string]: number[] } = { large: [], small: [] }
  const rss: { [name: string]: number[] } = { large: [], small: [] }
  const cpu: { [name: string]: number[] } = { large: [], small: [] }
  for (let n = 0; n <= STARTS; n += 1) {
    for (const [name, shop] of Object.entries({ large, small })) {
      const server = await startProcess(['dist/server.mjs', '--open', '--shop', shop.folder])
      if (n > 0) times[name]?.push(server.readyMs)
      if (n > 0) cpu[name]?.push(server.cpuMs)
      if (n > 0) rss[name]?.push(server.rssMb)
      await server.stop()
    }
  }
  for (const name of ['large', 'small']) {
    console.log(
      `  ${name.padEnd(6)} ready after ${median(times[name] ?? []).toFixed(0)} ms, ${median(cpu[name] ?? []).toFixed(0)} ms of processor time, memory ${median(rss[name] ?? []).toFixed(0)} MB`,
    )
  }
  console.log(
    `  ratio ${(median(times.large ?? []) / median(times.small ?? [])).toFixed(2)} (aim ≤ ${AIM_RATIO}); rows read at a start: one snapshot and the entries after it, here ${large.tail} and ${small.tail}`,
  )
  console.log(
    `  state as JSON: ${(large.stateBytes / 1024).toFixed(0)} kB after the large journal, ${(small.stateBytes / 1024).toFixed(0)} kB after the small one`,
  )
  await refold(large.folder, foreign)
  await compacted(large.folder, large.entries)
} finally {
  rmSync(folder, { recursive: true, force: true })
}

async function makeShop(name: string, events: number) {
  const shopFolder = join(folder, name)
  mkdirSync(shopFolder, { recursive: true })
  const file = join(shopFolder, 'journal.sqlite')
  const journal = new SqliteJournal(await loadSqlite(), file, 'shop')
  let made = 0
  let group: Entry[] = []
  const write = async () => {
    await journal.append({ entries: group, refusals: [] })
    group = []
  }
  for (const entry of history(events)) {
    made += entry.events.length
    group.push(entry)
    if (group.length === ENTRIES_A_COMMIT) await write()
  }
  await write()
  const state = await wake(journal, () => undefined)
  saveSnapshot(journal, state)
  const stateBytes = journal.newestSnapshot(FOLD_VERSION)?.json.length ?? 0
  const tail = journal.lastSeq() - (journal.newestSnapshot(FOLD_VERSION)?.seq ?? 0)
  const entries = journal.lastSeq()
  journal.close()
  return { folder: shopFolder, events: made, entries, tail, stateBytes, fileMb: statSync(file).size / 1024 / 1024 }
}

/** A first start copies the whole journal beside; the starts that are measured find the copy there. */
async function copied(shopFolder: string): Promise<void> {
  const server = await startProcess(['dist/server.mjs', '--open', '--shop', shopFolder])
  while (!existsSync(join(shopFolder, 'copies', COPY_FILE))) await wait(100)
  await server.stop()
}

/** The server's own start, with the snapshots gone as after a new fold version. */
async function refold(shopFolder: string, foreign: ForeignCpu): Promise<void> {
  const sqlite = await loadSqlite()
  const db = new sqlite.DatabaseSync(join(shopFolder, 'journal.sqlite'))
  db.exec('DELETE FROM snapshots')
  db.close()
  const server = await startProcess(['dist/server.mjs', '--open', '--shop', shopFolder])
  console.log(
    `  refold of everything: ${(server.readyMs / 1000).toFixed(1)} s from start to ready, ${(server.cpuMs / 1000).toFixed(1)} s of processor time (aim ≤ ${AIM_REFOLD_S} s), memory ${server.rssMb.toFixed(0)} MB`,
  )
  console.log(
    `  progress shown: ${server.printed().match(/Reading[^\n]*/g)?.length ?? 0} lines; processors used by others and the servers: ${(foreign.share() * 100).toFixed(0)} %`,
  )
  await server.stop()
}

/** The year but for its last 60 days moved into an archive, and what becomes of sizes, state and starts. */
async function compacted(shopFolder: string, entries: number): Promise<void> {
  const sqlite = await loadSqlite()
  const file = join(shopFolder, 'journal.sqlite')
  const before = await timed(() => verifyJournal(sqlite, file))
  const bytesBefore = statSync(file).size
  const lastSeq = Math.floor((entries * 305) / 365)
  const name = 'entries-to-2026-11-01.sqlite'
  const moved = await timed(async () => compact(sqlite, { file, lastSeq, name, onStep: () => undefined }))
  const after = await timed(() => verifyJournal(sqlite, file))
  const [bytes, archiveBytes] = [file, join(shopFolder, name)].map(
    (path) => `${(statSync(path).size / 1024 / 1024).toFixed(0)} MB`,
  )
  console.log(
    `  compacted: ${moved.made} entries moved in ${moved.cpuS.toFixed(1)} s of processor time; the journal had ${(bytesBefore / 1024 / 1024).toFixed(0)} MB and has ${bytes}, the archive ${archiveBytes}`,
  )
  const isSame = before.made.ok && after.made.ok && before.made.hash === after.made.hash
  console.log(
    `  state's hash ${isSame ? 'the same' : 'ANOTHER'}; verified from end to end in ${before.cpuS.toFixed(1)} s of processor time before and ${after.cpuS.toFixed(1)} s after`,
  )
  if (!isSame) process.exitCode = 1
  const starts: number[] = []
  for (let n = 0; n < STARTS; n += 1) {
    const server = await startProcess(['dist/server.mjs', '--open', '--shop', shopFolder])
    starts.push(server.readyMs)
    await server.stop()
  }
  console.log(`  ready after ${median(starts).toFixed(0)} ms with the archive`)
}

async function timed<Made>(make: () => Promise<Made>): Promise<{ readonly made: Made; readonly cpuS: number }> {
  const start = process.cpuUsage()
  const made = await make()
  const { user, system } = process.cpuUsage(start)
  return { made, cpuS: (user + system) / 1e6 }
}
