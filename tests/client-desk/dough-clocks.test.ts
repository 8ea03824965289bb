import { describe, expect, it } from 'vitest'
import type { ClockRow } from '../../client/desk/dough/clock-rows.ts'
import { clockRows, statusOf } from '../../client/desk/dough/clock-rows.ts'
import { mixId, preparationId } from '../../shared-core/ids.ts'
import { asked, plan, roomShop, shape, TOMORROW } from '../core/dough/acts-shop.ts'
import { at, batch, stateWith, until } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'

describe('what runs in the dough room', () => {
  it.each([
    ['6:29', 'early'],
    ['6:30', 'ready'],
    ['7:00', 'ready'],
    ['7:01', 'late'],
  ])('given a window from 6:30 to 7:00, at %s it is %s', (clock, status) => {
    expect(statusOf(until('6:30', '6:40', '7:00'), at(clock))).toBe(status)
    expect(statusOf(null, at(clock))).toBe('none')
  })

  it('given batches of one mix at one stage, then they are one row, ready and late with the first of them', () => {
    const shop = roomShop()
    const state = stateWith({ shop })
    const [id = mixId('none')] = plan(state, [asked('plain', { plain: 120 })])
    play(state, { type: 'moveMix', mixId: id, from: 'planned', to: 'mixing' }, { nowMs: at('6:00') })
    play(state, shape(id, 30), { nowMs: at('6:30'), tappedAtMs: at('6:30'), id: 'first' })
    play(state, shape(id, 45), { nowMs: at('6:50'), tappedAtMs: at('6:50'), id: 'second' })
    const rows = clockRows(state, at('7:00'))
    expect(rows.map(told)).toEqual([[30, 45], 'bench'])
    expect(rows[0]?.sinceMs).toBe(at('6:30'))
    const alone = clockRows({ ...state, batches: new Map([...state.batches].slice(0, 1)) }, at('7:00'))
    expect(rows[0]?.until).toEqual(alone[0]?.until)
  })

  it('given a pre-ferment that ripens, then it stands with what is left, until it is thrown away', () => {
    const state = stateWith({ shop: roomShop() })
    const made = { preparationId: preparationId('poolish'), milligrams: 4_000_000, forDate: TOMORROW }
    play(state, { type: 'makePreparation', ...made }, { nowMs: at('6:00'), tappedAtMs: at('6:00') })
    const [row] = clockRows(state, at('7:00'))
    expect([row && told(row), row?.status, row?.sinceMs]).toEqual([4_000_000, 'early', at('6:00')])
    const [build] = state.builds.keys()
    if (build !== undefined) play(state, { type: 'dropBuild', buildId: build }, { nowMs: at('7:01'), id: 'drop' })
    expect(clockRows(state, at('7:02'))).toEqual([])
  })

  it('given batches of which nobody knows the mix, then each is by itself, the first to be past its window first', () => {
    const state = stateWith({
      batches: [
        batch({ id: 'b1', stage: 'rack', until: until('6:00', '6:20', '9:00') }),
        batch({ id: 'b2', stage: 'rack', until: until('6:00', '6:20', '8:00') }),
        batch({ id: 'b3', stage: 'boards' }),
      ],
    })
    expect(clockRows(state, at('7:00')).map(({ key }) => key)).toEqual(['b2', 'b1'])
  })
})

function told({ what }: ClockRow) {
  if ('batches' in what) return what.batches.map(({ pieces }) => pieces)
  return 'mix' in what ? what.mix.stage : what.leftMilligrams
}
