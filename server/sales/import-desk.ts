import { createHash } from 'node:crypto'
import { commandId } from '../../shared-core/ids.ts'
import type { SalesFile } from '../../shared-core/live/sales-import.ts'
import { SERVER } from '../live/chores.ts'
import type { Room } from '../live/room.ts'
import type { Log } from '../live/room-parts.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { WorkStopped } from '../work/work-desk.ts'

const ID_LETTERS = 36
/** A disk that is full is not tried, and told, each second. */
const TRIED_AGAIN_MS = 30_000

export interface ImportDeskParts {
  readonly work: Pick<WorkDesk, 'ask' | 'onBegun'>
  readonly room: Pick<Room, 'submit' | 'failure' | 'state'>
  readonly log: Log
}

/**
 * Goes on with files that are being taken, block by block, each a question of its own: what the counter asks meanwhile
 * is answered between two of them. What was taken is noted in the journal, once. After a stop, of the thread or of the
 * server, it goes on where it was.
 */
export class ImportDesk {
  readonly #parts: ImportDeskParts
  /** Whether there may be something to do. */
  #isNews = false
  #running: Promise<void> | null = null
  #isClosed = false
  #notBeforeMs = Number.NEGATIVE_INFINITY
  #isStuck = false

  constructor(parts: ImportDeskParts) {
    this.#parts = parts
    parts.work.onBegun(() => {
      this.#isNews = true
    })
  }

  /** The last try to go on failed; it is tried again by itself. */
  get isStuck(): boolean {
    return this.#isStuck
  }

  /** There is something to take. */
  goOn(): void {
    this.#isNews = true
    this.#notBeforeMs = Number.NEGATIVE_INFINITY
    this.tick()
  }

  /** To be called about once a second. */
  tick(): void {
    const { room, log } = this.#parts
    if (performance.now() < this.#notBeforeMs) return
    // Days, zone and names go by the set-up.
    if (!this.#isNews || this.#running !== null || room.failure !== null || room.state.shop === null) return
    this.#isNews = false
    this.#running = this.#run()
      .catch((error: unknown) => {
        this.#isNews = true
        if (error instanceof WorkStopped) return
        this.#notBeforeMs = performance.now() + TRIED_AGAIN_MS
        this.#isStuck = true
        log.error({ error }, 'a file of sales could not be gone on with')
      })
      .finally(() => {
        this.#running = null
      })
  }

  /** When nothing of it runs. */
  async close(): Promise<void> {
    this.#isClosed = true
    await this.#running
  }

  async #run(): Promise<void> {
    const { work } = this.#parts
    while (!this.#isClosed && (await work.ask('salesStep', null)) !== null) this.#isStuck = false
    this.#isStuck = false
    for (const file of await work.ask('salesToNote', null)) await this.#note(file)
  }

  /** The same file put in at the same time is the same command for ever, so that a stop in between notes it once. */
  async #note(file: SalesFile): Promise<void> {
    const { room, work } = this.#parts
    const { name, sha256, taken, from, to } = file
    if (from !== null && to !== null) {
      const text = `import\n${sha256}\n${file.addedAtMs}`
      const id = commandId(createHash('sha256').update(text).digest('hex').slice(0, ID_LETTERS))
      const act = { type: 'noteImport', name, sha256, rows: taken, from, to } as const
      await room.submit(SERVER, [{ id, deviceSeq: 1, tappedAtMs: null, ...act }])
    }
    await work.ask('salesNoted', { id: file.id })
  }
}
