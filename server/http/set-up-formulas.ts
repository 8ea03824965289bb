import type { Express, Request, Response } from 'express'
import { formulaId } from '../../shared-core/ids.ts'
import { parseFormulaFile, toFormulaFile } from '../../shared-core/shop/formula-file.ts'
import type { Room } from '../live/room.ts'
import { deviceOf } from './device-headers.ts'
import { sendProblem } from './problem.ts'
import { changeSetUpTo } from './set-up-change.ts'

const NO_SET_UP = {
  status: 404,
  title: 'No set-up yet',
  detail: 'A formula belongs to a set-up: send one first, POST /api/v1/set-up.',
} as const

/** One formula as a file, with all that it is made of: out, and in as a change of the set-up. */
export function formulaRoutes(app: Express, room: Room): void {
  app.get('/api/v1/formulas/:id', (request, response) => getFormula(request, response, room))
  app.post('/api/v1/formulas', (request, response) => postFormula(request, response, room))
}

async function getFormula(request: Request, response: Response, room: Room): Promise<void> {
  const id = String(request.params.id)
  const found = await room.read(({ shop }) => ({
    file: shop === null ? null : toFormulaFile(shop, formulaId(id)),
    known: [...(shop?.formulas.keys() ?? [])],
  }))
  if (found.file !== null) {
    response.attachment(`formula-${found.file.formula.id}.json`).json(found.file)
    return
  }
  const known = found.known.length === 0 ? 'The shop has none.' : `The shop has: ${found.known.join(', ')}.`
  sendProblem(response, { status: 404, title: 'No such formula', detail: `There is no formula of that id. ${known}` })
}

async function postFormula(request: Request, response: Response, room: Room): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const body: unknown = request.body
  const parsed = await room.read(({ shop }) => (shop === null ? null : parseFormulaFile(body, shop)))
  if (parsed === null) {
    sendProblem(response, NO_SET_UP)
    return
  }
  if (!parsed.ok) {
    const detail = 'The formula file has mistakes; nothing of it was taken.'
    sendProblem(response, { status: 422, title: 'Mistakes in the formula', detail, errors: parsed.problems })
    return
  }
  // Read once more onto the shop as it is then: what somebody saves meanwhile is not undone.
  const into = (now: Parameters<typeof parseFormulaFile>[1]) => {
    const again = parseFormulaFile(body, now)
    return again.ok ? again.shop : now
  }
  await changeSetUpTo(request, response, { room, device, to: (now) => (now === null ? parsed.shop : into(now)) })
}
