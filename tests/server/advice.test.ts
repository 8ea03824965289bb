import { describe, expect, it } from 'vitest'
import { AdviceKeeper } from '../../server/work/advice-keeper.ts'
import type { AdviseAsked } from '../../server/work/advise-questions.ts'
import type { WorkDesk } from '../../server/work/work-desk.ts'
import { WorkStopped } from '../../server/work/work-desk.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import { forkState } from '../../shared-core/day/state-json.ts'
import { JournalTally } from '../../shared-core/demand/journal-tally.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { LineTally } from '../../shared-core/line/line-tally.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import type { OutlookTold, PlanTold } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import { openDay } from '../core/demand/tallied.ts'
import { at, lines } from '../core/support/make.ts'
import { lookingAt, outlookWith } from '../core/support/outlook.ts'
import { planLoad, planWith } from '../core/support/plan.ts'
import { shopWith } from '../core/support/shop.ts'
import { connect } from './support/screen-socket.ts'
import { ask, startServer } from './support/start-server.ts'

/** A keeper with a day, a desk and a clock that the test moves by hand. */
function kept() {
  const day = openDay()
  const state = forkState(day.start)
  const tally = new JournalTally(at('12:00'))
  const world = { nowMs: at('8:00'), monotonicMs: 0, folded: 0, isGone: false, isOpen: true, behind: 0 }
  const asked: (AdviseAsked & { answer: (lost: number, plan?: Plan | null) => void })[] = []
  const told: OutlookTold[] = []
  const plans: PlanTold[] = []
  const errors: string[] = []
  let due: (() => void) | null = null
  const desk = {
    ask: async (_kind: string, one: AdviseAsked) => {
      if (world.isGone) throw new WorkStopped('gone')
      return new Promise((resolve) => {
        const answer = (lost: number, plan: Plan | null = null) =>
          resolve({ outlook: outlookWith([lookingAt('sesame', { lost })]), plan, planMs: 3 })
        asked.push({ ...one, answer })
      })
    },
    onBegun: () => undefined,
  } as never as WorkDesk
  const keeper = new AdviceKeeper({
    desk,
    history: {
      get behind() {
        return world.behind
      },
      catchUp: async () => {
        for (const entry of day.entries.slice(world.folded)) {
          tally.before(state, entry)
          applyEntry(state, entry)
          tally.after(state, entry)
        }
        world.folded = day.entries.length
      },
      today: (look) => (world.isOpen ? look(state, tally, new LineTally()) : null),
    },
    now: () => world.nowMs,
    monotonic: () => world.monotonicMs,
    after: (ms, run) => {
      const atMs = world.monotonicMs + ms
      due = () => {
        world.monotonicMs = Math.max(world.monotonicMs, atMs)
        run()
      }
      return () => {
        due = null
      }
    },
    tellAll: (one) => (one.type === 'plan' ? plans.push(one) : told.push(one)),
    log: { error: (_details, message) => errors.push(message), info: () => undefined },
  })
  const settle = () => new Promise((resolve) => setImmediate(resolve))
  /** What was planned comes due. @returns whether anything was */
  const pass = async () => {
    const run = due
    due = null
    run?.()
    await settle()
    return run !== null
  }
  /** News comes, is asked about, and answered with a plan. */
  const replan = async (plan: Plan | null) => {
    keeper.news()
    await pass()
    asked.at(-1)?.answer(0, plan)
    await settle()
  }
  return { day, state, keeper, world, asked, told, plans, errors, pass, settle, replan }
}

const lost = ({ outlook }: OutlookTold) => outlook?.varieties[0]?.lost ?? null

