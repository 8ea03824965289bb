import { createHash, randomBytes } from 'node:crypto'
import { createWriteStream, rmSync } from 'node:fs'
import { join } from 'node:path'
import { Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { Express, Request, Response } from 'express'
import type * as z from 'zod'
import { FILE_NAME_MAX } from '../../shared-core/day/command-schema.ts'
import type { SalesFile } from '../../shared-core/live/sales-import.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { freeMbOf } from '../operation/free-space.ts'
import type { ImportDesk } from '../sales/import-desk.ts'
import type { OfFile } from '../work/sales-questions.ts'
import { letIn } from './entrance.ts'
import type { PastSalesParts } from './past-sales.ts'
import { withShop } from './past-sales.ts'
import { sendProblem } from './problem.ts'
import { mendSchema, previewAskedSchema, takeSchema } from './sales-import-schema.ts'
import { spreadsheetKind } from './spreadsheet-kind.ts'
import { wholeNumber } from './whole-number.ts'

/** Where a file is put in: its body is not read before its route does. */
export const SALES_FILES = '/api/v1/sales/files'

const MB_BYTES = 1024 * 1024
/** Left free for the journal: years of it. */
const KEPT_FREE_MB = 100

export interface SalesFilesParts extends PastSalesParts {
  readonly imports: ImportDesk
  readonly now: () => EpochMs
}

/** Files of past sales from a till: put in, looked at, taken, mended and taken out again. */
export function salesFileRoutes(app: Express, parts: SalesFilesParts): void {
  const { work } = parts
  app.post('/api/v1/sales/files', (request, response) => postFile(request, response, parts))
  app.get('/api/v1/sales/files', (_request, response) =>
    withShop(response, parts, async () => {
      response.json((await work.ask('salesFiles', null)).map((file) => withTrouble(file, parts)))
    }),
  )
  app.get('/api/v1/sales/files/:id', (request, response) =>
    withFile(request, response, parts, async (id) => {
      const file = await work.ask('salesFile', { id })
      return file.ok ? { ok: true, value: withTrouble(file.value, parts) } : file
    }),
  )
  app.delete('/api/v1/sales/files/:id', (request, response) =>
    withFile(request, response, parts, (id) => work.ask('salesRemove', { id })),
  )
  app.post('/api/v1/sales/files/:id/preview', (request, response) =>
    withRead(request, response, previewAskedSchema, ({ mapping = null }) =>
      withFile(request, response, parts, (id) => work.ask('salesPreview', { id, mapping, nowMs: parts.now() })),
    ),
  )
  app.post('/api/v1/sales/files/:id/take', (request, response) =>
    withRead(request, response, takeSchema, ({ mapping = null }) =>
      withFile(request, response, parts, async (id) => {
        const taken = await work.ask('salesTake', { id, mapping })
        parts.imports.goOn()
        return taken
      }),
    ),
  )
  app.get('/api/v1/sales/files/:id/bad', (request, response) => getBad(request, response, parts))
  app.post('/api/v1/sales/files/:id/bad', (request, response) =>
    withRead(request, response, mendSchema, ({ rows: lines }) =>
      withFile(request, response, parts, (id) => work.ask('salesMend', { id, lines })),
    ),
  )
}

/** What cannot be gone on with must not look like slow progress. */
function withTrouble(file: SalesFile, { imports }: SalesFilesParts): SalesFile {
  return file.state === 'taking' && imports.isStuck ? { ...file, why: STUCK } : file
}

const STUCK = 'It could not be gone on with, and is tried again twice a minute. Is the disk full?'

/** However long the file is, it goes to the disk as it comes. */
async function postFile(request: Request, response: Response, parts: SalesFilesParts): Promise<void> {
  await withShop(response, parts, async () => {
    const folder = await parts.work.ask('salesFolder', null)
    const path = join(folder, `upload-${randomBytes(8).toString('hex')}`)
    try {
      // Besides itself a file needs its rows' room and, while it is written in UTF-8, as much again.
      if (!(await hasRoom(folder, 3 * Number(request.headers['content-length'] ?? 0)))) return noRoom(response)
      const { sha256, bytes, start } = await receive(request, path)
      // Whose length nobody said before.
      if (!(await hasRoom(folder, 2 * bytes))) return noRoom(response)
      const trouble = bytes === 0 ? EMPTY : spreadsheetKind(start)
      if (trouble !== null) return sendProblem(response, { status: 422, title: 'No CSV', detail: trouble })
      const uploaded = { path, name: nameOf(request), sha256, atMs: parts.now() }
      // The desk may have shown this device out while it was sending.
      await new Promise<void>((resolve, reject) => {
        response.once('close', resolve)
        letIn(request, response, () => {
          parts.work
            .ask('salesReceive', uploaded)
            .then((preview) => void response.json(preview))
            .catch(reject)
        })
      })
    } catch (error) {
      // Who went away in the middle hears nothing any more.
      if (request.destroyed && response.closed) return
      if (!isDiskFull(error)) throw error
      noRoom(response)
    } finally {
      rmSync(path, { force: true })
    }
  })
}

async function receive(request: Request, path: string) {
  const hash = createHash('sha256')
  let bytes = 0
  let start = Buffer.alloc(0)
  const look = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      if (bytes === 0) start = Buffer.from(chunk.subarray(0, 8))
      bytes += chunk.length
      hash.update(chunk)
      done(null, chunk)
    },
  })
  await pipeline(request, look, createWriteStream(path))
  return { sha256: hash.digest('hex'), bytes, start }
}

