import type { Express, Response } from 'express'
import type { Meaning, NamedMeaning } from '../../shared-core/live/sales-import.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { PastSalesParts } from './past-sales.ts'
import { withShop } from './past-sales.ts'
import { sendProblem } from './problem.ts'
import { withRead } from './sales-files.ts'
import { meaningsSchema } from './sales-import-schema.ts'

/** What a till calls things, and what they are. */
export function salesNameRoutes(app: Express, parts: PastSalesParts): void {
  app.get('/api/v1/sales/names', (_request, response) =>
    withShop(response, parts, async () => sendNames(response, parts)),
  )
  app.put('/api/v1/sales/names', (request, response) =>
    withRead(request, response, meaningsSchema, ({ names }) =>
      withShop(response, parts, async (shop) => {
        const errors = strangers(names, shop)
        if (errors.length > 0) {
          const detail = 'Some names are said to be what the shop has not; nothing was taken.'
          return sendProblem(response, { status: 422, title: 'Mistakes in the names', detail, errors })
        }
        await parts.work.ask('salesMean', { meanings: names })
        await sendNames(response, parts)
      }),
    ),
  )
}

async function sendNames(response: Response, { work }: PastSalesParts): Promise<void> {
  response.json({ names: await work.ask('salesNames', null) })
}

/** Varieties that the shop has not. A retired one may be meant: it was sold once. */
function strangers(names: readonly NamedMeaning[], { varieties }: Shop): readonly Problem[] {
  const known = [...varieties.values()].map(({ id }) => id).join(', ')
  return names.flatMap(({ name, meaning }, index) =>
    varietiesIn(meaning)
      .filter((id) => !varieties.has(id))
      .map((id) => ({
        path: `/names/${index}/meaning`,
        wrong: `"${name}" is said to be "${id}", which is no variety of the shop.`,
        right: `One of: ${known}.`,
      })),
  )
}

function varietiesIn(meaning: Meaning | null) {
  if (meaning?.kind === 'pack') return meaning.lines.map((line) => line.varietyId)
  if (meaning?.kind === 'unnamed') return meaning.among ?? []
  if (meaning?.kind === 'variety' || meaning?.kind === 'kitchen')
    return meaning.varietyId === null ? [] : [meaning.varietyId]
  return []
}
