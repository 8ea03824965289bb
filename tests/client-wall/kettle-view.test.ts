import { describe, expect, it } from 'vitest'
import { kettleView } from '../../client/wall/kettle-view.ts'
import { widthOf } from '../../client/wall/text-lines.ts'
import { kettleNow } from '../../shared-core/line/kettle.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { StateParts } from '../core/support/make.ts'
import { at, batch, lines, planned, stateWith, until } from '../core/support/make.ts'
import { dough, shopWith, table } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting } from './support/wall.ts'

const DIPPED = batch({ id: 'k', stage: 'kettle', since: at('6:46'), until: until('6:46:45', '6:47', '6:47:30') })
const PLANNED = [
  planned({ lines: lines('sesame', 24, 'poppy', 12) }),
  planned({ id: 'p2', order: 2, lines: lines('plain', 36) }),
]

function kettle(parts: StateParts, nowMs: EpochMs, language: Language = 'en') {
  const state = stateWith({ planned: PLANNED, ...parts })
  const shop = state.shop ?? shopWith()
  return kettleView({
    ...setting(shop, nowMs, language),
    now: kettleNow(state, nowMs),
    rack: standingNow(state, nowMs).filter((one) => one.stage === 'rack'),
    cycleMs: shop.kettle.cycleMs,
    box: LAYOUT.kettle,
  })
}

describe('the kettle at work', () => {
  it('given a dip, then the ring counts its seconds, and what the pieces become stands beside it', () => {
    const view = kettle({ batches: [DIPPED] }, at('6:46:38'))
    expect(view.ring).toMatchObject({ state: 'running', label: '22 s' })
    expect(view.ring.fraction).toBeCloseTo(22 / 60)
    expect(view.title).toMatchObject({ nameLines: ['Plain'], count: '36' })
    expect(view.becomes.join(' ')).toBe('becomes 24 Sesame and 12 Poppy')
    expect(view.calls).toEqual([])
  })

  it('given Spanish, then what the pieces become is said in number and never as what comes after', () => {
    const told = (pieces: number) => {
      const plans = [planned({ lines: lines('poppy', pieces) })]
      const { becomes, below } = kettle({ planned: plans, batches: [{ ...DIPPED, pieces }] }, at('6:46:30'), 'es')
      return becomes.length > 0 ? becomes.join(' ') : below[0]?.rest
    }
    expect(told(12)).toBe('serán 12 Poppy')
    expect(told(1)).toBe('será 1 Poppy')
  })

  it('[G3] given ten seconds to go, then it is turned inside out and says lift with the seconds', () => {
    expect(kettle({ batches: [DIPPED] }, at('6:46:49'))).toMatchObject({ state: 'plain', calls: [] })
    for (const [clock, seconds] of [
      ['6:46:50', 10],
      ['6:46:57', 3],
    ] as const) {
      const soon = kettle({ batches: [DIPPED] }, at(clock))
      expect(soon.state).toBe('act')
      expect(soon.calls.map(({ strong, rest }) => `${strong} ${rest}`.trim()).join(' ')).toBe(`Lift in ${seconds} s`)
      expect(soon.ring).toMatchObject({ state: 'act', label: `${seconds} s` })
    }
  })

  it('[G3] given it is due, then it is turned inside out and says lift; given it is late, by how much', () => {
    const due = kettle({ batches: [DIPPED] }, at('6:47:10'))
    expect(due).toMatchObject({ state: 'act', calls: [{ strong: 'Lift', rest: 'now' }] })
    expect(due.ring).toMatchObject({ state: 'act', label: 'now' })
    const late = kettle({ batches: [DIPPED] }, at('6:47:50'))
    expect(late.state).toBe('late')
    expect(late.calls.map(({ strong, rest }) => `${strong} ${rest}`.trim()).join(' ')).toBe('Lift 50 s late')
    expect(late.ring).toMatchObject({ state: 'late', label: '50 s' })
  })

  it('given no boil window, then it is lifted by the kettle’s cycle', () => {
    const view = kettle({ batches: [{ ...DIPPED, until: null }] }, at('6:47'))
    expect(view.ring.label).toBe('30 s')
  })

  it('given dough that is not ready on the rack, then it says when to look; given it has stood too long, that first', () => {
    const rye = batch({ id: 'r', dough: 'rye', stage: 'rack', since: at('6:40'), until: until('7:00', '7:10', '7:40') })
    const plain = batch({ id: 'o', stage: 'rack', since: at('5:00'), until: until('5:20', '5:40', '6:30') })
    const below = (batches: StateParts['batches']) =>
      kettle({ batches: batches ?? [] }, at('6:46:38')).below.find(({ strong }) => strong === '')
    expect(below([DIPPED, rye])).toMatchObject({ lead: 'Rye not ready, look at 7:00', isTrouble: false })
    expect(below([DIPPED, rye, plain])).toMatchObject({ lead: 'Plain over since 6:30', isTrouble: true })
  })

  it('[G2] given the longest names, then what the pieces become moves below the ring and is not cut', () => {
    const name = 'Sun-dried Tomato & Basil'
    const shop = shopWith({
      doughs: table([dough({ id: 'plain', name })]),
      varieties: new Map([...shopWith().varieties].map(([id, one]) => [id, { ...one, name }])),
    })
    for (const language of ['en', 'es'] as const) {
      const view = kettle({ shop, batches: [DIPPED] }, at('6:46:38'), language)
      expect(view.title.nameLines.join(' ')).toBe(name)
      const late = kettle({ shop, batches: [DIPPED] }, at('6:58'), language)
      const besidePx = LAYOUT.kettle.width - late.ring.px - 0.7 * SIZES.minPx - 0.75 * SIZES.actPx
      for (const line of late.title.nameLines)
        expect(widthOf(line, SIZES.labelPx, 'strong')).toBeLessThanOrEqual(besidePx)
      for (const { strong, rest } of late.calls) {
        expect(widthOf(strong, SIZES.actPx, 'strong') + widthOf(rest, SIZES.actPx)).toBeLessThanOrEqual(besidePx)
      }
      const told = [...view.becomes, ...view.below.map(({ rest }) => rest)].join(' ')
      expect(told).toContain(`24 ${name}`)
    }
  })
})

describe('an empty kettle that somebody taps', () => {
  it('given a planned load, then the next dip stands beside an idle ring with its time and what it becomes', () => {
    const view = kettle({ batches: [] }, at('6:00'))
    expect(view.ring).toMatchObject({ state: 'idle', label: null })
    expect(view.lead).toBe('Next')
    expect(view.title.count).toBe('36')
    expect(view.when).toMatch(/^(in \d+ (s|min)|now)$/)
    expect(view.becomes.join(' ')).toBe('becomes 24 Sesame and 12 Poppy')
  })

  it('given nothing planned, then it says so', () => {
    expect(kettle({ batches: [], planned: [] }, at('6:00')).title.nameLines.join(' ')).toBe('No dips planned')
  })
})
