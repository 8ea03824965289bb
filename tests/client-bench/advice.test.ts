import { describe, expect, it } from 'vitest'
import type { DayParts } from '../../client/bench/day-view.ts'
import { dayView } from '../../client/bench/day-view.ts'
import { lineView } from '../../client/bench/line-view.ts'
import { skipAct } from '../../client/bench/sheets/skip-sheet.tsx'
import { whyItems } from '../../client/bench/sheets/why-part.tsx'
import { shelfViews } from '../../client/bench/shelf-view.ts'
import { planNow } from '../../client/parts/advice.ts'
import { adviceWords } from '../../client/words/advice.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { State } from '../../shared-core/day/state.ts'
import { doughId, plannedId, varietyId } from '../../shared-core/ids.ts'
import type { Plan, PlanChange, PlanLoad } from '../../shared-core/live/plan.ts'
import { withPlan } from '../../shared-core/plan/with-plan.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { at, batch, lines, loadOf, planned, stateWith } from '../core/support/make.ts'
import { planLoad, planWith } from '../core/support/plan.ts'
import { shopWith } from '../core/support/shop.ts'
import { clockOf, wordsOf } from './support.ts'

const SESAME = varietyId('sesame')
const GONE = { varietyId: SESAME, kind: 'runsOut', atMs: at('8:52'), kettleByMs: at('8:17') } as const
const CONTACT = { varietyId: SESAME, allergens: ['egg'], where: ['kettle'] } as const

/** The keys of the test shop while this plan is followed. */
function keys(loads: readonly PlanLoad[], parts: Parameters<typeof stateWith>[0] = {}) {
  const plan = planWith(loads)
  const state = withPlan(stateWith(parts), plan)
  return shelfViews({ state, plan, nowMs: at('8:00'), words: wordsOf(), unconfirmed: new Set() })
}

describe('[I70] given a load that is advised', () => {
  it('when its key calls for it, then it says so and why, and is drawn as advised', () => {
    const [key] = keys([planLoad('8:20', 1, { why: [GONE] })])
    expect([key?.notes[0], key?.notes[1], key?.isAdvised]).toEqual([
      'advised: Sesame gone 8:52',
      'Sesame gone 8:52',
      true,
    ])
    expect(key?.name).toContain('advised: Sesame gone 8:52')
  })

  it('when an order waits for it, then the order is the reason that is said', () => {
    const order = { varietyId: SESAME, kind: 'order', dueAtMs: at('9:00'), pieces: 12 } as const
    const [key] = keys([planLoad('8:20', 1, { why: [GONE, order] })])
    expect(key?.notes[0]).toBe('advised: Sesame for the order at 9:00')
  })

  it('when people set it, then that is said, and it is drawn as set', () => {
    const id = plannedId('p1')
    const set = planned({ id: 'p1', inAt: at('8:20') })
    const [key] = keys([planLoad('8:20', 1, { id, isPinned: true })], { planned: [set] })
    expect([key?.contents, key?.notes, key?.isAdvised]).toEqual([['Sesame 48'], ['set by people'], false])
  })

  it('when something has touched what its variety should not meet, then that comes first, and nothing is said to be free of it', () => {
    const load = planLoad('8:20', 1, { why: [GONE], contacts: [CONTACT] })
    const [key] = keys([load])
    expect(key?.notes[0]).toBe('egg before Sesame')
    const [met, reason] = whyItems(load, wordsOf())
    expect(met?.texts[0]).toBe(
      'Egg has been in the water; Sesame should not meet it: wash or change first, or tell who buys it',
    )
    expect(reason?.texts).toEqual(['Sesame gone about 8:52; in time if in the kettle by 8:17'])
    for (const language of ['en', 'es'] as const) {
      const said = whyItems(load, wordsOf(shopWith(), language)).flatMap(({ title, texts }) => [title, ...texts])
      expect(said.join(' ')).not.toMatch(/free|libre|sin /i)
    }
  })
})

describe('[I71] given an advised load that is dipped later', () => {
  const kettle = (nowMs: EpochMs) => {
    const plan = planWith([planLoad('8:20', 1, { kettleAtMs: at('8:12') })])
    const chilled = batch({ id: 'c', stage: 'rack', since: at('7:00'), pieces: 48 })
    const state = withPlan(stateWith({ batches: [chilled] }), plan)
    const shop = state.shop ?? shopWith()
    return lineView({ state, plan, shop, nowMs, words: wordsOf(), stationId: null, free: null }).kettle.details
  }

  it('when the kettle waits, then it says what, when and how many dips', () => {
    expect(kettle(at('8:00'))).toEqual(['next Plain 24', 'first dip in 12 min, 1 dip'])
  })

  it('when that time has gone by, then it says what alone', () => {
    expect(kettle(at('8:13'))).toEqual(['next Plain 24'])
  })
})

const CLOCK = { zone: 'America/Chicago', offsets: [{ fromMs: at('0:00'), offsetMinutes: -360 }] }

function band(plan: Plan | null, nowMs: EpochMs, state: State = stateWith(), parts: Partial<DayParts> = {}) {
  return dayView({
    state,
    plan,
    nowMs,
    words: wordsOf(),
    demo: null,
    connection: { phase: 'live', sinceMs: at('4:00') },
    shopClock: CLOCK,
    deviceName: '',
    pending: 0,
    ...parts,
  })
}

function change(parts: Partial<PlanChange> = {}): PlanChange {
  const what = { kind: 'load-added', load: planLoad('8:20', 1), wasAtMs: null } as const
  const cause = { kind: 'sales', varietyId: varietyId('poppy'), isMore: true } as const
  return { atMs: at('8:00'), cause, next: true, gainCents: 300, what, ...parts }
}

