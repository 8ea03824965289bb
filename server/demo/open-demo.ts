import { existsSync, rmSync } from 'node:fs'
import { epochMs } from '../../shared-core/units.ts'
import { FILE_ENDS } from '../journal/end-mark.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import { multicastFor } from '../lan/multicast.ts'
import { certificateFor } from '../operation/certificate-options.ts'
import { logInFolder } from '../operation/log.ts'
import type { Options } from '../options.ts'
import type { Serving } from '../serve.ts'
import { serve } from '../serve.ts'
import { takeFolder } from '../shop/folder.ts'
import { WorkStopped } from '../work/work-desk.ts'
import { workThread } from '../work/work-thread.ts'
import type { DemoAt } from './demo-at.ts'
import { livingMorning } from './living-morning.ts'
import { startDemo } from './start-demo.ts'
import { takeHistory } from './take-history.ts'

const FOLDER = '.shop-demo'
/** Which of many possible mornings it is: the same at every start, so that two people talk about the same one. */
const SEED = 1
/** Often enough that a lift is not late by the look alone. */
const LOOK_EVERY_MS = 1_000
/** When time is sped up; a look takes some milliseconds. */
const LOOK_EVERY_MS_MIN = 100

/**
 * The demo shop, made afresh at each start in a folder of its own, so that demo and real data never mix: a morning that
 * is well under way, and people who carry it on unless hands are off.
 */
export async function openDemo(options: Options, say: (line: string) => void): Promise<Serving> {
  const { handsOff, speed, at } = options
  const sqlite = await loadSqlite()
  // Taken first: another demo that runs on this folder keeps its journal.
  const taken = takeFolder(sqlite, FOLDER)
  refuseRealShop(sqlite, taken.journalFile)
  for (const file of [taken.journalFile, taken.salesFile, taken.detailsFile])
    for (const end of FILE_ENDS) rmSync(`${file}${end}`, { force: true })
  const journal = new SqliteJournal(sqlite, taken.journalFile, 'demo')
  const { entries, details } = livingMorning({ nowMs: epochMs(Date.now()), seed: SEED, isAdvised: true, at })
  await journal.append({ entries, refusals: [] })
  const { log, close } = await logInFolder(FOLDER)
  const work = workThread({ start: { salesFile: taken.salesFile }, log })
  const serving = await serve({
    journal,
    closed: null,
    historyFile: ':memory:',
    detailsFile: taken.detailsFile,
    folder: FOLDER,
    work,
    ...certificateFor(options, FOLDER),
    log,
    options,
    demo: { handsOff, speed },
    say,
    ...multicastFor(options),
  })
  for (const one of details) serving.details.write(one)
  const people = startDemo({
    submit: (device, commands) => serving.room.submit(device, commands),
    read: (look) => serving.room.read(look),
    nowMs: serving.now,
    plan: serving.plan,
    schedule: (delayMs, run) => {
      const timer = setTimeout(run, delayMs)
      return () => clearTimeout(timer)
    },
    seed: SEED,
    handsOff,
    lookEveryMs: Math.max(LOOK_EVERY_MS_MIN, Math.round(LOOK_EVERY_MS / speed)),
    onTrouble: (error) => say(`The demo's people could not tap: ${error instanceof Error ? error.message : error}`),
  })
  const { imports } = serving
  takeHistory({ work, imports, nowMs: serving.now(), seed: SEED, at }).catch((error: unknown) => {
    if (!(error instanceof WorkStopped)) log.error({ error }, 'the demo’s past sales could not be put in')
  })
  const hands = handsOff
    ? 'Nobody but you taps.'
    : 'Its crew and customers carry on by themselves; --hands-off stops them.'
  const pace = speed === 1 ? '' : ` Its time runs ${speed} times as fast.`
  say(`A demo shop, invented, ${WHEN[at]}. ${hands}${pace}`)
  return {
    ...serving,
    stop: async () => {
      people.stop()
      await serving.stop()
      close()
      taken.release()
    },
  }
}

const WHEN: { readonly [at in DemoAt]: string } = {
  morning: 'in the middle of its morning',
  changeover: 'while its oven changes over from bagels to flatbreads',
  afternoon: 'in its afternoon, with flatbreads in the oven',
}

/** @throws JournalError when a real shop was put into the demo's folder: it is never made afresh */
function refuseRealShop(sqlite: Sqlite, file: string): void {
  if (existsSync(file)) new SqliteJournal(sqlite, file, 'demo').close()
}
