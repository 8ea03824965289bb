import type { ActType } from '../../shared-core/day/commands.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { rolesOf } from './permissions.ts'

/** `everybody`: also who has not joined. */
export type Right = 'everybody' | readonly Role[]

const ALL: readonly Role[] = ['wall', 'bench', 'counter', 'desk']
const DESK: readonly Role[] = ['desk']
const act = (type: ActType) => rolesOf(type)

/**
 * Who may ask for what, where a shop is closed. Everybody on the line reads the shop as it is now, since its screen shows
 * it; what it earned, how it is set up and who comes in is the desk's. What a till or sensor posts is a command, and
 * follows the same table as a tap. A route that does not stand here is the desk's.
 */
export const ROUTE_RIGHTS: Readonly<Record<string, Right>> = {
  'GET /api/health': 'everybody',
  'GET /api/openapi.json': 'everybody',
  'GET /api/v1/me': 'everybody',
  'POST /api/v1/join': 'everybody',
  // Who is not let in any more has nothing left to give back, and is told so.
  'POST /api/v1/leave': 'everybody',
  'GET /api/v1/state': ALL,
  'GET /api/v1/events': ALL,
  // Each command is asked about by itself.
  'POST /api/v1/commands': ALL,
  'GET /api/v1/addresses': ALL,
  'GET /api/v1/outlook': ALL,
  'GET /api/v1/plan': ALL,
  'POST /api/v1/plan/try': DESK,
  'POST /api/v1/plan/what-if': DESK,
  'POST /api/v1/plan/bake-off': DESK,
  'GET /api/v1/set-up.schema.json': ALL,
  'POST /api/v1/sales': act('sell'),
  'POST /api/v1/sales/files': DESK,
  'GET /api/v1/sales/files': DESK,
  'GET /api/v1/sales/files/:id': DESK,
  'DELETE /api/v1/sales/files/:id': DESK,
  'POST /api/v1/sales/files/:id/preview': DESK,
  'POST /api/v1/sales/files/:id/take': DESK,
  'GET /api/v1/sales/files/:id/bad': DESK,
  'POST /api/v1/sales/files/:id/bad': DESK,
  'GET /api/v1/sales/names': DESK,
  'PUT /api/v1/sales/names': DESK,
  'GET /api/v1/orders/details': ['bench', 'counter', 'desk'],
  'GET /api/v1/orders/names': DESK,
  'DELETE /api/v1/orders/details/:id': DESK,
  'POST /api/v1/orders': act('takeOrder'),
  'GET /api/v1/orders': ALL,
  'GET /api/v1/orders/:id': ALL,
  'DELETE /api/v1/orders/:id': act('cancelOrder'),
  'POST /api/v1/orders/:id/handed-over': act('handOverOrder'),
  // A calendar's link lets in here alone.
  'GET /api/v1/orders.ics': ['counter', 'desk'],
  'POST /api/v1/orders/calendar': DESK,
  // A file of orders says whom they are for.
  'POST /api/v1/orders/import': DESK,
  'GET /api/v1/orders/import/mappings': DESK,
  'PUT /api/v1/orders/import/mappings': DESK,
  'POST /api/v1/counts': act('sweep'),
  'POST /api/v1/oven-readings': act('readOven'),
  'POST /api/v1/readings': act('readPlace'),
  'POST /api/v1/load-list': act('setLoadList'),
  'GET /api/v1/set-up': DESK,
  'POST /api/v1/set-up': DESK,
  'GET /api/v1/set-up/versions': DESK,
  'POST /api/v1/set-up/versions/:seq/restore': DESK,
  'GET /api/v1/formulas/:id': DESK,
  'POST /api/v1/formulas': DESK,
  'GET /api/v1/days': DESK,
  'GET /api/v1/days/:label': DESK,
  'GET /api/v1/days/:label/figures': DESK,
  'GET /api/v1/days/:label/account.csv': DESK,
  'GET /api/v1/days/:label/entries.jsonl': DESK,
  'GET /api/v1/history/sales': DESK,
  'GET /api/v1/history/sales.csv': DESK,
  'GET /api/v1/history/sales/:date': DESK,
  'GET /api/v1/trust': DESK,
  'GET /api/v1/coming': DESK,
  'GET /api/v1/oven/heat': DESK,
  'GET /api/v1/learnt-times': DESK,
  'GET /api/v1/holidays': DESK,
  'GET /api/v1/holidays/regions': DESK,
  'GET /api/v1/devices': DESK,
  'POST /api/v1/devices/codes': DESK,
  'DELETE /api/v1/devices/codes/:code': DESK,
  'POST /api/v1/devices/tokens': DESK,
  'PATCH /api/v1/devices/:id': DESK,
  'DELETE /api/v1/devices/:id': DESK,
  'GET /api/v1/refused': DESK,
  'GET /api/v1/copies': DESK,
  'GET /api/v1/export/entries.jsonl': DESK,
}

const PATTERNS = Object.entries(ROUTE_RIGHTS).map(([route, right]) => {
  const [method = '', path = ''] = route.split(' ')
  const pattern = path.replaceAll('.', '\\.').replaceAll(/:\w+/g, '[^/]+')
  return { method, pattern: new RegExp(`^${pattern}$`), right }
})

/**
 * Who may ask for this; null where nobody is asked who they are: the pages and their files, which hold nothing of the
 * shop.
 * @param path as it stands in the request, without the query
 */
export function rightOf(method: string, path: string): Right | null {
  // However it is written, what could be meant for the API is held for it.
  if (!/^\/(api|%)/i.test(path)) return null
  const asked = method === 'HEAD' ? 'GET' : method
  return PATTERNS.find((one) => one.method === asked && one.pattern.test(path))?.right ?? DESK
}
