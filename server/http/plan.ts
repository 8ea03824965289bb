import type { Express, Request, Response } from 'express'
import { dateAfter, isDate } from '../../shared-core/day/label.ts'
import type { PlannedLoad, State } from '../../shared-core/day/state.ts'
import { plannedId } from '../../shared-core/ids.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { PlanTold } from '../../shared-core/live/protocol.ts'
import { dayAheadLine } from '../../shared-core/plan/day-ahead-line.ts'
import type { LineToday } from '../../shared-core/plan/line-today.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import { localDate, shopClock } from '../live/shop-clock.ts'
import { readBakeOff } from '../plan/read-bake-off.ts'
import type { PlanOf } from '../work/advise-questions.ts'
import { dayNow } from '../work/day-now.ts'
import { COMING_DAYS_MAX } from './coming.ts'
import { isReady } from './days.ts'
import type { PastSalesParts } from './past-sales.ts'
import { withShop } from './past-sales.ts'
import { planTrySchema, whatIfSchema } from './plan-schema.ts'
import { sendProblem } from './problem.ts'
import { withRead } from './sales-files.ts'
import { whileWorking } from './while-working.ts'

interface PlanParts extends PastSalesParts {
  readonly history: History
  readonly now: () => EpochMs
  /** The plan that was told last; null: none yet. */
  readonly plan: () => PlanTold | null
}

/** Which loads when: as all were told, for a day to come, and as it would be. Nothing of it is in the journal. */
export function planRoutes(app: Express, parts: PlanParts): void {
  app.get('/api/v1/plan', (request, response) => getPlan(request, response, parts))
  app.post('/api/v1/plan/try', (request, response) => postTry(request, response, parts))
  app.post('/api/v1/plan/what-if', (request, response) => postWhatIf(request, response, parts))
  app.post('/api/v1/plan/bake-off', (request, response) => postBakeOff(request, response, parts))
}

async function getPlan({ query }: Request, response: Response, parts: PlanParts): Promise<void> {
  const { room, work } = parts
  const toldLast = () => {
    const { basedOnSeq, engine, plan } = parts.plan() ?? NONE_YET
    response.json({ basedOnSeq, engine, plan })
  }
  if (query.date === undefined || query.date === room.state.day?.label) return toldLast()
  await withDay(query.date, response, parts, async (of) => {
    const isAdvised = room.state.shop?.baking.advice === true
    response.json({ basedOnSeq: of.seq, engine: null, plan: isAdvised ? await work.ask('plan', of) : null })
  })
}

const NONE_YET = { basedOnSeq: null, engine: null, plan: null }

async function postTry(request: Request, response: Response, parts: PlanParts): Promise<void> {
  await withRead(request, response, planTrySchema, ({ date, loads, forbids }) => {
    const unknown = unknownOf(parts.room.state, { loads, forbids })
    if (unknown !== null) {
      sendProblem(response, { status: 422, title: 'Mistakes in what was sent', detail: unknown })
      return Promise.resolve()
    }
    const wished = (state: State): State => ({ ...state, planned: asPlanned(loads), forbids })
    const free = (state: State): State => ({ ...state, planned: new Map(), forbids: [] })
    return withDay(date, response, parts, async (of, lineOf) => {
      const asked = { ...of, line: lineOf(wished), freeLine: lineOf(free), before: null }
      response.json((await parts.work.ask('planTry', asked)) ?? { plan: null, free: null })
    })
  })
}

type Loads = readonly Omit<PlannedLoad, 'id' | 'order' | 'done'>[]

function asPlanned(loads: Loads): Map<PlannedLoad['id'], PlannedLoad> {
  return new Map(
    loads.map((load, order) => {
      const id = plannedId(`tried.${order}`)
      return [id, { ...load, id, order, done: false }]
    }),
  )
}

/** @returns what the shop has not, as a sentence */
function unknownOf({ shop }: State, { loads, forbids }: { loads: Loads; forbids: State['forbids'] }): string | null {
  if (shop === null) return null
  const shelf = [...loads, ...forbids].find(({ shelfId }) => shelfId !== null && !shop.shelves.has(shelfId))
  if (shelf !== undefined) return `The set-up has no shelf "${shelf.shelfId}"; its ids are in /api/v1/set-up.`
  const named = [...loads.flatMap(({ lines }) => lines), ...forbids].map(({ varietyId }) => varietyId)
  const variety = named.find((id) => id !== null && !shop.varieties.has(id))
  return variety == null ? null : `The set-up has no variety "${variety}"; its ids are in /api/v1/set-up.`
}

async function postWhatIf(request: Request, response: Response, parts: PlanParts): Promise<void> {
  await withRead(request, response, whatIfSchema, ({ date, change }) => {
    const lines = change.kind === 'order' ? change.lines : []
    const unknown = unknownOf(parts.room.state, { loads: [{ shelfId: null, inAtMs: null, lines }], forbids: [] })
    if (unknown !== null) {
      sendProblem(response, { status: 422, title: 'Mistakes in what was sent', detail: unknown })
      return Promise.resolve()
    }
    return withDay(date, response, parts, async (of) => {
      response.json(await parts.work.ask('whatIf', { ...of, change }))
    })
  })
}

async function postBakeOff(request: Request, response: Response, { work }: PlanParts): Promise<void> {
  const read = readBakeOff(request.body)
  if (!read.ok) {
    const detail = 'Nothing was planned.'
    sendProblem(response, { status: 422, title: 'Mistakes in the planning problem', detail, errors: read.problems })
    return
  }
  await whileWorking(response, async () => {
    response.json(await work.ask('bakeOff', read.given))
  })
}

type LineOf = (wished?: (state: State) => State) => LineToday

/** The open day, as it stands; or one of the next, as it can be foreseen. Left out: the open one, else the shop's date. */
async function withDay(
  asked: unknown,
  response: Response,
  parts: PlanParts,
  run: (of: PlanOf, lineOf: LineOf) => Promise<void>,
): Promise<void> {
  const { history, room } = parts
  if (!(await isReady(response, history))) return
  await withShop(response, parts, async (shop) => {
    const nowMs = parts.now()
    const open = room.state.day?.label ?? null
    const today = localDate(shop.profile.zone, nowMs)
    const date = asked ?? open ?? today
    const last = dateAfter(today, COMING_DAYS_MAX)
    if (typeof date !== 'string' || !isDate(date) || date > last || (date < today && date !== open)) {
      const detail = `"date" is a day from ${today} to ${last}, e.g. ${dateAfter(today, 1)}.`
      return sendProblem(response, { status: 400, title: 'Bad request', detail })
    }
    const now = date === open ? dayNow(history, nowMs) : null
    if (now !== null) {
      const before = parts.plan()?.plan ?? null
      const lineOf: LineOf = (wished) => dayNow(history, nowMs, wished)?.line ?? now.line
      return run({ ...now, before }, lineOf)
    }
    const noonMs = noonOf(shopClock(shop.profile.zone, nowMs), date)
    const lineOf: LineOf = (wished = (state) => state) => dayAheadLine(wished(room.state), { nowMs, noonMs, date })
    await run({ line: lineOf(), noonMs, today: null, before: null, seq: room.state.seq }, lineOf)
  })
}