describe('the outlook as it is kept', () => {
  it('[Q111] given a tap, when it is on disk, then today with it is asked about and all screens are told', async () => {
    const { day, keeper, asked, told, pass, settle } = kept()
    day.at('7:30', { type: 'sell', lines: lines('sesame', 6) })
    keeper.news()
    await pass()
    expect(asked.map(({ today }) => today.items.find(({ id }) => id === 'sesame')?.sold)).toEqual([[450, 6]])
    asked[0]?.answer(3)
    await settle()
    expect(told.map((one) => [one.basedOnSeq, lost(one)])).toEqual([[day.state.seq, 3]])
    expect(keeper.outlook).toBe(told[0])
  })

  it('[Q111] given taps while one is asked about, when it is answered, then one more is asked, with all of them, half a second later', async () => {
    const { day, keeper, world, asked, told, pass, settle } = kept()
    keeper.news()
    await pass()
    for (const clock of ['7:30', '7:31', '7:32']) {
      day.at(clock, { type: 'sell', lines: lines('sesame', 1) })
      keeper.news()
    }
    expect(await pass()).toBe(false)
    expect(asked).toHaveLength(1)
    asked[0]?.answer(1)
    await settle()
    expect(world.monotonicMs).toBe(0)
    expect(await pass()).toBe(true)
    expect(world.monotonicMs).toBe(500)
    expect(asked).toHaveLength(2)
    expect(asked[1]?.today.items.find(({ id }) => id === 'sesame')?.sold).toEqual([450, 1, 451, 1, 452, 1])
    asked[1]?.answer(2)
    await settle()
    expect(told.map(lost)).toEqual([1, 2])
    expect(await pass()).toBe(false)
  })

  it('[Q111] given nobody taps, when a minute has passed, then it is asked anew; before that not', async () => {
    const { keeper, world, asked, pass, settle } = kept()
    keeper.news()
    await pass()
    asked[0]?.answer(1)
    await settle()
    world.nowMs = epochMs(at('8:01') - 1)
    keeper.tick()
    expect(await pass()).toBe(false)
    world.nowMs = at('8:01')
    keeper.tick()
    expect(await pass()).toBe(true)
    expect(asked.map(({ today }) => today.nowMinute)).toEqual([480, 481])
  })

  it('[Q111] given a day that is closed, when looked at, then all are told once that there is none', async () => {
    const { keeper, world, asked, told, pass, settle } = kept()
    keeper.news()
    await pass()
    asked[0]?.answer(1)
    await settle()
    world.isOpen = false
    for (let times = 0; times < 2; times += 1) {
      keeper.news()
      await pass()
    }
    expect(told.map(({ outlook }) => outlook !== null)).toEqual([true, false])
  })

  it('[Q109] given a thread that has ended, when asked, then nobody is told anything, no fault is logged, and news is asked about again', async () => {
    const { keeper, world, asked, told, errors, pass } = kept()
    world.isGone = true
    keeper.news()
    await pass()
    expect([told, errors]).toEqual([[], []])
    world.isGone = false
    keeper.news()
    await pass()
    expect(asked).toHaveLength(1)
  })

  it('[Q111] given days that are still being made, when looked at, then nothing is asked', async () => {
    const { keeper, world, asked, pass } = kept()
    world.behind = 5_000
    keeper.news()
    await pass()
    expect(asked).toEqual([])
    keeper.close()
    keeper.news()
    expect(await pass()).toBe(false)
  })
})

