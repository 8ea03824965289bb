import type { Express, Request, Response } from 'express'
import { isDate } from '../../shared-core/day/label.ts'
import { region as regionField } from '../../shared-core/shop/set-up-fields.ts'
import { holidayRegions, holidaysOf } from './holidays-of.ts'
import { sendProblem } from './problem.ts'

/** Years that one question may span: some past ones and those to come. */
export const HOLIDAY_YEARS_MAX = 10

/** Public holidays by region, for the desk to make special days of. */
export function holidayRoutes(app: Express): void {
  app.get('/api/v1/holidays', getHolidays)
  app.get('/api/v1/holidays/regions', async (_request, response) => {
    response.json(await holidayRegions())
  })
}

async function getHolidays(request: Request, response: Response): Promise<void> {
  const { region, from, to } = request.query
  const wrong = wrongIn(region, from, to)
  if (wrong !== null) {
    const detail = `${wrong} /api/v1/holidays?region=US-IL&from=2024-01-01&to=2027-12-31`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const holidays = await holidaysOf(String(region), String(from), String(to))
  if (holidays === null) {
    const detail = `No holidays are known of "${region}". /api/v1/holidays/regions lists the regions that are known.`
    sendProblem(response, { status: 404, title: 'No such region', detail })
    return
  }
  response.json(holidays)
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
