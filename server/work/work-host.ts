import { setImmediate as nextTurn } from 'node:timers/promises'
import { loadSqlite } from '../journal/sqlite.ts'
import { DayBook } from './day-book.ts'
import { handlersFor } from './handlers.ts'
import type { Answered, Asked, Handlers, Kind, Questions } from './questions.ts'
import type { WorkStart } from './work.ts'

/** What the counter waits for waits no longer than this for a turn. */
const CHUNK_MS = 12

/** Lets others have a turn where they have waited for one so long, so that loops may ask at every round. */
function inChunks(): () => Promise<void> {
  let atMs = performance.now()
  return async () => {
    if (performance.now() - atMs < CHUNK_MS) return
    await nextTurn()
    atMs = performance.now()
  }
}

/** What answers questions, whichever thread it lives in. */
export class WorkHost {
  readonly #handlers: Handlers<Questions>
  readonly #atEnd: readonly (() => void)[]

  private constructor(handlers: Handlers<Questions>, atEnd: readonly (() => void)[]) {
    this.#handlers = handlers
    this.#atEnd = atEnd
  }

  static async begin(start: WorkStart): Promise<WorkHost> {
    const atEnd: (() => void)[] = []
    const breathe = inChunks()
    const work = {
      start,
      sqlite: await loadSqlite(),
      book: new DayBook(breathe),
      breathe,
      atEnd: (run: () => void) => void atEnd.push(run),
    }
    return new WorkHost(handlersFor(work), atEnd)
  }

  async answer<K extends Kind>(kind: K, asked: Asked<K>): Promise<Answered<K>> {
    const handler: (asked: Asked<K>) => Answered<K> | Promise<Answered<K>> = this.#handlers[kind]
    return await handler(asked)
  }

  end(): void {
    for (const run of this.#atEnd) run()
  }
}
