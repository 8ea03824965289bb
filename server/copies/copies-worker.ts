import { setTimeout as wait } from 'node:timers/promises'
import { parentPort, workerData } from 'node:worker_threads'
import { unreachable } from '../../shared-core/support.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { verifyJournal } from '../journal/verify.ts'
import type { FromThread, ThreadStart, ToThread } from './copies-thread.ts'
import { CopyKeeper } from './copy-keeper.ts'

/** What was tapped is in the copy within about this time. */
const ROUND_EVERY_MS = 1_000

/** The thread that keeps the copies: a round each second, and the day's archive where nobody taps. */
async function main({ journalFile, folder }: ThreadStart): Promise<void> {
  const sqlite = await loadSqlite()
  const keeper = new CopyKeeper({
    sqlite,
    journalFile,
    folder,
    verify: async (file) => verifyJournal(sqlite, file),
    nowMs: () => Date.now(),
  })
  const asked = listen()
  for (;;) {
    await keeper.tick()
    tell(keeper.standing())
    const date = asked.takeDate()
    if (date !== null) {
      await keeper.archive(date)
      tell(keeper.standing())
    }
    if (await asked.isStopWithin(ROUND_EVERY_MS)) break
  }
  await keeper.close()
  parentPort?.close()
}

function tell(standing: FromThread): void {
  parentPort?.postMessage(standing)
}

function listen() {
  let date: string | null = null
  const stop = new AbortController()
  parentPort?.on('message', (message: ToThread) => {
    switch (message.type) {
      case 'archive':
        date = message.date
        break
      case 'stop':
        stop.abort()
        break
      default:
        unreachable(message)
    }
  })
  return {
    /** The newest that was asked for, once. */
    takeDate(): string | null {
      const taken = date
      date = null
      return taken
    },
    async isStopWithin(ms: number): Promise<boolean> {
      await wait(ms, undefined, { signal: stop.signal }).catch(() => undefined)
      return stop.signal.aborted
    },
  }
}

await main(workerData)
