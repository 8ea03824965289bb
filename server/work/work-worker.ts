import { parentPort, workerData } from 'node:worker_threads'
import type { Kind } from './questions.ts'
import type { WorkStart } from './work.ts'
import { WorkHost } from './work-host.ts'
import type { FromWorker, ToWorker } from './work-thread.ts'

/** The thread for advice and sales history: answers what it is asked, the quick between the chunks of the slow. */
async function main(start: WorkStart): Promise<void> {
  const host = await WorkHost.begin(start)
  parentPort?.on('message', (message: ToWorker) => {
    if (message.type === 'ask') void answer(host, message)
    else if (message.type === 'ping') tell('pong')
    else {
      host.end()
      parentPort?.close()
    }
  })
}

async function answer(host: WorkHost, { id, kind, asked }: Extract<ToWorker, { type: 'ask' }>): Promise<void> {
  try {
    // Kind and question came together from the one that is typed.
    tell({ id, ok: true, answer: await host.answer(kind as Kind, asked as never) })
  } catch (error) {
    tell({ id, ok: false, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) })
  }
}

function tell(message: FromWorker): void {
  parentPort?.postMessage(message)
}

await main(workerData)
