import { describe, expect, it } from 'vitest'
import type { LineDraft } from '../../client/desk/orders/asked-draft.ts'
import {
  askedLines,
  detailsToSend,
  linesTyped,
  minuteOf,
  newLine,
  timeText,
} from '../../client/desk/orders/asked-draft.ts'
import { columnTakenFor, withOrderColumn } from '../../client/desk/orders/import-view.ts'
import type { DraftClock, OrderDraft } from '../../client/desk/orders/order-draft.ts'
import {
  askedOrder,
  keepsItems,
  missingIn,
  newOrder,
  orderTyped,
  withLine,
} from '../../client/desk/orders/order-draft.ts'
import { ordersPage, withinOf } from '../../client/desk/orders/pages.ts'
import type { StandingDraft } from '../../client/desk/orders/standing-draft.ts'
import {
  newStanding,
  nextDates,
  recurrenceOf,
  sameStanding,
  setStanding,
  standingMissing,
} from '../../client/desk/orders/standing-draft.ts'
import { localDate, minuteOfDay } from '../../client/live/clock-text.ts'
import { runId, standingId, varietyId } from '../../shared-core/ids.ts'
import type { OrderMapping } from '../../shared-core/live/orders-import.ts'
import { ORDER_COLUMNS } from '../../shared-core/live/orders-import.ts'
import { assert } from '../../shared-core/support.ts'
import { CLOCK } from '../client-counter/counter-maker.ts'
import { askedItem, askedLine, orderShop, takeOrder } from '../core/orders/order-makers.ts'
import { at, stateWith } from '../core/support/make.ts'
import { decided, outcome, play } from '../core/support/play.ts'
import { standingCommand } from './standing-maker.ts'

const TODAY = '2026-11-24'
const clock: DraftClock = {
  noonOf: (date) => at('12:00', Math.round((Date.parse(date) - Date.parse(TODAY)) / 86_400_000)),
  dateOf: (atMs) => localDate(CLOCK, atMs),
  minuteOf: (atMs) => minuteOfDay(CLOCK, atMs),
}
const NOBODY = { typed: null, known: null }
const line = (parts: Partial<LineDraft>): LineDraft => ({ ...newLine(), ...parts })
const draft = (parts: Partial<OrderDraft> = {}): OrderDraft => ({
  ...newOrder(TODAY),
  time: '09:15',
  lines: [line({ dozens: 2 })],
  ...parts,
})

function first<Thing>([thing]: readonly Thing[]): Thing {
  assert(thing !== undefined, 'one at least')
  return thing
}

describe('pages of the orders', () => {
  it.each([
    '',
    '2026-11-27',
    'new',
    'new/2026-11-27',
    'order/abc1234567.1',
    'standing',
    'standing/new',
    'standing/k7.1',
    'packing',
    'packing/2026-11-27',
    'names',
    'files',
  ])('given "%s", then its page leads there again', (within) => {
    expect(withinOf(ordersPage(within))).toBe(within)
  })

  it.each(['nowhere', '2026-02-30', 'order/', 'order/<b>', 'standing/a b'])(
    'given "%s", then it is today or the list',
    (within) => {
      expect(['day', 'standing']).toContain(ordersPage(within).kind)
    },
  )
})

