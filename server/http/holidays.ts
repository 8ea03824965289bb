import type { Express, Request, Response } from 'express'
import { isDate } from '../../shared-core/day/label.ts'
import { region as regionField } from '../../shared-core/shop/set-up-fields.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { sendProblem } from './problem.ts'
import { whileWorking } from './while-working.ts'

/** Years that one question may span: some past ones and those to come. */
export const HOLIDAY_YEARS_MAX = 10

interface HolidayParts {
  readonly work: Pick<WorkDesk, 'ask'>
}

/** Public holidays by region, for the desk to make special days of. */
export function holidayRoutes(app: Express, parts: HolidayParts): void {
  app.get('/api/v1/holidays', (request, response) => getHolidays(request, response, parts))
  app.get('/api/v1/holidays/regions', (_request, response) =>
    whileWorking(response, async () => {
      response.json(await parts.work.ask('holidayRegions', null))
    }),
  )
}

async function getHolidays(request: Request, response: Response, { work }: HolidayParts): Promise<void> {
  const { region, from, to } = request.query
  const wrong = wrongIn(region, from, to)
  if (wrong !== null) {
    const detail = `${wrong} /api/v1/holidays?region=US-IL&from=2024-01-01&to=2027-12-31.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  await whileWorking(response, async () => {
    const holidays = await work.ask('holidays', { region: String(region), from: String(from), to: String(to) })
    if (holidays !== null) {
      response.json(holidays)
      return
    }
    const detail = `No holidays are known of "${region}". /api/v1/holidays/regions lists the regions that are known.`
    sendProblem(response, { status: 404, title: 'No such region', detail })
  })
}

function wrongIn(region: unknown, from: unknown, to: unknown): string | null {
  if (!regionField().safeParse(region).success)
    return '"region" is a country or a part of one as ISO 3166 writes it, "US" or "US-IL":'
  if (typeof from !== 'string' || !isDate(from) || typeof to !== 'string' || !isDate(to))
    return '"from" and "to" are dates as YYYY-MM-DD:'
  if (from > to) return '"from" is not after "to":'
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4)) + 1
  return years > HOLIDAY_YEARS_MAX ? `"from" and "to" lie in ${HOLIDAY_YEARS_MAX} years at most:` : null
}
