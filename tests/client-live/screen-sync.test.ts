import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { FakeScreen } from './support/fake-screen.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const PULL = { type: 'pull', doughId: doughId('plain'), varietyId: null, pieces: 15 } as const
const SELL = { type: 'sell', lines: [{ varietyId: varietyId('sesame'), pieces: 6 }] } as const
const agree = (screen: FakeScreen, shop: LittleShop) =>
  expect(screen.sync.confirmed === null ? null : hashState(screen.sync.confirmed)).toBe(hashState(shop.state))
const phase = (screen: FakeScreen) => screen.sync.view().connection.phase
const hello = (screen: FakeScreen) => screen.link.take().filter((message) => message.type === 'hello')

/** A screen that has been welcomed by a shop. */
function linked(shop = new LittleShop()) {
  const screen = fakeScreen()
  screen.link.up()
  screen.link.say(shop.welcome(null))
  screen.link.take()
  return { screen, shop }
}

describe('a screen comes up', () => {
  it('[C6] given nothing known, then it asks for the state whole and shows it', () => {
    const [screen, shop] = [fakeScreen(), new LittleShop()]
    expect([phase(screen), screen.sync.view().shown]).toEqual(['connecting', null])
    screen.link.up()
    expect(hello(screen)).toMatchObject([
      { afterSeq: null, journalId: null, foldVersion: FOLD_VERSION, device: { role: 'bench' } },
    ])
    screen.link.say(shop.welcome(null))
    agree(screen, shop)
    expect([phase(screen), screen.sync.view().version]).toEqual(['live', '0.0.0'])
  })

  it('[C6] given an empty shop, then entries from the first on make its state', () => {
    const [screen, shop] = [fakeScreen(), new LittleShop()]
    screen.link.up()
    screen.link.say(shop.welcome(0))
    agree(screen, shop)
  })

  it('[C6] given turns, then it follows; what it showed before stays as it was', () => {
    const { screen, shop } = linked()
    const before = screen.sync.view().shown
    const beforeHash = before === null ? null : hashState(before)
    screen.link.say(shop.does(PULL))
    agree(screen, shop)
    expect(screen.sync.view().shown).not.toBe(before)
    expect(before === null ? null : hashState(before)).toBe(beforeHash)
  })

  it('[C6] given nothing changed, then what is shown is the same object', () => {
    const { screen } = linked()
    expect(screen.sync.view().shown).toBe(screen.sync.view().shown)
  })
})

describe('contact is lost', () => {
  it('[C6] given it comes back, then it asks for what came after and shows since when it was away', () => {
    const { screen, shop } = linked()
    const lostAtMs = screen.sync.serverClock.serverNowMs()
    screen.link.down()
    expect(screen.sync.view().connection).toEqual({ phase: 'away', sinceMs: lostAtMs })
    shop.does(PULL)
    screen.clock.pass(5_000)
    screen.link.up()
    expect(phase(screen)).toBe('catching-up')
    screen.link.down()
    expect(screen.sync.view().connection).toEqual({ phase: 'away', sinceMs: lostAtMs })
    screen.link.up()
    expect(hello(screen)[1]).toMatchObject({ afterSeq: 2, journalId: 'journal-1' })
    screen.link.say(shop.welcome(2))
    agree(screen, shop)
    expect(phase(screen)).toBe('live')
  })

  it('[C6] given an answer that does not come for ten seconds, then the link is made anew, once', () => {
    const { screen } = linked()
    screen.sync.send(PULL)
    screen.clock.pass(9_000)
    screen.sync.tick()
    expect(screen.link.restarts).toBe(0)
    screen.clock.pass(2_000)
    screen.sync.tick()
    screen.sync.tick()
    expect(screen.link.restarts).toBe(1)
  })

  it('[C6] given the answer came, then the link stays', () => {
    const { screen, shop } = linked()
    screen.sync.send(PULL)
    for (const commands of screen.link.takeCommands()) screen.link.say(shop.take(commands))
    screen.clock.pass(60_000)
    screen.sync.tick()
    expect(screen.link.restarts).toBe(0)
  })

  it('[C6] given a welcome that does not come, then the link is made anew', () => {
    const screen = fakeScreen()
    screen.link.up()
    screen.clock.pass(11_000)
    screen.sync.tick()
    expect(screen.link.restarts).toBe(1)
  })
})