describe('the plan as it is kept', () => {
  const [FIRST, SECOND] = [planLoad('8:20', 1), planLoad('9:00', 2)]

  it('[I55] given a plan, when the next one is the same a moment later, then nobody is told again; another one is told', async () => {
    const { day, plans, keeper, replan } = kept()
    await replan(planWith([FIRST]))
    await replan(planWith([FIRST], { atMs: at('8:01') }))
    expect(plans).toEqual([{ type: 'plan', basedOnSeq: day.state.seq, engine: 1, plan: planWith([FIRST]) }])
    expect(keeper.plan).toBe(plans[0])
    await replan(planWith([FIRST, SECOND]))
    await replan(null)
    expect(plans.map(({ plan }) => plan?.loads.length ?? null)).toEqual([1, 2, null])
  })

  it('[I55] given a plan of which only figures are others, when it is made anew, then they are told after half a minute', async () => {
    const { plans, world, replan } = kept()
    const { figures } = planWith([])
    const lost = (pieces: number) => planWith([FIRST], { figures: { ...figures, lost: pieces } })
    await replan(lost(1))
    world.monotonicMs += 20_000
    await replan(lost(2))
    world.monotonicMs += 10_000
    await replan(lost(3))
    expect(plans.map(({ plan }) => plan?.figures.lost)).toEqual([1, 3])
  })

  it('[I55] given a load that is late, when its times move with every look, then screens are told once a minute, not at each', async () => {
    const { plans, world, replan } = kept()
    const late = (seconds: number) => {
      const outAtMs = epochMs(at('8:36') + seconds * 1_000)
      const runsOut = { varietyId: varietyId('sesame'), kind: 'runsOut', atMs: outAtMs, kettleByMs: null } as const
      return planWith([{ ...FIRST, outAtMs, readyAtMs: epochMs(outAtMs + 900_000), why: [runsOut] }])
    }
    for (let seconds = 0; seconds <= 60; seconds += 1) {
      world.monotonicMs += 100
      await replan(late(seconds))
    }
    expect(plans.map(({ plan }) => plan?.loads[0]?.outAtMs)).toEqual([at('8:36'), at('8:37')])
  })

  it('[I55] given sales alone, when the plan is some seconds old, then the outlook has them at once and the plan stays; at five seconds it is made anew', async () => {
    const { keeper, world, asked, told, plans, pass, settle, replan } = kept()
    await replan(planWith([FIRST]))
    keeper.news(true)
    await pass()
    expect(world.monotonicMs).toBe(500)
    asked[1]?.answer(2, planWith([FIRST]))
    await settle()
    expect([asked.map(({ isPlanKept }) => isPlanKept), told.map(lost)]).toEqual([
      [false, true],
      [0, 2],
    ])
    // Nothing else comes: the plan is owed, and made anew by itself.
    expect(await pass()).toBe(true)
    expect(world.monotonicMs).toBe(5_000)
    asked[2]?.answer(3, planWith([FIRST, SECOND]))
    await settle()
    expect([asked[2]?.isPlanKept, plans.length, await pass()]).toEqual([false, 2, false])
  })

  it('[I55] given sales that wait for a plan, when anything else is tapped, then it is made anew as soon as ever', async () => {
    const { keeper, world, asked, pass, settle, replan } = kept()
    await replan(planWith([FIRST]))
    keeper.news(true)
    await pass()
    asked[1]?.answer(1, planWith([FIRST]))
    await settle()
    keeper.news()
    await pass()
    expect([world.monotonicMs, asked[2]?.isPlanKept]).toEqual([1_000, false])
    asked[2]?.answer(1, planWith([FIRST]))
    await settle()
    keeper.news(true)
    await pass()
    asked[3]?.answer(1)
    await settle()
    world.isOpen = false
    expect([await pass(), await pass(), asked.length]).toEqual([true, false, 4])
  })

  it('[I55] given a plan, when the next is asked for, then the one that stands goes along, told or not, and the line as it is', async () => {
    const { asked, replan } = kept()
    await replan(planWith([FIRST]))
    const standing = planWith([FIRST], { atMs: at('8:01') })
    await replan(standing)
    await replan(null)
    expect(asked.map(({ before }) => before?.atMs ?? null)).toEqual([null, at('8:00'), at('8:01')])
    expect(asked[0]?.line).toMatchObject({ date: '2026-11-24', isOpen: true, nowMs: at('8:00') })
  })

  it('[I55] given advice that is switched off, when asked, then loads are not asked about; a closed day has no plan', async () => {
    const { state, asked, plans, world, replan } = kept()
    await replan(planWith([FIRST]))
    if (state.shop !== null) state.shop = { ...state.shop, baking: { ...state.shop.baking, advice: false } }
    await replan(null)
    expect(asked.map(({ line }) => line === null)).toEqual([false, true])
    if (state.shop !== null) state.shop = { ...state.shop, baking: { ...state.shop.baking, advice: true } }
    await replan(planWith([SECOND]))
    world.isOpen = false
    await replan(null)
    await replan(null)
    expect(plans.map(({ plan }) => plan?.loads.length ?? null)).toEqual([1, null, 1, null])
  })
})

describe('the outlook of a server', () => {
  it('[Q111] given a shop with guesses, when pieces come out and sell, then screens are told, one that joins too, and the API says the same', async () => {
    const shop = shopWith()
    // Of rye, a dough of its own, nobody has said anything: nothing is told of it either.
    const varieties = new Map(
      [...shop.varieties].map(([id, one]) => [id, { ...one, usual: id === 'rye' ? null : 100 }]),
    )
    const server = await startServer({ shop: { ...shop, varieties } })
    const wall = await connect(server, 'wall-1')
    const outlookOf = (screen: typeof wall) =>
      screen.messages.flatMap((one) => (one.type === 'outlook' ? [one] : [])).at(-1)
    expect(outlookOf(wall)).toBeUndefined()
    expect((await ask(server, '/api/v1/outlook')).json).toEqual({ basedOnSeq: null, engine: null, outlook: null })
    const tap = (id: string, act: object) =>
      ask(server, '/api/v1/commands', { body: { id, deviceSeq: 1, tappedAtMs: null, ...act } })
    await tap('open000001', { type: 'openDay' })
    await tap('sell000001', { type: 'sell', lines: lines('sesame', 6, 'rye', 2) })
    const seq = server.room.state.seq
    await wall.until(() => (outlookOf(wall)?.basedOnSeq ?? 0) >= seq)
    const told = outlookOf(wall)
    expect(told?.outlook?.varieties).toMatchObject([{ varietyId: varietyId('sesame'), basis: 'guess' }])
    const late = await connect(server, 'counter-1', {}, 'outlook')
    expect(outlookOf(late)).toEqual(told)
    expect((await ask(server, '/api/v1/outlook')).json).toEqual({
      basedOnSeq: told?.basedOnSeq,
      engine: told?.engine,
      outlook: told?.outlook,
    })
    await Promise.all([wall.close(), late.close()])
  })
})
