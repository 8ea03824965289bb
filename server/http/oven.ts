import type { Express, Response } from 'express'
import { changeoverNow } from '../../shared-core/day/changeover.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import { hoursOn } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import { localDate, localInstant } from '../live/shop-clock.ts'
import { WorkStopped } from '../work/work-desk.ts'
import { isReady } from './days.ts'
import type { PastSalesParts } from './past-sales.ts'
import { withShop } from './past-sales.ts'

interface OvenParts extends PastSalesParts {
  readonly history: History
  readonly now: () => EpochMs
}

/** What the oven's readings and the line's taps teach. */
export function ovenRoutes(app: Express, parts: OvenParts): void {
  app.get('/api/v1/oven/heat', (_request, response) => getHeat(response, parts))
  app.get('/api/v1/learnt-times', (_request, response) => getTimes(response, parts))
}

async function getHeat(response: Response, parts: OvenParts): Promise<void> {
  const { history, work, room } = parts
  if (!(await isReady(response, history))) return
  await withShop(response, parts, async (shop) => {
    const nowMs = parts.now()
    const heat = await work.ask('ovenHeat', { line: lineToday(history), nowMs, ...whenHot(room.state, shop, nowMs) })
    if (heat === null) throw new WorkStopped('it knows of no set-up yet')
    response.json(heat)
  })
}

async function getTimes(response: Response, parts: OvenParts): Promise<void> {
  const { history, work } = parts
  if (!(await isReady(response, history))) return
  await withShop(response, parts, async () => {
    const times = await work.ask('learntTimes', { line: lineToday(history) })
    if (times === null) throw new WorkStopped('it knows of no set-up yet')
    response.json(times)
  })
}

function lineToday(history: History) {
  return history.today((_state, _sales, line) => line.day())
}

/** When the oven is empty and must be hot for the second menu, and when it is to be ready next. */
export function whenHot(state: State, shop: Shop, nowMs: EpochMs) {
  const { zone } = shop.profile
  const date = state.day?.label ?? localDate(zone, nowMs)
  const at = (minute: number) => localInstant(zone, date, minute)
  const changeover = changeoverNow(state, nowMs, rulerOf(state, nowMs, at, date))
  return {
    changeover:
      changeover === null ? null : { emptyAtMs: changeover.ovenEmptyAtMs ?? changeover.fromMs, toMs: changeover.toMs },
    readyAtMs: nextReady(shop, nowMs),
  }
}

/** The next opening within a week at which the oven is wanted. */
function nextReady(shop: Shop, nowMs: EpochMs): EpochMs | null {
  const { zone } = shop.profile
  for (let days = 0; days <= 7; days += 1) {
    const date = dateAfter(localDate(zone, nowMs), days)
    const hours = hoursOn(shop, date)
    const atMs = hours === null ? null : localInstant(zone, date, hours.ovenReadyMinute)
    if (atMs !== null && atMs > nowMs) return atMs
  }
  return null
}
