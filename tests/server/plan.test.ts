import { describe, expect, it } from 'vitest'
import { localDate } from '../../server/live/shop-clock.ts'
import type { PlanJson } from '../../server/plan/plan-instance.ts'
import type { TriedPlan } from '../../server/work/advise-questions.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { isAdvised } from '../../shared-core/live/plan.ts'
import type { PlanTold } from '../../shared-core/live/protocol.ts'
import type { WhatIfAnswer } from '../../shared-core/plan/what-if.ts'
import { hours, shopWith } from '../core/support/shop.ts'
import { zoneAtHour } from '../core/support/zone-at-hour.ts'
import { violationsOf } from '../reference/bake-off/feasible.ts'
import { loadReadyAt, madeShop, madeVariety } from '../reference/bake-off/made-shop.ts'
import { connect } from './support/screen-socket.ts'
import { ask, startServer } from './support/start-server.ts'

const HOUR_MS = 3_600_000

/** A shop that bakes until it closes, in which somebody has said what sells; the day is not open yet. */
async function startShop(usual: number | null = 100) {
  const base = shopWith()
  const varieties = new Map([...base.varieties].map(([id, one]) => [id, { ...one, usual }]))
  const profile = { ...base.profile, zone: zoneAtHour(12) }
  const times = { ovenReadyMinute: 300, openMinute: 360, changeoverFromMinute: null, changeoverToMinute: null }
  const server = await startServer({
    shop: { ...base, profile, varieties, hours: hours({ ...times, closeMinute: 1_200, secondMenu: null }) },
  })
  let deviceSeq = 0
  const act = async (more: object) => {
    deviceSeq += 1
    const body = { id: `act0000000${String(deviceSeq).padStart(2, '0')}`, deviceSeq, tappedAtMs: null, ...more }
    const { status, text } = await ask(server, '/api/v1/commands', { body })
    expect([status, status === 200 ? '' : text]).toEqual([200, ''])
  }
  const open = async () => {
    await act({ type: 'openDay' })
    const sinceMs = Date.now() - 12 * HOUR_MS
    await act({ type: 'carryIn', doughId: 'plain', varietyId: null, pieces: 240, stage: 'chill', sinceMs })
  }
  return { server, act, open }
}

type Shop = Awaited<ReturnType<typeof startShop>>
type Screen = Awaited<ReturnType<typeof connect>>

const toldOf = (screen: Screen) =>
  screen.messages.flatMap((one): PlanTold[] => (one.type === 'plan' ? [one] : [])).at(-1)

/** The newest plan that a screen was told, of the state as it is or a later one. */
async function planOn(screen: Screen, { server }: Shop): Promise<Plan> {
  await screen.until(() => (toldOf(screen)?.plan?.loads.length ?? 0) > 0)
  const plan = toldOf(screen)?.plan
  if (plan == null) throw new Error(`no plan of ${server.room.state.seq}`)
  return plan
}

describe('the plan of a server', () => {
  it('[I56] given dough and guesses, when a day is open, then all screens are told, one that joins too, and the API says the same', async () => {
    const shop = await startShop()
    const { server, open } = shop
    const none = { basedOnSeq: null, engine: null, plan: null }
    expect((await ask(server, '/api/v1/plan')).json).toEqual(none)
    const wall = await connect(server, 'wall-1')
    await open()
    const plan = await planOn(wall, shop)
    expect(plan.loads.every(({ id, isPinned }) => isAdvised(id) && !isPinned)).toBe(true)
    const late = await connect(server, 'counter-1', {}, 'plan')
    const { type: _type, ...told } = toldOf(late) ?? { type: null }
    expect((await ask(server, '/api/v1/plan')).json).toEqual(told)
    await Promise.all([wall.close(), late.close()])
  })

  it('[I56] given an advised load, when it is tapped in as advised, then its id is in the journal and the next plan goes on without it', async () => {
    const shop = await startShop()
    const wall = await connect(shop.server, 'wall-1')
    await shop.open()
    const first = (await planOn(wall, shop)).loads[0]
    if (first === undefined) throw new Error('there is one')
    await shop.act({ type: 'load', shelfId: first.shelfId, plannedId: first.id, lines: first.lines })
    expect([...shop.server.room.state.loads.values()].map(({ plannedId }) => plannedId)).toEqual([first.id])
    const { seq } = shop.server.room.state
    await wall.until(() => (toldOf(wall)?.basedOnSeq ?? 0) >= seq)
    expect(toldOf(wall)?.plan?.loads.some(({ id }) => id === first.id)).toBe(false)
    await wall.close()
  })

  it('[I56] given advice that is switched off, when told, then there is no plan, today or ahead; on again, there is', async () => {
    const shop = await startShop()
    const { server, act, open } = shop
    const wall = await connect(server, 'wall-1')
    await open()
    await planOn(wall, shop)
    const switched = (advice: boolean) => {
      const baking = { ...(server.room.state.shop ?? shopWith()).baking, advice }
      return act({ type: 'changeSetUp', changes: [{ entity: 'baking', value: baking }] })
    }
    await switched(false)
    await wall.until(() => toldOf(wall)?.plan === null)
    const date = dateAfter(server.room.state.day?.label ?? '', 1)
    expect((await ask(server, `/api/v1/plan?date=${date}`)).json).toMatchObject({ plan: null })
    await switched(true)
    await planOn(wall, shop)
    await wall.close()
  })
})

