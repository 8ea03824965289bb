import type { Express, Request, Response } from 'express'
import { dateAfter, isDate } from '../../shared-core/day/label.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import { carryNow } from '../../shared-core/plan/carried.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import { localDate, shopClock } from '../live/shop-clock.ts'
import { WorkStopped } from '../work/work-desk.ts'
import { isReady } from './days.ts'
import type { PastSalesParts } from './past-sales.ts'
import { withShop } from './past-sales.ts'
import { sendProblem } from './problem.ts'

/** Longer ahead nothing is decided, and each day on the way is reckoned too. */
export const COMING_DAYS_MAX = 14

interface ComingParts extends PastSalesParts {
  readonly history: History
  readonly now: () => EpochMs
}

/** How much dough and how many pieces for a day to come. */
export function comingRoutes(app: Express, parts: ComingParts): void {
  app.get('/api/v1/coming', (request, response) => getComing(request, response, parts))
}

async function getComing(request: Request, response: Response, parts: ComingParts): Promise<void> {
  if (!(await isReady(response, parts.history))) return
  await withShop(response, parts, async (shop) => {
    const today = localDate(shop.profile.zone, parts.now())
    const { date = dateAfter(today, 1) } = request.query
    const last = dateAfter(today, COMING_DAYS_MAX)
    if (typeof date !== 'string' || !isDate(date) || date < today || date > last) {
      const detail = `"date" is a day from ${today} to ${last}: /api/v1/coming?date=${dateAfter(today, 1)}.`
      return sendProblem(response, { status: 400, title: 'Bad request', detail })
    }
    const clock = shopClock(shop.profile.zone, parts.now())
    const looked = { state: parts.room.state, shop, noonOf: (day: string) => noonOf(clock, day) }
    const coming = await parts.work.ask('coming', { date, clock, carry: carryNow(looked, date) })
    // A thread that has just been begun anew.
    if (coming === null) throw new WorkStopped('it knows of no set-up yet')
    response.json(coming)
  })
}
