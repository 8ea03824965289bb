import type { Express, Request, Response } from 'express'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { parseSetUpFile, setUpJsonSchema } from '../../shared-core/shop/set-up-file.ts'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import { isZone } from '../live/shop-clock.ts'
import { deviceOf } from './device-headers.ts'
import { sendProblem } from './problem.ts'
import { changeSetUpTo } from './set-up-change.ts'
import { formulaRoutes } from './set-up-formulas.ts'
import { setUpVersionRoutes } from './set-up-versions.ts'

/** The set-up as the file that people write: its schema, what it is now, and a new one. */
export function setUpRoutes(app: Express, { room, journal }: { readonly room: Room; readonly journal: Journal }): void {
  app.get('/api/v1/set-up.schema.json', (_request, response) => {
    response.type('application/schema+json').send(JSON.stringify(setUpJsonSchema()))
  })
  app.get('/api/v1/set-up', async (_request, response) => {
    const file = await room.read(({ shop }) => (shop === null ? null : toSetUpFile(shop)))
    if (file === null) sendProblem(response, NO_SET_UP)
    else response.attachment('set-up.json').json(file)
  })
  app.post('/api/v1/set-up', (request, response) => postSetUp(request, response, room))
  formulaRoutes(app, room)
  setUpVersionRoutes(app, { room, journal })
}

export const NO_SET_UP = {
  status: 404,
  title: 'No set-up yet',
  detail: 'Send a set-up file first: POST /api/v1/set-up; its form is at /api/v1/set-up.schema.json.',
} as const

async function postSetUp(request: Request, response: Response, room: Room): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const parsed = parseSetUpFile(request.body, { isZone })
  if (!parsed.ok) {
    const detail = 'The set-up file has mistakes; nothing of it was taken.'
    sendProblem(response, { status: 422, title: 'Mistakes in the set-up', detail, errors: parsed.problems })
    return
  }
  await changeSetUpTo(request, response, { room, device, to: () => parsed.shop })
}
