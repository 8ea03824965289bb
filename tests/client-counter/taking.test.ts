import { describe, expect, it } from 'vitest'
import { EMPTY_SLIP, withThing } from '../../client/counter/orders/slip.ts'
import {
  dueOf,
  holds,
  lacksOf,
  moved,
  NEW_TAKING,
  onAnotherDay,
  takingCommand,
  takingOf,
} from '../../client/counter/orders/taking.ts'
import { menuItemId, orderId, runId } from '../../shared-core/ids.ts'
import type { Promised } from '../../shared-core/orders/promise.ts'
import { epochMs } from '../../shared-core/units.ts'
import { askedItem, askedLine, orderShop } from '../core/orders/order-makers.ts'
import { noonOf, order, orderLine } from '../core/orders/promise-makers.ts'
import { at } from '../core/support/make.ts'

const shop = orderShop({ dozenPieces: 13 })
const promised = (parts: Partial<Promised> = {}): Promised => ({
  atMs: at('8:45'),
  why: { code: 'there' },
  now: [],
  split: null,
  nextDayAtMs: at('6:00', 1),
  ...parts,
})
const asks = { ...NEW_TAKING, asked: [askedLine('sesame')] }
const TOMORROW = at('0:00', 1)

describe('[M132] given an order that is taken', () => {
  it('when no time is asked for, then it is due as early as can be promised, else the next day', () => {
    expect(dueOf(asks, promised(), at('8:00'), shop)).toBe(at('8:45'))
    expect(dueOf(asks, promised({ atMs: null }), at('8:00'), shop)).toBe(at('6:00', 1))
    expect(dueOf(asks, promised({ atMs: null, nextDayAtMs: null }), at('8:00'), shop)).toBeNull()
    expect(dueOf({ ...asks, dueAtMs: at('8:20') }, promised(), at('8:00'), shop)).toBe(at('8:20'))
  })

  it.each([
    ['8:45', true],
    ['9:00', true],
    ['8:40', false],
  ])('when it is asked for at %s and can be promised for 8:45, then that it holds is %s', (clock, does) => {
    expect(holds(at(clock), promised(), TOMORROW)).toBe(does)
  })

  it('when it is for another day, then it holds while orders for that day are taken', () => {
    expect(holds(at('7:00', 1), promised({ atMs: null }), TOMORROW)).toBe(true)
    expect(holds(at('7:00', 1), promised({ nextDayAtMs: null }), TOMORROW)).toBe(false)
    expect(holds(at('7:00', 2), promised({ nextDayAtMs: null }), TOMORROW)).toBe(true)
    expect(holds(at('14:00'), promised({ atMs: null }), TOMORROW)).toBe(false)
  })

  it('when the time is moved, then it is on five minutes and never before now', () => {
    expect(moved(at('8:43'), 5, at('8:00'))).toBe(at('8:45'))
    expect(moved(at('8:43'), -5, at('8:00'))).toBe(at('8:40'))
    expect(moved(at('8:10'), -60, at('8:02'))).toBe(at('8:05'))
  })

  it('when the day is moved over a change of clocks, then it is the same time on the wall', () => {
    // Noon comes an hour later by the clock of the world from then on.
    const jumpNoonOf = (date: string) => epochMs(noonOf(date) + (date > '2026-11-24' ? 3_600_000 : 0))
    const dates = { noonOf: jumpNoonOf, dateOf: () => '2026-11-24' }
    expect(onAnotherDay(at('7:30'), 1, dates)).toBe(at('8:30', 1))
    expect(onAnotherDay(at('7:30'), 1, { ...dates, noonOf })).toBe(at('7:30', 1))
  })

  it('when something is missing, then that is said before it can be taken', () => {
    expect(lacksOf(NEW_TAKING, null, shop)).toBe('pieces')
    expect(lacksOf(asks, null, shop)).toBe('time')
    expect(lacksOf(asks, at('9:00'), shop)).toBeNull()
    const lox = { ...NEW_TAKING, slip: withThing(EMPTY_SLIP, menuItemId('lox')) }
    expect(lacksOf(lox, at('9:00'), shop)).toBe('bagel')
  })

  it('when it cannot be promised, then the command says so; a run only where it is delivered', () => {
    const taking = { ...asks, mark: ' AB ', runId: runId('van'), stop: 2 }
    const said = { isRisk: true, before: null }
    expect(takingCommand(taking, at('8:20'), said)).toMatchObject({
      type: 'takeOrder',
      isRisk: true,
      mark: 'AB',
      runId: null,
      stop: 0,
    })
    expect(takingCommand({ ...taking, way: 'delivery' }, at('8:20'), said)).toMatchObject({ runId: 'van', stop: 2 })
    expect(takingCommand({ ...taking, mark: '' }, at('8:20'), { ...said, isRisk: false })).not.toHaveProperty('isRisk')
  })
})

describe('[M134] given an order that is changed', () => {
  const begun = {
    steps: [
      { stationId: 'oven', takesMs: 1, oven: null, begunAtMs: at('8:00'), shelfId: null, turned: 0, madeAtMs: null },
    ],
  }
  const thing = (no: number, parts: object = {}) => {
    const { times: _times, ...item } = askedItem('coffee')
    return { ...item, no, steps: [], ...parts } as never
  }
  const stands = order('AB', '9:00', [orderLine('sesame', 26, { dozens: 2 })], {
    items: [thing(1), thing(2), thing(3, begun)],
    details: 1,
  })

  it('then what is begun stays out of it, and the same things in a row are so many of one', () => {
    const taking = takingOf(stands, null, shop)
    expect(taking.asked).toEqual([askedLine('sesame', { dozens: 2, pieces: 0 })])
    expect(taking.slip.items).toEqual([askedItem('coffee', { times: 2 })])
    expect(takingCommand(taking, at('9:00'), { isRisk: true, before: null })).toMatchObject({
      type: 'changeOrder',
      orderId: orderId('AB'),
    })
  })

  it('then its details are said anew only where others were typed', () => {
    const before = { name: 'A name', phone: '', note: '' }
    const taking = takingOf(stands, before, shop)
    const command = (details: typeof before) =>
      takingCommand({ ...taking, details }, at('9:00'), { isRisk: false, before })
    expect(command(before)).not.toHaveProperty('details')
    expect(command({ ...before, name: ' A name ' })).not.toHaveProperty('details')
    expect(command({ ...before, note: 'ring twice' })).toMatchObject({ details: { ...before, note: 'ring twice' } })
    // What was not there yet is not overwritten with nothing.
    expect(takingCommand(takingOf(stands, null, shop), at('9:00'), { isRisk: false, before: null })).not.toHaveProperty(
      'details',
    )
  })
})
