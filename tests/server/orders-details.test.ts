import { describe, expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { DetailsBook } from '../../server/orders/details-book.ts'
import { DetailsChores } from '../../server/orders/details-chores.ts'
import { detailsOf, forgottenWith } from '../../server/orders/details-of.ts'
import type { DetailsPlace } from '../../server/orders/put-down.ts'
import { saidNoMore } from '../../server/orders/said-no-more.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { toJson } from '../../shared-core/day/state-json.ts'
import { commandId, orderId } from '../../shared-core/ids.ts'
import type { OrderCommand } from '../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { askedLine, takeOrder } from '../core/orders/order-makers.ts'
import { at } from '../core/support/make.ts'
import { RoomWorld } from './support/room-world.ts'

const ZILLA = { name: 'Zilla Quandary', phone: '555 0100 73', note: 'rings at the back door' }
const HER = [ZILLA.name, ZILLA.phone, ZILLA.note]
const TODAY = '2026-11-24'

const withHer = (parts = {}) => takeOrder({ lines: [askedLine('sesame')], details: ZILLA, ...parts })

const standing: Extract<OrderCommand, { type: 'setStanding' }> = {
  type: 'setStanding',
  standingId: null,
  mark: 'SCH',
  way: 'pickUp',
  runId: null,
  stop: 0,
  dueMinute: 450,
  lines: [askedLine('poppy')],
  isPaid: false,
  onHolidays: true,
  details: ZILLA,
  recurrence: {
    freq: 'daily',
    interval: 1,
    from: TODAY,
    until: null,
    weekdays: [],
    nth: null,
    except: [],
    also: [],
  },
}

async function shopWithBook() {
  const book = new DetailsBook(await loadSqlite(), ':memory:')
  const world = await RoomWorld.started(book)
  const told = (id: string) => detailsOf(world.state, book, id)
  return { book, world, told }
}

/** The id of the order or standing order that a command made. */
const made = (world: RoomWorld) => `${JSON.parse(world.disk.entries.at(-1) ?? '').commandId}.1`

describe('whom an order is for', () => {
  it('[M100] given an order with a name, when taken, then it can be read beside the journal, and stands nowhere else', async () => {
    const { world, told } = await shopWithBook()
    const screen = await world.joined('counter-1', 'counter')
    const answered = await world.submit(withHer())
    expect(answered?.answer.kind).toBe('taken')
    expect(told(made(world))).toEqual({ id: made(world), version: 1, ...ZILLA })
    const everywhere = JSON.stringify([world.disk.entries, toJson(world.state), screen.take(), answered])
    for (const one of HER) expect(everywhere).not.toContain(one)
    expect(everywhere, 'it did arrive').toContain('"orderTaken"')
  })

  it('[M100] given a command that breaks a rule of ours, when it is logged, then without a name', async () => {
    const broken: DetailsPlace = { write: () => undefined, setDay: () => undefined }
    const world = await RoomWorld.started(broken)
    Object.defineProperty(world.state, 'orders', { get: () => assertNever() })
    const answered = await world.submit(withHer())
    expect(answered?.answer).toMatchObject({ refusal: { code: 'internal' } })
    expect(world.logged.join()).toContain('takeOrder')
    for (const one of HER) expect(world.logged.join()).not.toContain(one)
  })

  it('[M101] given a disk that takes no name, when an order is taken, then it is refused and nothing of it remains', async () => {
    let isFull = true
    const book = new DetailsBook(await loadSqlite(), ':memory:')
    const write: DetailsPlace['write'] = (one) => {
      if (isFull) throw new Error('database or disk is full')
      book.write(one)
    }
    const world = await RoomWorld.started({ write, setDay: () => undefined })
    const [seq, before] = [world.state.seq, JSON.stringify(toJson(world.state))]
    const refused = await world.submit(withHer())
    expect(refused?.answer).toEqual({ kind: 'refused', refusal: { code: 'details-not-written', params: {} } })
    expect([world.state.seq, JSON.stringify(toJson(world.state)), world.disk.entries.length]).toEqual([
      seq,
      before,
      seq,
    ])
    expect((await world.submit(takeOrder({ lines: [askedLine('sesame')] })))?.answer.kind, 'without a name').toBe(
      'taken',
    )
    isFull = false
    expect((await world.submit(withHer()))?.answer.kind).toBe('taken')
  })

  it('[M102] given a change that the journal did not take, or that was taken back, when read, then it is what was said before', async () => {
    const { world, told } = await shopWithBook()
    await world.submit(withHer())
    const id = made(world)
    const change = (name: string) =>
      ({ ...withHer({ details: { ...ZILLA, name } }), type: 'changeOrder', orderId: orderId(id) }) as never
    world.fault = 'fails-before'
    await expect(world.submit(change('Someone Else'))).rejects.toThrow('disk')
    await world.turn()
    world.fault = null
    expect(told(id)).toMatchObject({ version: 1, name: ZILLA.name })
    const changed = await world.submit(change('Someone Else'), 'changed00001')
    expect([changed?.answer.kind, told(id)]).toEqual([
      'taken',
      expect.objectContaining({ name: 'Someone Else', version: 2 }),
    ])
    await world.submit({ type: 'takeBack', commandId: commandId('changed00001') })
    expect(told(id)).toMatchObject({ version: 1, name: ZILLA.name })
    for (const name of ['Second', 'Third']) await world.submit(change(name), `changed${name}`.toLowerCase())
    for (const name of ['Third', 'Second'])
      await world.submit({ type: 'takeBack', commandId: commandId(`changed${name}`.toLowerCase()) })
    expect(told(id)?.name ?? null, 'gone rather than another one’s').not.toBe('Third')
  })

  it('[M104] given an order of a standing one, when read, then it says what that says, until something is said of it alone', async () => {
    const { world, told, book } = await shopWithBook()
    await world.submit({ type: 'openDay' })
    await world.submit(standing)
    const id = made(world)
    await world.submit({ type: 'takeUpOrders' })
    const dated = `${id}.${TODAY}`
    expect([world.state.orders.has(orderId(dated)), told(dated)]).toEqual([true, { id: dated, version: 1, ...ZILLA }])
    expect(told(`${id}.${dateAfter(TODAY, 1)}`), 'a day to come').toMatchObject(ZILLA)
    const { lines: _lines, ...asked } = withHer({ details: { ...ZILLA, note: 'only today' } })
    await world.submit({ ...asked, type: 'changeOrder', orderId: orderId(dated), lines: [askedLine('poppy')] } as never)
    expect([told(dated)?.note, told(id)?.note]).toEqual(['only today', ZILLA.note])
    expect(book.forget(forgottenWith(dated)), 'both go together').toBe(2)
    expect([told(dated), told(id)]).toEqual([null, null])
  })
})

describe('what is said no more', () => {
  it('[M105] given a standing order and an order of it, when their names are deleted, then screens hear that, and nothing else is another', async () => {
    const { world, told, book } = await shopWithBook()
    await world.submit({ type: 'openDay' })
    await world.submit({ ...standing, lines: [askedLine('poppy', { dozens: 2, pieces: 3, sliced: true })] })
    const id = made(world)
    await world.submit({ type: 'takeUpOrders' })
    const before = [...world.state.orders.values(), ...world.state.standing.values()]
    const ids = forgottenWith(`${id}.${TODAY}`)
    book.forget(ids)
    for (const act of saidNoMore(world.state, ids)) expect((await world.submit(act))?.answer.kind).toBe('taken')
    const after = [...world.state.orders.values(), ...world.state.standing.values()]
    expect(after).toEqual(before.map((one) => ({ ...one, details: 2 })))
    expect([before.length, told(id), told(`${id}.${TODAY}`)]).toEqual([2, null, null])
  })
})

function assertNever(): never {
  throw new Error('a rule of ours is broken')
}

describe('the days after which it is forgotten', () => {
  async function forgetting(forgetDays: number) {
    const { world, told, book } = await shopWithBook()
    const shop = world.state.shop
    if (shop === null) throw new Error('no shop')
    world.state.shop = { ...shop, orders: { ...shop.orders, forgetDays } }
    const localDate = (atMs: EpochMs) => dateAfter(TODAY, Math.floor((atMs - at('0:00')) / DAY_MS))
    const log = { error: (told: object) => expect(told).toBe('nothing') }
    const chores = new DetailsChores({ details: book, state: world.state, now: () => world.nowMs, localDate, log })
    const onDay = (day: number) => {
      world.nowMs = epochMs(at('0:30') + day * DAY_MS)
      chores.tick()
    }
    return { world, told, book, onDay }
  }
  const DAY_MS = 86_400_000

  it('[M106] given an order, when so many days after its day have passed, then it is forgotten; a standing one’s stays', async () => {
    const { world, told, onDay } = await forgetting(2)
    await world.submit(withHer())
    const order = made(world)
    await world.submit(standing)
    const stands = made(world)
    onDay(2)
    expect([told(order)?.name, told(stands)?.name]).toEqual([ZILLA.name, ZILLA.name])
    onDay(3)
    expect([told(order), told(stands)?.name]).toEqual([null, ZILLA.name])
    onDay(300)
    expect(told(stands)?.name).toBe(ZILLA.name)
  })

  it('[M106] given a standing order that ended, when the days have passed since, then it is forgotten; where that was taken back, it stays', async () => {
    const { world, told, onDay } = await forgetting(2)
    await world.submit(standing)
    const id = made(world)
    onDay(5)
    await world.submit({ type: 'endStanding', standingId: id as never }, 'endstanding1')
    expect(told(id)?.name, 'still known').toBe(ZILLA.name)
    await world.submit({ type: 'takeBack', commandId: commandId('endstanding1') })
    onDay(9)
    expect(told(id)?.name).toBe(ZILLA.name)
    await world.submit({ type: 'endStanding', standingId: id as never })
    // The test's shop has one date for all that is recorded; the days count from there.
    onDay(10)
    expect(told(id)).toBeNull()
  })

  it('[M106] given an order that was moved to another day, when the days of the first have passed, then it is known still', async () => {
    const { world, told, onDay } = await forgetting(0)
    await world.submit(withHer())
    const id = made(world)
    const { details: _details, ...asked } = withHer({ dueAtMs: at('9:00', 3) })
    await world.submit({ ...asked, type: 'changeOrder', orderId: orderId(id) } as never)
    onDay(1)
    onDay(3)
    expect(told(id)?.name).toBe(ZILLA.name)
    onDay(4)
    expect(told(id)).toBeNull()
  })
})