describe('an order that is typed', () => {
  it('[M151] given dozens, pieces and an empty line, when taken, then the command has what asks for something, due on its minute', () => {
    const typed = draft({
      mark: ' KL ',
      lines: [
        line({ dozens: 2, pieces: 3, without: [varietyId('rye')] }),
        newLine(),
        line({ varietyId: varietyId('poppy'), pieces: 6, without: [varietyId('rye')] }),
      ],
    })
    expect(askedOrder(typed, clock, NOBODY)).toEqual({
      mark: 'KL',
      dueAtMs: at('9:15'),
      way: 'pickUp',
      runId: null,
      stop: 0,
      lines: [
        askedLine(null, { dozens: 2, pieces: 3, without: [varietyId('rye')] }),
        askedLine('poppy', { pieces: 6 }),
      ],
      items: [],
      isPaid: false,
    })
  })

  it('[M151] given a run, when it is not delivered, then there is none; who waits has no time of its own', () => {
    const onRun = { runId: runId('morning'), stop: 3 }
    expect(askedOrder(draft({ ...onRun, way: 'delivery' }), clock, NOBODY)).toMatchObject(onRun)
    expect(askedOrder(draft({ ...onRun, way: 'pickUp' }), clock, NOBODY)).toMatchObject({ runId: null, stop: 0 })
    expect(askedOrder(draft({ ...onRun, way: 'here' }), clock, NOBODY)).toMatchObject({ dueAtMs: null, runId: null })
  })

  it('[M151] given what is missing, then it is said before it can be taken', () => {
    const shop = orderShop()
    const bagel = first([...shop.menu.values()].filter(({ onBagel }) => onBagel)).id
    const item = { ...askedItem(bagel), times: 1 }
    expect(missingIn(draft(), shop)).toEqual([])
    expect(missingIn(draft({ time: '' }), shop)).toEqual(['due'])
    expect(missingIn(draft({ time: '', way: 'here' }), shop)).toEqual([])
    expect(missingIn(draft({ lines: [newLine()] }), shop)).toEqual(['pieces'])
    expect(missingIn(draft({ lines: [newLine()], items: [item] }), shop)).toEqual(['bagel'])
    expect(missingIn(draft({ items: [{ ...item, varietyId: varietyId('sesame') }] }), shop)).toEqual([])
  })

  it('[M151] given an order as it stands, when opened and saved, then it is asked for again as it was, its details untouched', () => {
    const state = stateWith({ shop: orderShop({ dozenPieces: 13 }) })
    const asked = takeOrder({
      lines: [askedLine(null, { dozens: 2, pieces: 4 })],
      items: [
        askedItem('coffee', { times: 2 }),
        askedItem('lox', { varietyId: varietyId('sesame'), allergies: ['egg'] }),
      ],
    })
    play(state, asked)
    const order = first([...state.orders.values()])
    const opened = orderTyped(order, 13, clock)
    expect(opened).toMatchObject({ date: TODAY, time: '09:00', lines: [{ dozens: 2, pieces: 4 }] })
    expect(opened.items.map(({ itemId, times }) => [itemId, times])).toEqual([
      ['coffee', 2],
      ['lox', 1],
    ])
    expect(keepsItems(opened, order)).toBe(true)
    expect(keepsItems({ ...opened, items: opened.items.slice(1) }, order)).toBe(false)
    const again = askedOrder(opened, clock, { typed: null, known: { name: 'x', phone: '', note: '' } })
    play(state, { type: 'changeOrder', orderId: order.id, keepsItems: true, ...again })
    expect(state.orders.get(order.id)).toEqual(order)
  })

  it('[M151] given details, when they are the same again, then they are not written anew; emptied, they are', () => {
    const known = { name: 'Lamb', phone: '1', note: '' }
    expect(detailsToSend(null, known)).toEqual({})
    expect(detailsToSend({ ...known, name: ' Lamb ' }, known)).toEqual({})
    expect(detailsToSend({ name: '', phone: '', note: '' }, null)).toEqual({})
    expect(detailsToSend({ name: '', phone: '', note: '' }, known)).toEqual({
      details: { name: '', phone: '', note: '' },
    })
    expect(detailsToSend({ ...known, note: 'bell' }, known)).toEqual({ details: { ...known, note: 'bell' } })
  })

  it('[M151] given a variety that is added, then the empty line gives way', () => {
    const poppy = newLine(varietyId('poppy'))
    expect(withLine([newLine()], poppy)).toEqual([poppy])
    expect(withLine([line({ pieces: 1 })], poppy)).toHaveLength(2)
  })

  it('given pieces of a dozen that the shop counts otherwise by now, then none are below nothing', () => {
    const typed = linesTyped([{ ...askedLine(null), dozens: 2, pieces: 24 }], 13)
    expect(askedLines(typed)).toMatchObject([{ dozens: 2, pieces: 0 }])
    expect([minuteOf('06:30'), minuteOf(''), timeText(390)]).toEqual([390, null, '06:30'])
  })
})