function nameOf({ query }: Request): string {
  const name = typeof query.name === 'string' ? query.name.replaceAll(/\p{C}/gu, '').trim() : ''
  return name.slice(0, FILE_NAME_MAX) || 'sales.csv'
}

async function getBad(request: Request, response: Response, parts: SalesFilesParts): Promise<void> {
  const after = wholeNumber(request.query.after, 0)
  if (after !== null) return withFile(request, response, parts, (id) => parts.work.ask('salesBad', { id, after }))
  const detail = '"after" is a line, a whole number: /api/v1/sales/files/1/bad?after=0.'
  sendProblem(response, { status: 400, title: 'Bad request', detail })
}

async function withFile(
  request: Request,
  response: Response,
  parts: PastSalesParts,
  run: (id: number) => Promise<OfFile<unknown>>,
): Promise<void> {
  await withShop(response, parts, async () => {
    const id = wholeNumber(String(request.params.id), 0)
    const answer: OfFile<unknown> = id === null ? { ok: false, why: 'no-file' } : await run(id)
    if (answer.ok) response.json(answer.value ?? {})
    else sendProblem(response, WHY_NOT[answer.why])
  })
}

const WHY_NOT = {
  'no-file': {
    status: 404,
    title: 'No such file',
    detail: 'There is no file of that id. /api/v1/sales/files lists them.',
  },
  'wrong-state': {
    status: 409,
    title: 'Not now',
    detail:
      'A file is looked at and taken while it waits, and its rows are mended when it is taken. To take one by another mapping, take it out and put it in again.',
  },
  'no-mapping': { status: 422, title: 'No mapping', detail: 'Send { "mapping": … } as the preview has it.' },
} as const

export async function withRead<Schema extends z.ZodType>(
  request: Request,
  response: Response,
  schema: Schema,
  run: (read: z.output<Schema>) => Promise<void>,
): Promise<void> {
  const body: unknown = request.body ?? {}
  const read = schema.safeParse(body)
  if (read.success) return run(read.data)
  const errors = problemsOf(read.error.issues, body)
  sendProblem(response, { status: 422, title: 'Mistakes in what was sent', detail: 'Nothing of it was done.', errors })
}

const EMPTY = 'The file is empty. Save the till’s sales as CSV and put that in.'

/** Past sales must not take the last of the disk from the journal. */
async function hasRoom(folder: string, bytes: number): Promise<boolean> {
  const freeMb = await freeMbOf(folder)
  return freeMb === null || freeMb >= bytes / MB_BYTES + KEPT_FREE_MB
}

function noRoom(response: Response): void {
  const detail = 'There is no room for the file on the server’s disk. Make room, or send a shorter one.'
  sendProblem(response, { status: 503, title: 'Not taken', detail })
}

function isDiskFull(error: unknown): boolean {
  return error instanceof Error && 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT')
}
