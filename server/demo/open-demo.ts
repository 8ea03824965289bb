import { rmSync } from 'node:fs'
import { loadSqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import type { Options } from '../options.ts'
import { type Serving, serve } from '../serve.ts'
import { takeFolder } from '../shop/folder.ts'

const FOLDER = '.shop-demo'

/** The demo shop, made afresh at each start in a folder of its own, so that demo and real data never mix. */
export async function openDemo(options: Options, say: (line: string) => void): Promise<Serving> {
  const sqlite = await loadSqlite()
  rmSync(FOLDER, { recursive: true, force: true })
  const taken = takeFolder(sqlite, FOLDER)
  const journal = new SqliteJournal(sqlite, taken.journalFile, 'demo')
  const serving = await serve({ journal, options, demo: { handsOff: options.handsOff, speed: 1 }, say })
  return { ...serving, stop: async () => { await serving.stop(); taken.release() } }
}
