import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../../fixed-seed.ts'
import { ASK_CODES } from '../../../shared-core/day/answers.ts'
import { dayOfText, textOfDay } from '../../../shared-core/demand/day-text.ts'
import { joinedDay } from '../../../shared-core/demand/join-days.ts'
import { doughId, keepId, orderId, varietyId } from '../../../shared-core/ids.ts'
import { DEFAULT_COUNTER } from '../../../shared-core/shop/default-rules.ts'
import { askedLine, takeOrder } from '../orders/order-makers.ts'
import { at, lines } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'
import { dayOf, itemOf, openDay } from './tallied.ts'

const sesame = varietyId('sesame')
const poppy = varietyId('poppy')
const YES = { confirmed: ASK_CODES }
const close = { type: 'closeDay' } as const
const span = (fromMinute: number, toMinute: number) => ({ fromMinute, toMinute })

describe('a day of the journal as demand sees it', () => {
  it('[Q100] given sales by name, without one, for the kitchen and a box, when told, then each with its minute', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 6, 'poppy', 1) })
    day.at('7:00:30', { type: 'sellUnnamed', pieces: 6 })
    day.at('7:30', { type: 'remove', varietyId: sesame, pieces: 2, fate: 'kitchen' })
    day.at('7:40', { type: 'remove', varietyId: poppy, pieces: 1, fate: 'wasted' })
    day.at('7:45', { type: 'remove', varietyId: poppy, pieces: 1, fate: 'given' })
    day.at('8:00', { type: 'keep', lines: lines('sesame', 3) })
    const [keep] = [...day.state.keeps.keys()]
    day.at('9:00', { type: 'handOver', keepId: keep ?? keepId('none') })
    const told = dayOf(day)
    // 24 − 6 = 18 sesame and 12 − 1 = 11 poppy: 6 unnamed by what is there, 18/29 · 6 = 3.7 and 11/29 · 6 = 2.3.
    expect(itemOf(told, 'sesame')).toMatchObject({
      sold: [
        { minute: 390, pieces: 6 },
        { minute: 540, pieces: 3 },
      ],
      allotted: [{ minute: 420.5, pieces: 4 }],
      kitchen: [{ minute: 450, pieces: 2 }],
      baked: 24,
      unseen: 0,
      ordered: null,
    })
    expect(itemOf(told, 'poppy')).toMatchObject({
      sold: [{ minute: 390, pieces: 1 }],
      allotted: [{ minute: 420.5, pieces: 2 }],
      wasted: 1,
      given: 1,
    })
    expect(told).toMatchObject({ date: '2026-11-24', openMinute: 360, closeMinute: 900, isClosed: false })
  })

  it('[Q147] given orders placed ahead and one of somebody who waits, when handed over, then only the latter is who else came', () => {
    const day = openDay()
    day.at('6:20', takeOrder({ lines: [askedLine('sesame', { pieces: 8 })] }))
    const [ahead] = [...day.state.orders.keys()]
    day.at('6:30', { type: 'keep', lines: lines('sesame', 5), orderId: ahead ?? orderId('none') })
    const handedOver = { type: 'handOverOrder', orderId: ahead ?? orderId('none'), lines: null } as const
    day.at('9:00', handedOver)
    day.at('9:05', takeOrder({ mark: null, dueAtMs: null, way: 'here', lines: [askedLine('sesame', { pieces: 2 })] }))
    const [waits] = [...day.state.orders.keys()]
    day.at('9:10', { ...handedOver, orderId: waits ?? orderId('none') })
    const told = itemOf(dayOf(day), 'sesame')
    expect(told).toMatchObject({ sold: [{ minute: 550, pieces: 2 }], ordered: 8 })
  })

  it('[Q100] given pieces of the day before, when sold, then no demand for fresh ones', () => {
    const day = openDay()
    day.at('6:10', { type: 'dayOldIn', lines: lines('sesame', 5) })
    day.at('6:20', { type: 'dayOldOut', varietyId: sesame, pieces: 3, fate: 'sold' })
    expect(itemOf(dayOf(day), 'sesame')).toMatchObject({ sold: [], left: 0 })
    day.at('15:00', close, YES)
    expect(itemOf(dayOf(day), 'sesame')).toMatchObject({ sold: [], left: 24 })
  })

  it('[Q100] given any day, when written as text and read, then the same', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 24, 'poppy', 1) })
    day.at('12:00', close, YES)
    const told = dayOf(day)
    expect(dayOfText(textOfDay(told))).toEqual(told)
  })

  it('[Q101] given rods that come late, run out, fill and stand when the shop closes early, when told, then when there was none', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 24) })
    // Out at 8:00, cool for 15 min.
    day.bake('7:44', '8:00', lines('sesame', 12, 'rye', 12))
    day.at('9:00', { type: 'sell', lines: lines('sesame', 12) })
    const sofar = dayOf(day, at('9:30'))
    expect(itemOf(sofar, 'sesame').gone).toEqual([span(390, 495), span(540, 570)])
    expect(itemOf(sofar, 'rye').gone).toEqual([span(360, 495)])
    expect(itemOf(sofar, 'poppy').gone).toEqual([])
    day.at('14:00', close, YES)
    const told = dayOf(day)
    expect(itemOf(told, 'sesame').gone).toEqual([span(390, 495), span(540, 900)])
    expect(itemOf(told, 'rye').gone).toEqual([span(360, 495), span(840, 900)])
    expect(itemOf(told, 'poppy')).toMatchObject({ gone: [span(840, 900)], left: 12 })
  })

  it('[Q101] given a variety that was planned and never baked, when told, then gone all day; what nobody meant to bake is not in it', () => {
    const day = openDay()
    day.at('5:30', { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: at('9:00'), lines: lines('rye', 12) }] })
    day.at('15:00', close, YES)
    const told = dayOf(day)
    expect(itemOf(told, 'rye')).toMatchObject({ gone: [span(360, 900)], baked: 0 })
    expect(told.items.map(({ id }) => id)).toEqual(['poppy', 'rye', 'sesame'])
  })

  it('[Q102] given counts that find fewer and more, when told, then the signed gap', () => {
    const day = openDay()
    day.at('7:00', { type: 'count', varietyId: sesame, pieces: 20 })
    day.at('7:00', { type: 'count', varietyId: poppy, pieces: 13 })
    expect(itemOf(dayOf(day, at('7:01')), 'sesame').unseen).toBe(4)
    expect(itemOf(dayOf(day, at('7:01')), 'poppy').unseen).toBe(-1)
  })

  it('[Q102] given a load tapped out after its first pieces were sold, when the count finds these missing, then none is counted twice', () => {
    const day = openDay()
    // Three rye of a load that nobody has tapped out yet; then it comes, whole, and the count finds nine of twelve.
    day.at('7:00', { type: 'sell', lines: lines('rye', 3) }, YES)
    day.bake('6:50', '7:05', lines('rye', 12))
    day.at('7:30', { type: 'count', varietyId: varietyId('rye'), pieces: 9 })
    expect(itemOf(dayOf(day, at('7:31')), 'rye')).toMatchObject({ sold: [{ minute: 420, pieces: 3 }], unseen: 0 })
  })

  it('[Q102] given a rod that leaks and that nobody counts at the close, when told, then what had probably left went and is not left', () => {
    const day = openDay()
    day.bake('6:00', '6:16', lines('sesame', 48))
    for (const [clock, pieces] of [
      ['7:00', 62],
      ['8:00', 52],
      ['9:00', 42],
    ] as const)
      day.at(clock, { type: 'count', varietyId: sesame, pieces })
    day.at('11:00', close, YES)
    const { unseen, left } = itemOf(dayOf(day), 'sesame')
    // 30 by the counts; at ten an hour some twenty more in the two hours since, which only the estimate knows of.
    expect(unseen).toBeGreaterThan(36)
    expect(unseen + left).toBe(72)
  })

  it('[Q103] given a sale taken back, when told, then as if it had not been, and there all along', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 24) }, { id: 'wrong00001' })
    day.at('6:40', {
      type: 'takeBack',
      commandId:
        day.entries.at(-1)?.commandId ??
        (() => {
          throw new Error('no entry')
        })(),
    })
    expect(itemOf(dayOf(day, at('7:00')), 'sesame')).toMatchObject({ sold: [], gone: [] })
  })

  it('[Q103] given any acts and a close reopened, when the day goes on, then it is told as if it had gone on', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.constantFrom('sesame', 'poppy')), { maxLength: 8 }),
        fc.nat(8),
        (sales, cut) => {
          const straight = openDay()
          const reopened = openDay()
          sales.forEach(([pieces, id], n) => {
            const sale = { type: 'sell', lines: lines(id, pieces) } as const
            const clock = `${7 + n}:00`
            for (const day of [straight, reopened]) day.at(clock, sale, { ...YES, id: `sale000000${n}` })
            if (n !== cut) return
            reopened.at(`${7 + n}:10`, close, YES)
            reopened.at(`${7 + n}:10`, { type: 'reopenDay', label: '2026-11-24' }, YES)
          })
          expect(dayOf(reopened, at('14:59'))).toEqual(dayOf(straight, at('14:59')))
        },
      ),
    )
  })

  it('[Q104] given what is wanted of the day and its advice, when it is changed later, then the day keeps what stood at its opening', () => {
    const day = openDay()
    const wanted = [{ doughId: doughId('plain'), varietyId: sesame, pieces: 40, ordered: 6, advised: 48 }]
    const shop = shopWith()
    const before = openDay(shop)
    before.start.wanted.set('2026-11-24', { date: '2026-11-24', lines: wanted })
    before.at('8:00', { type: 'setWanted', date: '2026-11-24', lines: [{ ...wanted[0], pieces: 10 }] as never })
    expect(dayOf(before).wanted).toEqual(wanted)
    expect(dayOf(day).wanted).toEqual([])
  })

  it('[Q105] given a shop that counts, when its till notes sales, then they say when, and the counts how many', () => {
    const shop = shopWith({ counter: { ...DEFAULT_COUNTER, salesFrom: 'sweeps' } })
    const day = openDay(shop)
    day.at('6:30', { type: 'sell', lines: lines('sesame', 5), from: 'till' })
    day.at('8:00', { type: 'count', varietyId: sesame, pieces: 16 })
    expect(itemOf(dayOf(day, at('8:00')), 'sesame')).toMatchObject({ sold: [{ minute: 390, pieces: 5 }], unseen: 3 })
  })

  it('[Q105] given a shop that taps, when its till notes the same sales, then once', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 5) })
    day.at('6:31', { type: 'sell', lines: lines('sesame', 5), from: 'till' })
    expect(itemOf(dayOf(day), 'sesame').sold).toEqual([{ minute: 390, pieces: 5 }])
  })

  it('[Q112] given two days of one date, when joined, then their sales together and gone where both had none', () => {
    const morning = openDay()
    morning.at('6:30', { type: 'sell', lines: lines('sesame', 24) })
    morning.at('10:00', close, YES)
    const one = dayOf(morning)
    const other = {
      ...one,
      items: one.items.map((item) => ({
        ...item,
        sold: [{ minute: 660, pieces: 2 }],
        gone: [span(360, 650)],
        left: 1,
      })),
    }
    const joined = joinedDay([one, other])
    expect(joined?.items.find(({ id }) => id === 'sesame')).toMatchObject({
      sold: [
        { minute: 390, pieces: 24 },
        { minute: 660, pieces: 2 },
      ],
      gone: [span(390, 650)],
      baked: 48,
      left: 1,
    })
    expect(joinedDay([])).toBeNull()
  })
})
