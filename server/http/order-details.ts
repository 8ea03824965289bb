import type { Express, Request, Response } from 'express'
import type { Command } from '../../shared-core/day/commands.ts'
import type { DetailsAnswer, DetailsTold } from '../../shared-core/live/order-details.ts'
import { DETAILS_IDS_MAX } from '../../shared-core/live/order-details.ts'
import type { Room } from '../live/room.ts'
import type { DetailsBook } from '../orders/details-book.ts'
import { detailsOf, forgottenWith } from '../orders/details-of.ts'
import { knownNames } from '../orders/known-names.ts'
import { saidNoMore } from '../orders/said-no-more.ts'
import { commandOfRow } from './derived-command.ts'
import { deviceOf } from './device-headers.ts'
import { sendProblem } from './problem.ts'

export interface OrderDetailsParts {
  readonly room: Room
  readonly details: DetailsBook
}

/** Whom orders are for: read by those who need it, deleted at the desk for good. */
export function orderDetailsRoutes(app: Express, parts: OrderDetailsParts): void {
  app.get('/api/v1/orders/details', (request, response) => getDetails(request, response, parts))
  app.get('/api/v1/orders/names', (request, response) => getNames(request, response, parts))
  app.delete('/api/v1/orders/details/:id', (request, response) => deleteDetails(request, response, parts))
}

async function getDetails(request: Request, response: Response, { room, details }: OrderDetailsParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  // Of a shop that is open to everybody the door has asked nobody.
  if (device.role === 'wall') {
    const detail = 'The wall shows nobody’s name. This is for: bench, counter, desk.'
    return sendProblem(response, { status: 403, title: 'Not for this role', detail })
  }
  const ids = typeof request.query.ids === 'string' ? request.query.ids.split(',') : []
  if (ids.length === 0 || ids.length > DETAILS_IDS_MAX || ids.some((id) => !ID.test(id))) {
    const detail = `"ids" are ids of orders or standing orders, separated by commas, ${DETAILS_IDS_MAX} at most.`
    return sendProblem(response, { status: 400, title: 'Bad request', detail })
  }
  const told = await room.read((state) => ids.flatMap((id) => detailsOf(state, details, id) ?? []))
  const answer: DetailsAnswer = { details: device.role === 'bench' ? told.map(withoutName) : told }
  response.json(answer)
}

/** As ids look that the board makes. */
const ID = /^[a-z0-9][a-z0-9.-]{0,63}$/

/** Whoever makes an order needs to know what was said of it, and not by whom. */
function withoutName(told: DetailsTold): DetailsTold {
  return { ...told, name: '', phone: '' }
}

async function getNames(request: Request, response: Response, { room, details }: OrderDetailsParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  if (device.role !== 'desk') {
    const detail = 'All names together are for the desk.'
    return sendProblem(response, { status: 403, title: 'Not for this role', detail })
  }
  const { query } = request
  const text = typeof query.text === 'string' ? query.text : ''
  response.json(await room.read((state) => knownNames(state, details, text)))
}

/** First it is gone, then the screens hear of it. */
async function deleteDetails(request: Request, response: Response, parts: OrderDetailsParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { room, details } = parts
  const ids = forgottenWith(String(request.params.id))
  const deleted = await room.read(() => details.forget(ids))
  const acts = await room.read((state) => saidNoMore(state, ids))
  const commands = acts.map(
    (act, n): Command => ({
      id: commandOfRow(device.deviceId, 'forget', null),
      deviceSeq: n + 1,
      tappedAtMs: null,
      ...act,
    }),
  )
  if (commands.length > 0) await room.submit(device, commands)
  response.json({ deleted })
}
