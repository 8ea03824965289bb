import { describe, expect, it } from 'vitest'
import { QUEUE_MAX } from '../../client/live/outbox.ts'
import { doughId, loadId, varietyId } from '../../shared-core/ids.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import type { FakeScreen } from './support/fake-screen.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const SESAME = varietyId('sesame')
const carryIn = (pieces: number) =>
  ({ type: 'carryIn', doughId: doughId('plain'), varietyId: null, pieces, stage: 'rack', sinceMs: null }) as const
const count = (pieces: number) => ({ type: 'count', varietyId: SESAME, pieces }) as const
const sell = (pieces: number) => ({ type: 'sell', lines: [{ varietyId: SESAME, pieces }] }) as const
const pieces = ({ sync }: FakeScreen) =>
  [...(sync.view().shown?.batches.values() ?? [])].reduce((sum, one) => sum + one.pieces, 0)
const sold = ({ sync }: FakeScreen) => sync.view().shown?.stock.get(SESAME)?.soldToday ?? 0
const waiting = ({ sync }: FakeScreen) => sync.view().pending.length
const kinds = ({ sync }: FakeScreen) => sync.view().notices.map((notice) => notice.kind)

function connect(screen: FakeScreen, shop: LittleShop): void {
  screen.link.up()
  screen.link.say(shop.welcome(screen.sync.confirmed?.seq ?? null))
}

function linked(shop = new LittleShop(), on?: FakeScreen) {
  const screen = fakeScreen(on === undefined ? {} : { on })
  connect(screen, shop)
  screen.link.take()
  return { screen, shop }
}

/** The shop takes what the screen sent, and answers. */
function deliver(screen: FakeScreen, shop: LittleShop): void {
  for (const commands of screen.link.takeCommands()) screen.link.say(shop.take(commands))
}

describe('a tap', () => {
  it('[C1] given it is tapped, then it is saved, shown and sent before anything else', () => {
    const { screen } = linked()
    const id = screen.sync.send(carryIn(24))
    expect([...screen.saved.texts.keys()].filter((key) => key.includes(String(id)))).toHaveLength(1)
    expect([pieces(screen), waiting(screen)]).toEqual([24, 1])
    expect(screen.link.takeCommands()).toMatchObject([[{ id, deviceSeq: 1, type: 'carryIn' }]])
  })

  it('[C4] given its answer, then it is shown once, pending and saved no more', () => {
    const { screen, shop } = linked()
    screen.sync.send(carryIn(24))
    deliver(screen, shop)
    expect([pieces(screen), waiting(screen)]).toEqual([24, 0])
    expect([...screen.saved.texts.keys()].filter((key) => key.includes('queue'))).toEqual([])
  })

  it('[C4] given somebody else acts meanwhile, then the tap is decided anew on top of that', () => {
    const { screen, shop } = linked()
    screen.sync.send(carryIn(24))
    screen.link.say(shop.does(carryIn(30)))
    expect([pieces(screen), waiting(screen)]).toEqual([54, 1])
  })

  it('[C12] given the server’s clock was never heard, then the tap claims no time', () => {
    const { screen, shop } = linked()
    screen.sync.send(carryIn(1))
    expect(screen.sync.view().pending[0]?.command.tappedAtMs).toBeNull()
    const t0 = screen.clock.monotonicMs()
    connect(screen, shop)
    screen.link.say({ type: 'probed', t0, t1: shop.nowMs, t2: shop.nowMs })
    screen.sync.send(carryIn(1))
    expect(screen.sync.view().pending[1]?.command.tappedAtMs).toBe(shop.nowMs)
  })

  it('[C1] given no shop is shown yet, then nothing can be tapped', () => {
    expect(fakeScreen().sync.send(carryIn(24))).toBeNull()
  })
})