describe('a standing order that is typed', () => {
  const typed = (parts: Partial<StandingDraft['recurrence']> = {}): StandingDraft => {
    const fresh = newStanding(TODAY)
    return {
      ...fresh,
      mark: 'ST',
      time: '07:30',
      lines: [line({ dozens: 1 })],
      recurrence: { ...fresh.recurrence, weekdays: [5, 2], ...parts },
    }
  }

  it('[M152] given a rule, when saved, then weekdays are in order and nothing of another rule is left', () => {
    expect(setStanding(typed(), null, NOBODY)).toMatchObject({
      dueMinute: 450,
      recurrence: { freq: 'weekly', weekdays: [2, 5], nth: null, until: null },
    })
    expect(recurrenceOf(typed({ freq: 'monthly', weekdays: [], nth: 2 }).recurrence).nth).toBeNull()
    expect(
      recurrenceOf(typed({ freq: 'monthly', weekdays: [4], nth: -1, until: '2027-01-31' }).recurrence),
    ).toMatchObject({
      nth: -1,
      until: '2027-01-31',
    })
  })

  it('[M152] given what is missing, or a rule that never comes, then it is said', () => {
    expect(standingMissing(typed())).toEqual([])
    expect(standingMissing({ ...typed(), mark: ' ', time: '', lines: [] })).toEqual(['mark', 'time', 'pieces'])
    expect(standingMissing(typed({ weekdays: [] }))).toEqual(['weekdays'])
    expect(standingMissing(typed({ from: '' }))).toEqual(['from'])
    expect(standingMissing(typed({ until: '2026-11-20' }))).toEqual(['until'])
    // A Tuesday begins and ends it, and it comes on Fridays.
    expect(standingMissing(typed({ weekdays: [5], until: TODAY }))).toEqual(['never'])
    expect(standingMissing(typed({ freq: 'monthly', weekdays: [], from: '2026-01-31' }))).toEqual([])
  })

  it('[M152] given exceptions and days besides, then the next dates have them', () => {
    const rule = recurrenceOf(typed({ weekdays: [4], except: ['2026-12-24'], also: ['2026-12-26'] }).recurrence)
    expect(nextDates(rule, '2026-12-10', 4)).toEqual(['2026-12-10', '2026-12-17', '2026-12-26', '2026-12-31'])
    expect(nextDates({ ...rule, until: '2026-12-12', also: [] }, '2026-12-11', 4)).toEqual([])
  })

  it('[M152] given one day that is left out, when sent, then all else stays as it was', () => {
    const state = stateWith({ shop: orderShop() })
    play(state, standingCommand({ lines: [askedLine(null, { dozens: 1, pieces: 2, sliced: true })], way: 'delivery' }))
    const standing = first([...state.standing.values()])
    const recurrence = { ...standing.recurrence, except: ['2026-12-24'] }
    play(state, { ...sameStanding(standing, 12), recurrence })
    expect(state.standing.get(standing.id)).toEqual({ ...standing, recurrence })
    expect(outcome(decided(state, { ...sameStanding(standing, 12), standingId: standingId('other') }))).not.toBe(
      'taken',
    )
  })
})

describe('columns of a file of orders', () => {
  const none = Object.fromEntries(ORDER_COLUMNS.map((column) => [column, null]))
  const mapping = {
    ...{ skip: 0, hasHeader: true, delimiter: ',', quote: '"', decimal: '.', dateForm: 'y-m-d' },
    columns: { ...none, variety: 2, name: 0 },
    isAfternoonMeant: false,
  } as unknown as OrderMapping

  it('[M154] given a column that is taken for something else, then each thing is in one column, and each column is one thing', () => {
    const moved = withOrderColumn(mapping, 3, 'variety')
    expect([columnTakenFor(moved, 2), columnTakenFor(moved, 3)]).toEqual(['none', 'variety'])
    const other = withOrderColumn(mapping, 2, 'item')
    expect([columnTakenFor(other, 2), other.columns.variety]).toEqual(['item', null])
    expect(columnTakenFor(withOrderColumn(mapping, 0, 'none'), 0)).toBe('none')
  })
})
