import type { Express } from 'express'
import type { OutlookTold } from '../../shared-core/live/protocol.ts'

interface OutlookParts {
  readonly outlook: () => OutlookTold | null
}

/** What the rest of today will probably bring, as the screens were told last. */
export function outlookRoutes(app: Express, parts: OutlookParts): void {
  app.get('/api/v1/outlook', (_request, response) => {
    const { basedOnSeq, engine, outlook } = parts.outlook() ?? NONE_YET
    response.json({ basedOnSeq, engine, outlook })
  })
}

const NONE_YET = { basedOnSeq: null, engine: null, outlook: null }