describe('the queue', () => {
  it('[C3] given taps while one message is under way, then they wait, and go in order in one message', () => {
    const { screen, shop } = linked()
    for (const n of [1, 2, 3]) screen.sync.send(carryIn(n))
    const first = screen.link.takeCommands()
    expect(first.map((commands) => commands.map(({ deviceSeq }) => deviceSeq))).toEqual([[1]])
    screen.link.say(shop.take(first[0] ?? []))
    expect(screen.link.takeCommands().map((commands) => commands.map(({ deviceSeq }) => deviceSeq))).toEqual([[2, 3]])
  })

  it('[C3] given a long queue after an outage, then it goes in messages of at most so many, one after another', () => {
    const { screen, shop } = linked()
    screen.link.down()
    for (let n = 0; n < COMMANDS_PER_MESSAGE_MAX + 3; n += 1) screen.sync.send(sell(1))
    connect(screen, shop)
    const sizes: number[] = []
    for (let messages = screen.link.takeCommands(); messages[0] !== undefined; messages = screen.link.takeCommands()) {
      sizes.push(...messages.map((commands) => commands.length))
      screen.link.say(shop.take(messages[0]))
    }
    expect(sizes).toEqual([COMMANDS_PER_MESSAGE_MAX, 3])
    expect([waiting(screen), sold(screen)]).toEqual([0, COMMANDS_PER_MESSAGE_MAX + 3])
  })

  it('[C2] given the answer is lost, then the tap goes again and is counted once', () => {
    const { screen, shop } = linked()
    screen.sync.send(sell(6))
    for (const commands of screen.link.takeCommands()) shop.take(commands)
    screen.link.down()
    expect([sold(screen), waiting(screen)]).toEqual([6, 1])
    connect(screen, shop)
    expect([sold(screen), waiting(screen)]).toEqual([6, 0])
    expect(screen.link.takeCommands()).toEqual([])
  })

  it('[C2] given the answer is lost and the state comes whole, then it is not shown twice', () => {
    const { screen, shop } = linked()
    screen.sync.send(sell(6))
    for (const commands of screen.link.takeCommands()) shop.take(commands)
    const { screen: again } = linked(shop, screen)
    expect([sold(again), waiting(again)]).toEqual([6, 0])
  })

  it('[C2] given the answer to a close is lost, which leaves no trace, then it is not shown on top of itself', () => {
    const { screen, shop } = linked()
    screen.sync.send({ type: 'closeDay' })
    for (const commands of screen.link.takeCommands()) shop.take(commands)
    screen.link.down()
    connect(screen, shop)
    expect([waiting(screen), screen.sync.view().shown?.lastDay?.label]).toEqual([0, '2026-11-24'])
  })

  it('[C2] given the request is lost, then the tap goes again after the welcome', () => {
    const { screen, shop } = linked()
    screen.sync.send(sell(6))
    screen.link.take()
    screen.link.down()
    connect(screen, shop)
    deliver(screen, shop)
    expect([sold(screen), shop.state.stock.get(SESAME)?.soldToday]).toEqual([6, 6])
  })

  it('[C1] given a reload before the answer, then the taps are there again, in order, and later ones count on', () => {
    const { screen, shop } = linked()
    screen.link.down()
    for (const n of [1, 2, 3]) screen.sync.send(carryIn(n))
    const { screen: again } = linked(shop, screen)
    expect(again.sync.view().pending.map(({ command }) => command.deviceSeq)).toEqual([1, 2, 3])
    expect(pieces(again)).toBe(6)
    again.sync.send(carryIn(10))
    expect(again.sync.view().pending.map(({ command }) => command.deviceSeq)).toEqual([1, 2, 3, 4])
    expect(again.sync.deviceId).toBe(screen.sync.deviceId)
  })

  it('[C3] given two pages of one device, then their taps have numbers of their own and none is lost', () => {
    const { screen, shop } = linked()
    const { screen: other } = linked(shop, screen)
    screen.link.down()
    other.link.down()
    screen.sync.send(carryIn(1))
    other.sync.send(carryIn(2))
    screen.sync.send(carryIn(4))
    const { screen: again } = linked(shop, screen)
    expect(again.sync.view().pending.map(({ command }) => command.deviceSeq)).toEqual([1, 2, 3])
    expect(pieces(again)).toBe(7)
  })

  it('[C9] given it is full, then a tap is refused in words, and taken again when there is room', () => {
    const { screen, shop } = linked()
    for (let n = 0; n < QUEUE_MAX; n += 1) screen.sync.send(count(0))
    expect([screen.sync.send(count(0)), kinds(screen)]).toEqual([null, ['queue-full']])
    for (const commands of screen.link.takeCommands()) screen.link.say(shop.take(commands))
    expect(kinds(screen)).toEqual([])
    expect(screen.sync.send(count(0))).not.toBeNull()
  })

  it('[C9] given the device cannot keep it, then it is sent all the same, and a person is told until it is answered', () => {
    const { screen, shop } = linked()
    screen.saved.full = true
    screen.sync.send(sell(6))
    expect([sold(screen), kinds(screen)]).toEqual([6, ['not-saved']])
    deliver(screen, shop)
    expect([sold(screen), kinds(screen)]).toEqual([6, []])
  })
})

