import { describe, expect, it } from 'vitest'
import { varietyId } from '../../shared-core/ids.ts'
import type { Plan, PlanChange } from '../../shared-core/live/plan.ts'
import { withPlan } from '../../shared-core/plan/with-plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { at, batch, stateWith } from '../core/support/make.ts'
import { planLoad, planWith } from '../core/support/plan.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { viewOf } from './support/wall.ts'

const SESAME = varietyId('sesame')
const GONE = { varietyId: SESAME, kind: 'runsOut', atMs: at('8:52'), kettleByMs: at('8:17') } as const
const LOAD = planLoad('8:20', 1, { kettleAtMs: at('8:12'), why: [GONE] })

/** The wall while this plan is followed, its dough on the rack. */
function wallOf(plan: Plan, nowMs: EpochMs, shop = shopWith()) {
  const rack = batch({ id: 'r', stage: 'rack', since: at('7:50'), pieces: 48 })
  return viewOf(withPlan(stateWith({ shop, batches: [rack] }), plan), nowMs, { plan })
}

const TAPPED = shopWith({ stations: table(ALL_STATIONS) })

describe('[I70] given an advised load on the wall', () => {
  it('when the kettle waits for its dip, then below it stands why', () => {
    const { body } = wallOf(planWith([LOAD]), at('8:00'), TAPPED)
    const kettle = body.kind === 'line' && body.line.kettle.form === 'ring' ? body.line.kettle.view : null
    expect(kettle?.below.map(({ lead }) => lead)).toContain('Sesame gone 8:52')
  })

  it('when the next dip is of another variety than the load’s first reason, then the reason of what is dipped', () => {
    const poppy = { varietyId: varietyId('poppy'), kind: 'opening' } as const
    const { body } = wallOf(planWith([{ ...LOAD, why: [poppy, GONE] }]), at('8:00'))
    const line = body.kind === 'line' ? body.line : null
    expect(line?.kettle.form === 'dips' && line.kettle.view.why).toBe('Sesame gone 8:52')
    const none = wallOf(planWith([{ ...LOAD, why: [poppy] }]), at('8:00')).body
    expect(none.kind === 'line' && none.line.kettle.form === 'dips' && none.line.kettle.view.why).toBe('')
  })

  it('when nobody taps the kettle, then the reason stands with the dips and the first dip is counted down', () => {
    const { body } = wallOf(planWith([LOAD]), at('8:00'))
    const line = body.kind === 'line' ? body.line : null
    expect(line?.kettle.form === 'dips' && line.kettle.view.why).toBe('Sesame gone 8:52')
    expect(line?.kettleNote).toBe('first dip in 12 min')
    const later = wallOf(planWith([LOAD]), at('8:13')).body
    expect(later.kind === 'line' && later.line.kettleNote).toBe('Next')
  })
})

describe('[I72] given another next load', () => {
  const changed: PlanChange = {
    atMs: at('8:00'),
    cause: { kind: 'sales', varietyId: varietyId('poppy'), isMore: true },
    next: true,
    gainCents: 300,
    what: { kind: 'load-added', load: LOAD, wasAtMs: null },
  }
  const status = (nowMs: EpochMs) => wallOf(planWith([LOAD], { changed }), nowMs).status

  it('when it has just changed, then one quiet line says what and why, and goes after five minutes', () => {
    expect(status(at('8:04'))).toEqual({
      text: 'Next is now shelf 1, 8:20: Poppy sells faster than expected',
      isTrouble: false,
    })
    expect(status(at('8:05'))).toBeNull()
  })
})

describe('[I73] given the last loads', () => {
  const last = { kettleByMs: at('10:30'), inByMs: at('10:40'), emptyByMs: at('11:00'), loadIds: [LOAD.id], slips: [] }

  it('when it is the last hour, then the last dip is counted down across the wall, and a mark on the ruler', () => {
    const view = wallOf(planWith([LOAD], { last }), at('10:06'))
    expect(view.status?.text).toContain('last dip in 24 min')
    expect(view.ruler?.lastDip).toEqual({ atMs: at('10:30'), text: 'last dip' })
  })
})

describe('[I75] given no advice', () => {
  it('when it is off, then the wall says nothing of a plan', () => {
    const view = viewOf(stateWith(), at('9:06'))
    expect([view.status, view.ruler?.lastDip]).toEqual([null, undefined])
  })
})