describe('something is missing or wrong', () => {
  it('[C6] given a turn that skips one, then it asks for the missing and takes nothing until they come', () => {
    const { screen, shop } = linked()
    shop.does(PULL)
    screen.link.say(shop.does(SELL))
    expect([phase(screen), screen.sync.confirmed?.seq]).toEqual(['catching-up', 2])
    expect(hello(screen)).toMatchObject([{ afterSeq: 2 }])
    screen.link.say(shop.does(SELL))
    screen.link.say(shop.welcome(2))
    agree(screen, shop)
    expect(screen.sync.view().notices).toEqual([])
  })

  it('[C6] given the same turn twice, then it counts once', () => {
    const { screen, shop } = linked()
    const turn = shop.does(SELL)
    screen.link.say(turn)
    screen.link.say(turn)
    agree(screen, shop)
    expect(phase(screen)).toBe('live')
  })

  it('[C6] given a welcome that does not reach back far enough, then it asks for the state whole', () => {
    const { screen, shop } = linked()
    screen.link.down()
    for (let n = 0; n < 3; n += 1) shop.does(SELL)
    screen.link.up()
    screen.link.say({ ...shop.welcome(2), entries: shop.entries.slice(4) })
    screen.clock.pass(6_000)
    screen.sync.tick()
    expect(hello(screen)).toMatchObject([{ afterSeq: 2 }, { afterSeq: null }])
    screen.link.say(shop.welcome(null))
    agree(screen, shop)
  })

  it('[C6] given another hash at the same seq, then the state is fetched whole, and a person is told', () => {
    const { screen, shop } = linked()
    screen.link.say(shop.check())
    expect(phase(screen)).toBe('live')
    screen.link.say({ type: 'check', seq: shop.state.seq, hash: 'f'.repeat(64) })
    expect(hello(screen)).toMatchObject([{ afterSeq: null }])
    screen.link.say(shop.welcome(null))
    expect([phase(screen), screen.sync.view().notices]).toMatchObject([
      'live',
      [{ kind: 'fetched-anew', seq: 2, reason: 'hash' }],
    ])
  })

  it('[C6] given it was mended, then after the next lost contact it asks only for what came after', () => {
    const { screen, shop } = linked()
    screen.link.say({ type: 'check', seq: shop.state.seq, hash: 'f'.repeat(64) })
    screen.link.say(shop.welcome(null))
    screen.link.down()
    screen.link.up()
    expect(hello(screen)[1]).toMatchObject({ afterSeq: 2 })
  })

  it('[C6] given a welcome without the last entries, then it asks for the state whole', () => {
    const { screen, shop } = linked()
    screen.link.down()
    for (let n = 0; n < 3; n += 1) shop.does(SELL)
    screen.link.up()
    screen.link.take()
    screen.link.say({ ...shop.welcome(2), entries: shop.entries.slice(2, 4) })
    expect([phase(screen), hello(screen)]).toMatchObject(['catching-up', [{ afterSeq: null }]])
  })

  it('[C6] given a hash of another moment, then it says nothing', () => {
    const { screen, shop } = linked()
    screen.link.say({ type: 'check', seq: shop.state.seq + 1, hash: 'f'.repeat(64) })
    expect(phase(screen)).toBe('live')
  })

  it('[C6] given an entry that does not fit, then the state is fetched whole, and not again and again', () => {
    const { screen, shop } = linked()
    const { entries } = shop.does(PULL)
    const broken: ToScreen = {
      type: 'turn',
      answers: [],
      entries: entries.map((entry) => ({ ...entry, recordedAtMs: epochMs(0) })),
    }
    screen.link.say(broken)
    expect(hello(screen)).toMatchObject([{ afterSeq: null }])
    const welcome = shop.welcome(2)
    screen.link.say({ ...welcome, entries: welcome.entries.map((entry) => ({ ...entry, recordedAtMs: epochMs(0) })) })
    expect(hello(screen)).toEqual([])
    screen.clock.pass(6_000)
    screen.sync.tick()
    expect(hello(screen)).toMatchObject([{ afterSeq: null }])
    screen.link.say(shop.welcome(null))
    agree(screen, shop)
  })

  it('[C6] given a server that lost what this screen has seen, then the server is right', () => {
    const { screen, shop } = linked()
    const older = new LittleShop()
    screen.link.say(shop.does(PULL))
    screen.link.down()
    screen.link.up()
    screen.link.take()
    screen.link.say({ ...older.welcome(2), entries: [] })
    expect(hello(screen)).toMatchObject([{ afterSeq: null }])
    screen.link.say(older.welcome(null))
    agree(screen, older)
    expect(screen.sync.view().notices).toMatchObject([{ kind: 'fetched-anew', reason: 'server-behind' }])
  })
})