describe('plans over HTTP', () => {
  it('[I57] given a day to come, when asked for, then it is planned whole; of what nobody knows anything there is none', async () => {
    const { server } = await startShop()
    const date = dateAfter(localDate(server.room.state.shop?.profile.zone ?? '', Date.now() as never), 1)
    const { plan } = (await ask(server, `/api/v1/plan?date=${date}`)).json as { plan: Plan }
    expect([plan.date, plan.loads.length > 0]).toEqual([date, true])
    const unknown = await startShop(null)
    expect((await ask(unknown.server, `/api/v1/plan?date=${date}`)).json).toMatchObject({ plan: null })
    for (const wrong of [dateAfter(date, -2), dateAfter(date, 20), 'tomorrow'])
      expect((await ask(server, `/api/v1/plan?date=${wrong}`)).status, wrong).toBe(400)
  })

  it('[I58] given loads and forbidden spans, when tried, then they are in the plan, nothing is written, and the free day is told', async () => {
    const shop = await startShop()
    const { server, open } = shop
    await open()
    const { seq } = server.room.state
    const free = (await ask(server, '/api/v1/plan/try', { body: { loads: [], forbids: [] } })).json as TriedPlan
    const inAtMs = (free.plan.loads[0]?.inAtMs ?? 0) + 30 * 60_000
    const loads = [{ shelfId: 's1', inAtMs, lines: [{ varietyId: 'sesame', pieces: 12 }] }]
    const forbids = [{ shelfId: 's2', varietyId: null, fromMs: inAtMs - 86_400_000, toMs: inAtMs + 86_400_000 }]
    const tried = (await ask(server, '/api/v1/plan/try', { body: { loads, forbids } })).json as TriedPlan
    expect(tried.plan.loads.filter(({ isPinned }) => isPinned)).toMatchObject(loads)
    expect(tried.plan.loads.some(({ shelfId }) => shelfId === 's2')).toBe(false)
    expect(free.free.profitCents).toBe(free.plan.figures.profitCents)
    expect(tried.free.profitCents).toBeGreaterThan(tried.plan.figures.profitCents)
    expect([server.room.state.seq, server.room.state.planned.size]).toEqual([seq, 0])
    const unknown = [{ shelfId: 's9', inAtMs: null, lines: [{ varietyId: 'sesame', pieces: 12 }] }]
    const refused = await ask(server, '/api/v1/plan/try', { body: { loads: unknown, forbids: [] } })
    expect([refused.status, refused.text]).toEqual([422, expect.stringContaining('no shelf \\"s9\\"')])
  })

  it('[I58] given one thing another way, when asked what if, then the figures of both; what cannot be is refused', async () => {
    const { server, open } = await startShop()
    await open()
    const whatIf = (change: object) => ask(server, '/api/v1/plan/what-if', { body: { change } })
    const { before, after } = (await whatIf({ kind: 'shelf' })).json as WhatIfAnswer
    expect(before.baked).toBeGreaterThan(0)
    expect(after.profitCents).toBeGreaterThanOrEqual(before.profitCents - 100)
    expect((await whatIf({ kind: 'boards', more: 0 })).status).toBe(422)
    expect((await whatIf({ kind: 'luck' })).status).toBe(422)
    const order = { kind: 'order', dueAtMs: Date.now(), lines: [{ varietyId: 'onion', pieces: 36 }] }
    expect((await whatIf(order)).text).toContain('no variety \\"onion\\"')
  })

  it('[I53] given a planning problem, when posted, then its plan; with a mistake, its place and what would be right', async () => {
    const { server } = await startShop()
    const given = madeShop({ varieties: [madeVariety({ mean: 60 })], now: 420, running: [loadReadyAt(452, 24)] })
    const plan = (await ask(server, '/api/v1/plan/bake-off', { body: given })).json as PlanJson
    expect([plan.loads.length > 0, violationsOf(given, plan)]).toEqual([true, []])
    const refused = await ask(server, '/api/v1/plan/bake-off', { body: { ...given, close: 300 } })
    expect(refused.status).toBe(422)
    expect(refused.json).toMatchObject({ errors: [{ path: '/close', wrong: '"close" is 300.' }] })
  })
})