describe('refusals and questions', () => {
  it('[C5] given a refusal, then it is told with its command, undone on screen, and survives a reload', () => {
    const { screen, shop } = linked()
    screen.sync.send({ type: 'flip', loadId: loadId('none') })
    expect(screen.sync.view().pending).toMatchObject([{ guess: 'refused' }])
    deliver(screen, shop)
    const { screen: again } = linked(shop, screen)
    expect(again.sync.view().notices).toMatchObject([
      { kind: 'refused', refusal: { code: 'unknown-load' }, command: { type: 'flip' } },
    ])
    again.sync.dismiss(again.sync.view().notices[0]?.id ?? '')
    expect([kinds(again), kinds(linked(shop, screen).screen)]).toEqual([[], []])
  })

  it('[C5] given a device that can keep nothing more, when one of two answers is put away, then it stays away', () => {
    const { screen, shop } = linked()
    for (const id of ['none', 'no other']) {
      screen.sync.send({ type: 'flip', loadId: loadId(id) })
      deliver(screen, shop)
    }
    const [first, second] = screen.sync.view().notices
    expect(second).toBeDefined()
    screen.saved.full = true
    screen.sync.dismiss(first?.id ?? '')
    expect(linked(shop, screen).screen.sync.view().notices).toEqual([second])
  })

  it('[C5] given a question, then yes sends the same command with what was asked', () => {
    const { screen, shop } = linked()
    const id = screen.sync.send(count(90))
    expect(screen.sync.view().pending).toMatchObject([{ guess: 'ask' }])
    deliver(screen, shop)
    expect([waiting(screen), screen.sync.view().notices]).toMatchObject([
      0,
      [{ id, kind: 'ask', asks: [{ code: 'far-count' }] }],
    ])
    screen.sync.confirm(String(id))
    expect([kinds(screen), screen.sync.view().pending]).toMatchObject([
      [],
      [{ guess: 'taken', command: { id, confirmed: ['far-count'] } }],
    ])
    deliver(screen, shop)
    expect(screen.sync.view().shown?.stock.get(SESAME)?.counted?.pieces).toBe(90)
  })

  it('[C5] given a question and a reload, then it is still there; put away, it is answered with no', () => {
    const { screen, shop } = linked()
    const id = screen.sync.send(count(90))
    deliver(screen, shop)
    const { screen: again } = linked(shop, screen)
    expect(kinds(again)).toEqual(['ask'])
    again.sync.dismiss(String(id))
    again.sync.confirm(String(id))
    expect([kinds(again), waiting(again)]).toEqual([[], 0])
  })

  it('[C5] given a question about what has been done meanwhile, then there is nothing left to ask', () => {
    const { screen, shop } = linked()
    screen.sync.send(count(90))
    const [commands = []] = screen.link.takeCommands()
    screen.link.say(shop.take(commands))
    const { screen: otherPage } = linked(shop, screen)
    otherPage.sync.confirm(otherPage.sync.view().notices[0]?.id ?? '')
    for (const yes of otherPage.link.takeCommands()) screen.link.say({ ...shop.take(yes), answers: [] })
    expect(kinds(screen)).toEqual([])
  })

  it('[C5] given many refusals, then the oldest go and a question stays', () => {
    const { screen, shop } = linked()
    screen.sync.send(count(90))
    deliver(screen, shop)
    for (let n = 0; n < 60; n += 1) {
      screen.sync.send({ type: 'flip', loadId: loadId(`none${n}`) })
      deliver(screen, shop)
    }
    expect(kinds(screen).filter((kind) => kind === 'ask')).toHaveLength(1)
    expect(kinds(screen)).toHaveLength(51)
  })
})

describe('another shop behind the same address', () => {
  it('[C7] given pending taps, then they are not sent there but kept, and a person is told', () => {
    const { screen } = linked()
    screen.link.down()
    screen.sync.send(sell(6))
    const other = new LittleShop('journal-2')
    connect(screen, other)
    expect(screen.link.takeCommands()).toEqual([])
    expect([waiting(screen), sold(screen)]).toEqual([0, 0])
    expect(screen.sync.view().notices).toMatchObject([{ kind: 'kept-aside', journalId: 'journal-1', commands: 1 }])
  })

  it('[C7] given it sends its entries from the first on, then nothing of the first shop is left', () => {
    const { screen } = linked()
    const other = new LittleShop('journal-2')
    other.does(sell(7))
    screen.link.down()
    screen.link.up()
    screen.link.say(other.welcome(0))
    expect([sold(screen), screen.sync.confirmed?.traces[0]?.commandId]).toEqual([7, 'else-journal-2-1'])
  })

  it('[C7] given the first shop is back, then they go there', () => {
    const { screen, shop } = linked()
    screen.link.down()
    screen.sync.send(sell(6))
    const { screen: elsewhere } = linked(new LittleShop('journal-2'), screen)
    expect(waiting(elsewhere)).toBe(0)
    const { screen: back } = linked(shop, screen)
    expect([waiting(back), kinds(back)]).toEqual([1, []])
    connect(back, shop)
    deliver(back, shop)
    expect(shop.state.stock.get(SESAME)?.soldToday).toBe(6)
  })

  it('[C7] given a person puts them away, then they are gone for good', () => {
    const { screen, shop } = linked()
    screen.link.down()
    screen.sync.send(sell(6))
    const { screen: elsewhere } = linked(new LittleShop('journal-2'), screen)
    elsewhere.sync.dismiss('aside journal-1')
    expect(waiting(linked(shop, screen).screen)).toBe(0)
  })
})
