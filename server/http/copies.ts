import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Express, Response } from 'express'
import type { SafeCopies } from '../../shared-core/live/devices.ts'
import type { Journal } from '../journal/journal.ts'

/** Entries read at once while others wait: a millisecond or two of work, half a megabyte. */
const ENTRIES_A_BREATH = 1_000

export interface CopiesParts {
  readonly journal: Pick<Journal, 'entriesAfter' | 'lastSeq'>
  readonly copies: () => SafeCopies
}

/** How well the journal is kept beside its own file, and the journal itself, to be kept elsewhere. */
export function copiesRoutes(app: Express, { journal, copies }: CopiesParts): void {
  app.get('/api/v1/copies', (_request, response) => {
    response.json(copies())
  })
  app.get('/api/v1/export/entries.jsonl', (_request, response) => sendEntries(response, journal))
}

/** As the journal stands when it is asked for. No faster than it is read, so that a year needs no more memory than a day. */
async function sendEntries(response: Response, journal: CopiesParts['journal']): Promise<void> {
  response.attachment('entries.jsonl').type('application/jsonl; charset=utf-8')
  // Whoever goes away in the middle is no fault; one of the journal ends the answer short of its end, which is noticed.
  await pipeline(Readable.from(lines(journal), { objectMode: true, highWaterMark: 1 }), response).catch(
    (error: unknown) => {
      if (!isGone(error)) throw error
    },
  )
}

async function* lines(journal: CopiesParts['journal']): AsyncGenerator<string> {
  const lastSeq = journal.lastSeq()
  for (let seq = 0; seq < lastSeq; seq += ENTRIES_A_BREATH) {
    const page = [...journal.entriesAfter(seq, Math.min(ENTRIES_A_BREATH, lastSeq - seq))]
    yield page.map((entry) => `${JSON.stringify(entry)}\n`).join('')
    await nextTurn()
  }
}

function isGone(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_STREAM_PREMATURE_CLOSE'
}
