import type { HealthReason } from '../../shared-core/live/health.ts'
import type { Answered, Asked, Kind } from './questions.ts'
import type { WorkStart } from './work.ts'
import { WorkHost } from './work-host.ts'

/** Where the server asks for what takes too long to be reckoned between two taps: advice, forecasts, past sales. */
export interface WorkDesk {
  /** @throws WorkStopped when the thread ended, which is begun anew by itself; WorkFault for a fault of ours */
  ask<K extends Kind>(kind: K, asked: Asked<K>): Promise<Answered<K>>
  /** Runs whenever a thread has begun that knows nothing yet; at once where one has. */
  onBegun(run: () => void): void
  /** To be called about once a second: what ended is begun anew. */
  tick(): void
  /** Why somebody should look at it. */
  reasons(): readonly HealthReason[]
  close(): Promise<void>
}

/** The thread ended before it had answered. */
export class WorkStopped extends Error {
  override name = 'WorkStopped'
}

/** A question broke a rule of ours; its stack is in the log. */
export class WorkFault extends Error {
  override name = 'WorkFault'
}

/** The same answers without a thread: for tests, and servers run from their sources. */
export function workHere(start: WorkStart): WorkDesk {
  const host = WorkHost.begin(start)
  let isClosed = false
  return {
    ask: async (kind, asked) => {
      if (isClosed) throw new WorkStopped('closed')
      // As between threads: neither side sees what the other changes later.
      const answer = await (await host).answer(kind, structuredClone(asked))
      return structuredClone(answer)
    },
    onBegun: (run) => void host.then(run),
    tick: () => undefined,
    reasons: () => [],
    close: async () => {
      isClosed = true
      ;(await host).end()
    },
  }
}
