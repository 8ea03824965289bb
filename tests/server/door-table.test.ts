import { describe, expect, it } from 'vitest'
import { rightOf } from '../../server/devices/route-rights.ts'
import { newToken } from '../../server/devices/token.ts'
import { OPERATIONS } from '../../server/http/openapi/document.ts'
import type { ActType, Command } from '../../shared-core/day/commands.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { browserHeaders, facesOf, letIn } from './support/join.ts'
import { FakeScreen, RoomWorld } from './support/room-world.ts'
import { connect } from './support/screen-socket.ts'
import type { Asked, TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

/**
 * The tables of the server, written a second time by hand: w for the wall, b bench, c counter, d desk. Whoever adds a
 * command or a route says here who may, and the tests compare the two.
 */
const COMMANDS: { readonly [type in ActType]: string } = {
  shape: 'b d',
  carryIn: 'b d',
  pull: 'w b d',
  dip: 'w b d',
  lift: 'w b d',
  board: 'w b d',
  moveBatch: 'b d',
  load: 'w b d',
  changeLoad: 'b d',
  flip: 'w b d',
  out: 'w b d',
  moveLoad: 'b d',
  wasteBatch: 'b d',
  confirmPresumed: 'w b d',
  care: 'w b d',
  setBoards: 'w b c d',
  doStep: 'w b c d',
  giveStep: 'w b c d',
  testFloat: 'w b c d',
  writeNote: 'w b c d',
  clearNote: 'w b c d',
  slipChangeover: 'w b c d',
  changeOverShelf: 'w b c d',
  readOven: 'w b c d',
  setWanted: 'b d',
  planMixes: 'b d',
  orderMixes: 'b d',
  dropMix: 'b d',
  weighLine: 'b d',
  readMix: 'b d',
  moveMix: 'b d',
  foldMix: 'b d',
  endMix: 'b d',
  placeBatch: 'b d',
  readPlace: 'w b c d',
  countIngredients: 'b d',
  receiveIngredient: 'b d',
  makePreparation: 'b d',
  dropBuild: 'b d',
  weighPieces: 'b d',
  sell: 'b c d',
  sellUnnamed: 'b c d',
  sweep: 'b c d',
  lastOneGone: 'b c d',
  dayOldIn: 'b c d',
  dayOldOut: 'b c d',
  remove: 'b c d',
  count: 'b c d',
  takeOrder: 'b c d',
  changeOrder: 'b c d',
  cancelOrder: 'b c d',
  missOrder: 'b c d',
  handOverOrder: 'b c d',
  setStanding: 'c d',
  endStanding: 'c d',
  moveItems: 'w b c d',
  countPortions: 'b c d',
  takeUpOrders: 'd',
  keep: 'b c d',
  release: 'b c d',
  handOver: 'b c d',
  openDay: 'b c d',
  closeDay: 'c d',
  reopenDay: 'c d',
  setLoadList: 'b d',
  forbidLoads: 'b d',
  skipPlanned: 'w b d',
  changeSetUp: 'd',
  dropSetUp: 'd',
  takeUpSetUps: 'd',
  noteImport: 'd',
  takeBack: 'w b c d',
}

const ROUTES: Readonly<Record<string, string>> = {
  'get /api/health': 'everybody',
  'get /api/openapi.json': 'everybody',
  'get /api/v1/me': 'everybody',
  'post /api/v1/join': 'everybody',
  'post /api/v1/leave': 'everybody',
  'get /api/v1/state': 'w b c d',
  'get /api/v1/events': 'w b c d',
  'get /api/v1/addresses': 'w b c d',
  'get /api/v1/outlook': 'w b c d',
  'get /api/v1/plan': 'w b c d',
  'post /api/v1/plan/try': 'd',
  'post /api/v1/plan/what-if': 'd',
  'post /api/v1/plan/bake-off': 'd',
  'get /api/v1/set-up.schema.json': 'w b c d',
  'post /api/v1/commands': 'w b c d',
  'post /api/v1/oven-readings': 'w b c d',
  'post /api/v1/readings': 'w b c d',
  'post /api/v1/sales': 'b c d',
  'post /api/v1/sales/files': 'd',
  'get /api/v1/sales/files': 'd',
  'get /api/v1/sales/files/{id}': 'd',
  'delete /api/v1/sales/files/{id}': 'd',
  'post /api/v1/sales/files/{id}/preview': 'd',
  'post /api/v1/sales/files/{id}/take': 'd',
  'get /api/v1/sales/files/{id}/bad': 'd',
  'post /api/v1/sales/files/{id}/bad': 'd',
  'get /api/v1/sales/names': 'd',
  'put /api/v1/sales/names': 'd',
  'get /api/v1/orders/details': 'b c d',
  'get /api/v1/orders/names': 'd',
  'delete /api/v1/orders/details/{id}': 'd',
  'post /api/v1/orders': 'b c d',
  'get /api/v1/orders': 'w b c d',
  'get /api/v1/orders/{id}': 'w b c d',
  'delete /api/v1/orders/{id}': 'b c d',
  'post /api/v1/orders/{id}/handed-over': 'b c d',
  'get /api/v1/orders.ics': 'c d',
  'post /api/v1/orders/calendar': 'd',
  'post /api/v1/orders/import': 'd',
  'get /api/v1/orders/import/mappings': 'd',
  'put /api/v1/orders/import/mappings': 'd',
  'post /api/v1/counts': 'b c d',
  'post /api/v1/load-list': 'b d',
  'get /api/v1/set-up': 'd',
  'post /api/v1/set-up': 'd',
  'get /api/v1/set-up/versions': 'd',
  'post /api/v1/set-up/versions/{seq}/restore': 'd',
  'get /api/v1/formulas/{id}': 'd',
  'post /api/v1/formulas': 'd',
  'get /api/v1/days': 'd',
  'get /api/v1/days/{label}': 'd',
  'get /api/v1/days/{label}/figures': 'd',
  'get /api/v1/days/{label}/account.csv': 'd',
  'get /api/v1/days/{label}/entries.jsonl': 'd',
  'get /api/v1/history/sales': 'd',
  'get /api/v1/history/sales.csv': 'd',
  'get /api/v1/history/sales/{date}': 'd',
  'get /api/v1/trust': 'd',
  'get /api/v1/oven/heat': 'd',
  'get /api/v1/learnt-times': 'd',
  'get /api/v1/coming': 'd',
  'get /api/v1/holidays': 'd',
  'get /api/v1/holidays/regions': 'd',
  'get /api/v1/devices': 'd',
  'post /api/v1/devices/codes': 'd',
  'delete /api/v1/devices/codes/{code}': 'd',
  'post /api/v1/devices/tokens': 'd',
  'patch /api/v1/devices/{id}': 'd',
  'delete /api/v1/devices/{id}': 'd',
  'get /api/v1/refused': 'd',
  'get /api/v1/copies': 'd',
  'get /api/v1/export/entries.jsonl': 'd',
}

const ROLES: readonly Role[] = ['desk', 'wall', 'bench', 'counter']
const has = (letters: string | undefined, role: Role) => letters?.split(' ').includes(role.charAt(0)) ?? false

function closedShop(): Promise<TestServer> {
  return startServer({ shop: null, closed: { file: ':memory:', isDeskLost: false } })
}

/** Those who must get nothing, by what they show; each is of a desk, so that only the token is to blame. */
function strangers(server: TestServer): Readonly<Record<string, Record<string, string>>> {
  const { joined, expired, revoked } = facesOf(server, 'desk')
  const shown = (token: string) => browserHeaders(server, token)
  return {
    'no-token': { origin: `http://127.0.0.1:${server.port}` },
    expired: shown(expired),
    revoked: shown(revoked),
    forged: shown(newToken()),
    'forged, as a header': { authorization: `Bearer ${joined}` },
    'forged, another scheme': { ...shown(joined), authorization: `Basic ${joined}` },
  }
}

const REFUSALS = ['Join first', 'Not for this role', 'Not for this device', 'Not from this page']

/** "in" where the route itself answered, whatever it said; else the status and why it did not get there. */
function how({ status, json, headers }: Asked): string {
  const title = (json as { title?: string } | null)?.title ?? ''
  if (!REFUSALS.includes(title)) return 'in'
  const asks = headers['www-authenticate'] === undefined ? '' : ', how to come in'
  return `${status} ${title}${asks}`
}

const AWAY = '401 Join first, how to come in'

describe('every command', () => {
  it('[E2] given each command and each role, when it is tapped, then it is taken up where the role may, and only there', async () => {
    const world = await RoomWorld.started()
    const found: Record<string, string> = {}
    for (const type of Object.keys(COMMANDS)) {
      const may: string[] = []
      for (const role of ['wall', 'bench', 'counter', 'desk'] as const) {
        const { device } = new FakeScreen(`${role}-1`, role)
        const bare = { id: commandId(world.newId()), deviceSeq: 1, tappedAtMs: null, type } as Command
        const [[answered]] = await Promise.all([world.room.submit(device, [bare]), world.turn()])
        const answer = answered?.answer
        const isRefused = answer?.kind === 'refused' && answer.refusal.code === 'not-your-role'
        if (!isRefused) may.push(role.charAt(0))
      }
      found[type] = may.join(' ')
    }
    expect(found).toEqual(COMMANDS)
  })

  it('[E1] given each command and each token that does not hold, when it is posted, then nothing of it is taken', async () => {
    const server = await closedShop()
    const seq = server.journal.lastSeq()
    for (const [what, headers] of Object.entries(strangers(server))) {
      const bodies = Object.keys(COMMANDS).map((type, n) => {
        return { id: `command${String(n).padStart(5, '0')}`, deviceSeq: n + 1, tappedAtMs: null, type }
      })
      for (const body of [bodies, ...bodies.slice(0, 3)]) {
        const asked = await ask(server, '/api/v1/commands', { body, headers: { ...headers, 'x-device-role': 'desk' } })
        expect(`${what}: ${how(asked)}`).toBe(`${what}: ${AWAY}`)
      }
    }
    expect(server.journal.lastSeq()).toBe(seq)
  })
})

describe('every route', () => {
  const nameOf = ({ method, path }: (typeof OPERATIONS)[number]) => `${method} ${path}`
  const call = (server: TestServer, route: string, headers: Record<string, string>) => {
    const [method = '', path = ''] = route.split(' ')
    return ask(server, path.replaceAll(/[{}]/g, ''), { method: method.toUpperCase(), headers })
  }

  it('[E1, E2] given the API, then this table says of each route who may, and of no other', () => {
    expect(Object.keys(ROUTES).sort()).toEqual(OPERATIONS.map(nameOf).sort())
  })

  it('[E2] given each route and each role, when asked, then it answers where the role may, and 403 elsewhere', async () => {
    const server = await closedShop()
    const tokens = ROLES.map((role) => [role, letIn(server, role).token] as const)
    for (const [route, letters] of Object.entries(ROUTES)) {
      if (route === 'post /api/v1/leave') continue
      for (const [role, token] of tokens) {
        const asked = await call(server, route, browserHeaders(server, token))
        const isIn = letters === 'everybody' || has(letters, role)
        expect(`${role} ${route}: ${how(asked)}`).toBe(`${role} ${route}: ${isIn ? 'in' : '403 Not for this role'}`)
      }
    }
  })

  it("[E2] given another role's name in the headers, when asked, then a route answers no more than before, and acts are refused", async () => {
    const server = await closedShop()
    const desk = letIn(server, 'desk')
    for (const role of ['wall', 'bench', 'counter'] as const) {
      const headers = { ...browserHeaders(server, letIn(server, role).token), 'x-device-role': 'desk' }
      for (const operation of OPERATIONS.filter(({ id }) => id !== 'postLeave')) {
        const route = nameOf(operation)
        const isIn = ROUTES[route] === 'everybody' || has(ROUTES[route], role)
        const right =
          isIn && operation.isAct !== true ? 'in' : isIn ? '403 Not for this device' : '403 Not for this role'
        expect(`${role} ${route}: ${how(await call(server, route, headers))}`).toBe(`${role} ${route}: ${right}`)
      }
    }
    const asCounter = { ...browserHeaders(server, desk.token), 'x-device-role': 'counter' }
    const body = { id: 'closeset0001', deviceSeq: 1, tappedAtMs: null, type: 'dropSetUp', setUpId: 'none' }
    const dropped = await ask(server, '/api/v1/commands', { body, headers: asCounter })
    expect([dropped.status, dropped.text]).toEqual([403, expect.stringContaining('not-your-role')])
  })

  it('[E1] given each route and each token that does not hold, when asked, then 401 and how to come in', async () => {
    const server = await closedShop()
    for (const [what, headers] of Object.entries(strangers(server))) {
      for (const [route, letters] of Object.entries(ROUTES)) {
        const asked = await call(server, route, headers)
        expect(`${what} ${route}: ${how(asked)}`).toBe(`${what} ${route}: ${letters === 'everybody' ? 'in' : AWAY}`)
      }
    }
  })

  it('[E1] given addresses written in other ways, when a stranger asks, then it gets nothing of the shop', async () => {
    const server = await closedShop()
    for (const path of ODD_PATHS) {
      const asked = await ask(server, path)
      expect([401, 404], path).toContain(asked.status)
      expect(asked.text).not.toContain('foldVersion')
    }
  })
})

const ODD_PATHS = [
  ...['/API/v1/state', '/api/v1/state/', '/%61pi/v1/state', '/api/v1/%73tate', '//api/v1/state', '/api'],
  ...['/wall/../api/v1/state', '/api/health/../v1/state', '/api/v1/me/state', '/api/v1/state;x', '/api/v1/nothing'],
]

describe('every hello', () => {
  it.each([
    ['GET', '/api/v1/of-tomorrow', 'a route that nobody gave a right'],
    ['PUT', '/api/v1/state', 'another method'],
    ['POST', '/api/health', 'another method of what everybody may read'],
    ['GET', '/api/health/', 'more behind it'],
    ['GET', '/API/health', 'other letters'],
    ['GET', '/%61pi/health', 'written otherwise'],
  ])('[E1] given %s %s (%s), when asked whose it is, then it is the desk’s', (method, path) => {
    expect(rightOf(method, path)).toEqual(['desk'])
  })

  it('[E2] given each role and each page, when it says hello, then a desk opens all, others their own, and are sent there', async () => {
    const server = await closedShop()
    for (const role of ROLES) {
      const { token } = letIn(server, role)
      for (const page of ROLES) {
        const isIn = role === 'desk' || role === page
        const device = { deviceId: `${role}-as-${page}`, name: 'x', role: page, stationId: null }
        const screen = await connect(server, device.deviceId, { device }, isIn ? 'welcome' : 'refusedHello', {
          cookie: browserHeaders(server, token).cookie ?? '',
        })
        if (!isIn) {
          expect(screen.messages).toEqual([{ type: 'refusedHello', reason: 'moved', role }])
          await screen.until(() => screen.isClosed)
        }
        await screen.close()
      }
    }
  })

  it('[E1] given each token that does not hold, when it says hello or anything else, then it hears why and its link ends', async () => {
    const server = await closedShop()
    for (const [what, headers] of Object.entries(strangers(server))) {
      for (const change of [{}, { type: 'probe', t0: 1 }, { type: 'commands', commands: [] }, { device: null }]) {
        const screen = await connect(server, 'bench-1', change, 'refusedHello', headers)
        expect(screen.messages).toEqual([{ type: 'refusedHello', reason: what.split(',')[0] }])
        await screen.until(() => screen.isClosed)
      }
    }
    expect(server.room.nameOf('bench-1' as never)).toBeNull()
  })
})
