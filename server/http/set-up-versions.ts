import type { Express, Request, Response } from 'express'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import { setUpAfter, versionsOf } from '../shop/versions.ts'
import { deviceOf } from './device-headers.ts'
import { sendProblem } from './problem.ts'
import { changeSetUpTo } from './set-up-change.ts'
import { wholeNumber } from './whole-number.ts'

/** Nobody scrolls further back; `?before=` goes on. */
const VERSIONS_PER_PAGE = 100

interface Parts {
  readonly room: Room
  readonly journal: Journal
}

/** What the set-up was, change by change, and the way back to one of them. */
export function setUpVersionRoutes(app: Express, parts: Parts): void {
  app.get('/api/v1/set-up/versions', (request, response) => getVersions(request, response, parts))
  app.post('/api/v1/set-up/versions/:seq/restore', (request, response) => restore(request, response, parts))
}

/** Newest first, a page at a time. */
async function getVersions(request: Request, response: Response, { room, journal }: Parts): Promise<void> {
  const before = wholeNumber(request.query.before, Number.MAX_SAFE_INTEGER)
  if (before === null) {
    const detail = '"before" is the seq of a version: /api/v1/set-up/versions?before=1200. Left out, the newest come.'
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const versions = await room.read(() => versionsOf(journal.setUpEntries()))
  const page = versions.filter(({ seq }) => seq < before).slice(-VERSIONS_PER_PAGE)
  response.json(page.reverse().map((version) => ({ ...version, device: room.nameOf(version.deviceId) })))
}

/** A version again, as a change from now on. `?dryRun=1` tells what it would change. */
async function restore(request: Request, response: Response, { room, journal }: Parts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const seq = wholeNumber(request.params.seq, 0)
  const shop = seq === null ? null : await room.read(() => setUpAfter(journal.setUpEntries(), seq))
  if (shop === null) {
    const detail = `The set-up was not changed with entry ${request.params.seq}; GET /api/v1/set-up/versions lists those that are.`
    sendProblem(response, { status: 404, title: 'No such version', detail })
    return
  }
  await changeSetUpTo(request, response, { room, device, to: () => shop })
}