describe('[I72] given another next load', () => {
  const changed = (nowMs: EpochMs, parts: Partial<PlanChange> = {}, state?: State) =>
    band(planWith([planLoad('8:20', 1)], { changed: change(parts) }), nowMs, state).changed

  it('when it has just changed, then what and why in one line, and what alone where room is short', () => {
    expect(changed(at('8:01'))).toEqual([
      'Next is now shelf 1, 8:20: Poppy sells faster than expected',
      'Next is now shelf 1, 8:20',
    ])
  })

  it.each([
    ['five minutes have gone by', at('8:05'), {}, undefined],
    ['it is a later load', at('8:01'), { next: false }, undefined],
    [
      'it is in',
      at('8:01'),
      {},
      stateWith({ loaded: [loadOf({ planned: planLoad('8:20', 1).id }, lines('sesame', 24))] }),
    ],
  ])('when %s, then nothing', (_case, nowMs, parts, state) => {
    expect(changed(nowMs, parts, state)).toEqual([])
  })

  it('when it is any change for any reason, then both languages have words for it', () => {
    for (const language of ['en', 'es'] as const) {
      for (const text of allChanges(language)) {
        expect(text).not.toBe('')
        expect(text).not.toMatch(/undefined|unknown|: $/)
      }
    }
  })
})

function allChanges(language: Language): readonly string[] {
  const advice = adviceWords(wordsFor(language, shopWith(), clockOf))
  const load = planLoad('8:20', 1)
  const [more, fewer] = [lines('poppy', 12), lines('sesame', 12)]
  const whats: readonly PlanChange['what'][] = [
    { kind: 'load-added', load, wasAtMs: null },
    { kind: 'load-dropped', load, wasAtMs: load.inAtMs },
    { kind: 'load-moved', load, wasAtMs: at('8:30') },
    { kind: 'contents', load, more, fewer },
    { kind: 'order-of-loads' },
  ]
  const kinds = [
    'load-late',
    'flip-late',
    'kettle-slow',
    'oven-cold',
    'set-up',
    'changeover',
    'people',
    'wish',
  ] as const
  const causes: readonly PlanChange['cause'][] = [
    { kind: 'shelf-over', shelfId: load.shelfId },
    { kind: 'shelf-open', shelfId: load.shelfId },
    { kind: 'load-other', shelfId: load.shelfId },
    ...kinds.map((kind) => ({ kind })),
    { kind: 'other' },
  ]
  return [
    ...whats.map((what) => advice.change(change({ what }))),
    ...causes.map((cause) => advice.change(change({ cause }))),
  ]
}

describe('[I73] given the last loads', () => {
  const last = {
    kettleByMs: at('10:30'),
    inByMs: at('10:40'),
    emptyByMs: at('11:00'),
    loadIds: [planLoad('10:38', 2).id],
    slips: [],
  }
  const plan = planWith([planLoad('8:20', 1), planLoad('10:38', 2, { lines: lines('sesame', 24, 'poppy', 36) })], {
    last,
  })

  it('when it is the last hour, then the last dip is counted down beside what they carry', () => {
    expect(band(plan, at('10:06')).toGo.slice(0, 2)).toEqual(['last dip in 24 min', 'last loads: 36 Poppy, 24 Sesame'])
  })

  it('when it is earlier or over, then only the ruler has it', () => {
    for (const nowMs of [at('9:00'), at('10:31')]) expect(band(plan, nowMs).toGo.join()).not.toContain('last dip')
    expect(band(plan, at('9:00')).ruler?.lastDip).toEqual({ atMs: at('10:30'), text: 'last dip' })
  })
})

describe('[I74] given a load to be left out', () => {
  const load = planLoad('8:20', 1)
  const plan = planWith([load])

  it('when it is advised, then its shelf is left free around then', () => {
    expect(skipAct(load.id, { state: stateWith(), plan })).toMatchObject({
      type: 'forbidLoads',
      forbids: [{ shelfId: 's1', fromMs: at('8:10'), toMs: at('8:30') }],
    })
  })

  it('when people set it, then it is skipped', () => {
    expect(skipAct(plannedId('p1'), { state: stateWith(), plan })).toEqual({ type: 'skipPlanned', plannedId: 'p1' })
  })
})

describe('[I76] given pulls of the plan', () => {
  it('when they are listed, then soonest first with time, dough and trays, in both languages', () => {
    const pull = { doughId: doughId('plain'), varietyId: null, pieces: 24, loadId: plannedId('p1'), latestAtMs: null }
    const pulls = [
      { ...pull, atMs: at('7:20'), trays: 2 },
      { ...pull, atMs: at('7:35'), trays: 1 },
    ]
    expect(wordsOf().advice.pulls(pulls)).toBe('7:20 Plain 2 trays, 7:35 Plain 1 tray')
    expect(wordsOf(shopWith(), 'es').advice.pulls(pulls)).toBe('7:20 Plain 2 bandejas, 7:35 Plain 1 bandeja')
  })
})

describe('[I75] given no advice', () => {
  it('when it is off or of another day, then there is no plan to speak of', () => {
    const state = stateWith()
    expect(planNow({ plan: null }, state)).toBeNull()
    expect(planNow({ plan: planWith([], { date: '2026-11-23' }) }, state)).toBeNull()
    expect(planNow({ plan: planWith([]) }, state)).not.toBeNull()
  })

  it('when a load is set, then its key says nothing of advice', () => {
    const state = stateWith({ planned: [planned({ inAt: at('8:20') })] })
    const [key] = shelfViews({ state, plan: null, nowMs: at('8:00'), words: wordsOf(), unconfirmed: new Set() })
    expect([key?.notes, key?.isAdvised]).toEqual([[], false])
  })
})