describe('values beside the fold', () => {
  it('[C6] given "coming", then it rests here at once and elsewhere as the server says, and ends by itself', () => {
    const { screen } = linked()
    screen.sync.sayComing('flip:l1')
    expect(screen.link.take()).toEqual([{ type: 'coming', actKey: 'flip:l1' }])
    expect([...screen.sync.view().coming.keys()]).toEqual(['flip:l1'])
    const untilMs = epochMs(screen.sync.serverClock.serverNowMs() + 20_000)
    screen.link.say({ type: 'coming', actKey: 'out:l2', untilMs })
    expect(screen.sync.view().coming.get('out:l2')).toBe(untilMs)
    screen.clock.pass(21_000)
    screen.sync.tick()
    expect([...screen.sync.view().coming.keys()]).toEqual(['flip:l1'])
    screen.clock.pass(25_000)
    screen.sync.tick()
    expect(screen.sync.view().coming.size).toBe(0)
  })

  it('[C10] given contact, then it asks for the time four times at once and again after a minute or sleep', () => {
    const [screen, shop] = [fakeScreen(), new LittleShop()]
    screen.link.up()
    screen.link.say(shop.welcome(null))
    const probes = () => screen.link.take().filter((message) => message.type === 'probe')
    const answer = (t0: number) => screen.link.say({ type: 'probed', t0, t1: shop.nowMs, t2: shop.nowMs })
    let asked = 0
    for (let open = probes(); open[0] !== undefined; open = probes()) {
      asked += open.length
      screen.clock.pass(7)
      shop.pass(7)
      answer(open[0].t0)
    }
    expect(asked).toBe(4)
    expect(screen.sync.serverClock.errorMs()).toBeLessThan(10)
    screen.clock.pass(59_000)
    screen.sync.tick()
    expect(probes()).toEqual([])
    screen.clock.pass(1_100)
    screen.sync.tick()
    expect(probes()).toHaveLength(1)
    screen.clock.sleep(5_000)
    screen.sync.tick()
    expect(probes()).toHaveLength(1)
  })
  it('[C10] given an answer that was not asked for, comes twice, or was under way during sleep, then it says nothing', () => {
    const { screen, shop } = linked()
    const ahead = () => screen.sync.serverClock.serverNowMs() - screen.clock.monotonicMs()
    const answer = (t0: number, t1: number) => screen.link.say({ type: 'probed', t0, t1, t2: t1 })
    const asked = screen.clock.monotonicMs()
    screen.clock.pass(5)
    answer(asked + 1, shop.nowMs)
    expect(screen.sync.serverClock.isKnown).toBe(false)
    answer(asked, shop.nowMs)
    const right = ahead()
    answer(asked, shop.nowMs + 500_000)
    expect(ahead()).toBe(right)
    screen.clock.pass(60_000)
    screen.sync.tick()
    const lastAsked = screen.clock.monotonicMs()
    expect(screen.link.take()).toContainEqual({ type: 'probe', t0: lastAsked })
    screen.clock.sleep(30_000)
    answer(lastAsked, shop.nowMs + 60_000)
    expect(ahead()).toBe(right + 30_000)
  })
})
