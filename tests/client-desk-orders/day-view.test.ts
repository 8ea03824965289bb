import { describe, expect, it } from 'vitest'
import { isFound, lookedFor, orderedSums, orderRows, plain } from '../../client/desk/orders/day-view.ts'
import type { WrittenDetails } from '../../server/orders/details-book.ts'
import { knownNames } from '../../server/orders/known-names.ts'
import type { State } from '../../shared-core/day/state.ts'
import { orderId, varietyId } from '../../shared-core/ids.ts'
import { askedItem, askedLine, orderShop, slip, takeOrder } from '../core/orders/order-makers.ts'
import { at, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { standingCommand } from './standing-maker.ts'

const TODAY = { date: '2026-11-24', noonMs: at('12:00') }
const TOMORROW = { date: '2026-11-25', noonMs: at('12:00', 1) }
const NOTHING = { risks: [], detailsOf: () => null }

/** AK and BL are fetched today, 7 waits, CM goes tomorrow; 24 sesame lie there. */
function orderedState(): State {
  const shop = orderShop({ keepsAsTheyCome: false })
  const state = stateWith({ shop, stock: [stock('sesame', { lots: [lot({ id: 'a', pieces: 24 })] }, shop)] })
  play(state, takeOrder({ mark: 'BL', dueAtMs: at('10:00'), lines: [askedLine('sesame', { pieces: 12 })] }))
  play(state, takeOrder({ mark: 'AK', dueAtMs: at('9:00'), lines: [askedLine('sesame'), askedLine(null)] }))
  play(state, slip(askedItem('coffee'), askedItem('tub')))
  play(state, takeOrder({ mark: 'CM', dueAtMs: at('9:30', 1), way: 'delivery', lines: [askedLine('poppy')] }))
  return state
}

const idOf = (state: State, mark: string) =>
  [...state.orders.values()].find((order) => order.mark === mark)?.id ?? orderId('none')

describe('the orders of a day', () => {
  it('[M150] given orders and one that stands, when a day is looked at, then they come by due time with what is kept and made', () => {
    const state = orderedState()
    play(state, { type: 'keep', lines: lines('sesame', 8), orderId: idOf(state, 'AK') })
    const { recurrence } = standingCommand()
    play(state, standingCommand({ dueMinute: 8 * 60, recurrence: { ...recurrence, from: TOMORROW.date } }))
    const today = orderRows(state, TODAY, NOTHING)
    expect(today.map(({ order }) => order.mark)).toEqual(['1', 'AK', 'BL'])
    // Six of its own line, and two of the mixed one.
    expect(today[1]).toMatchObject({ pieces: 12, kept: 8, isComing: false })
    expect(today[0]).toMatchObject({ pieces: 0, made: 1 })
    const tomorrow = orderRows(state, TOMORROW, NOTHING)
    expect(tomorrow.map(({ order, isComing }) => [order.mark, isComing])).toEqual([
      ['ST', true],
      ['CM', false],
    ])
  })

  it('[M150] given a word or a filter, when looked for, then marks, names and phones are found whatever the accents', () => {
    const state = orderedState()
    const detailsOf = ({ mark }: { readonly mark: string }) =>
      mark === 'AK' ? { name: 'Núria Weiss', phone: '555 0100', note: 'no bell' } : null
    const risk = { orderId: idOf(state, 'BL'), dueAtMs: at('10:00'), missing: [], saves: [] }
    const rows = orderRows(state, TODAY, { risks: [risk], detailsOf })
    const found = (text: string, filter: 'all' | 'risk' | 'here' = 'all') =>
      lookedFor(rows, { text, filter }).map(({ order }) => order.mark)
    expect(found(' nuria')).toEqual(['AK'])
    expect(found('0100')).toEqual(['AK'])
    expect(found('bl')).toEqual(['BL'])
    expect(found('', 'here')).toEqual(['1'])
    expect(found('', 'risk')).toEqual(['BL'])
    expect(found('ak', 'risk')).toEqual([])
    expect(isFound(plain('ÑU'), ['anu'])).toBe(true)
  })

  it('[M150] given mixed lines, when a day is summed up, then a piece that is kept counts as what it is', () => {
    const state = orderedState()
    const sums = () => orderedSums(state, orderRows(state, TODAY, NOTHING))
    expect(sums()).toEqual([
      { varietyId: 'sesame', ordered: 18, kept: 0 },
      { varietyId: null, ordered: 6, kept: 0 },
    ])
    play(state, { type: 'keep', lines: lines('sesame', 8), orderId: idOf(state, 'AK') })
    expect(sums()).toEqual([
      { varietyId: varietyId('sesame'), ordered: 20, kept: 8 },
      { varietyId: null, ordered: 4, kept: 0 },
    ])
  })
})

describe('whom something is known of', () => {
  const written = (id: string, parts: Partial<WrittenDetails>): WrittenDetails => ({
    ...{ id, version: 1, name: '', phone: '', note: '', day: TODAY.date, writtenAtMs: at('6:00') },
    ...parts,
  })

  it('[M153] given orders that are open and over, when looked for, then both are found by name, phone, note or mark', () => {
    const state = orderedState()
    const all = () => [
      written(idOf(state, 'AK'), { name: 'Zoë Lamb', phone: '555 0107' }),
      written(orderId('ended.1'), { name: 'abe', note: 'blue door' }),
      written(orderId('bare.1'), { phone: '555 0199' }),
      written(orderId('empty.1'), {}),
    ]
    const found = (text: string) => knownNames(state, { all }, text).names.map(({ name, phone }) => name || phone)
    // Without a name last; of whom nothing is left, nothing is told.
    expect(found('')).toEqual(['abe', 'Zoë Lamb', '555 0199'])
    expect(found('ZOE')).toEqual(['Zoë Lamb'])
    expect(found('ak')).toEqual(['Zoë Lamb'])
    expect(found('door')).toEqual(['abe'])
    expect(found('0199')).toEqual(['555 0199'])
    expect(knownNames(state, { all }, 'abe').names).toMatchObject([{ mark: null, day: TODAY.date }])
  })
})
