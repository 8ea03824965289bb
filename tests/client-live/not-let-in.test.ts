import { describe, expect, it } from 'vitest'
import { stationId, varietyId } from '../../shared-core/ids.ts'
import type { NotJoined } from '../../shared-core/live/devices.ts'
import type { FakeScreen } from './support/fake-screen.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const SELL = { type: 'sell', lines: [{ varietyId: varietyId('sesame'), pieces: 6 }] } as const
const connection = (screen: FakeScreen) => screen.sync.view().connection
const hellos = (screen: FakeScreen) => screen.link.take().filter((message) => message.type === 'hello')

function linked(shop = new LittleShop(), on?: FakeScreen) {
  const screen = fakeScreen(on === undefined ? {} : { on })
  screen.link.up()
  screen.link.say(shop.welcome(null))
  screen.link.take()
  return { screen, shop }
}

/** Second by second, with a link that comes up whenever it is asked for. @returns how often it was asked for */
function pass(screen: FakeScreen, seconds: number): number {
  const before = screen.link.restarts
  for (let n = 0; n < seconds; n += 1) {
    screen.clock.pass(1_000)
    const { restarts } = screen.link
    screen.sync.tick()
    if (screen.link.restarts > restarts) screen.link.up()
  }
  return screen.link.restarts - before
}

describe('a screen that is not let in', () => {
  it.each<NotJoined>(['no-token', 'forged', 'revoked', 'expired'])(
    '[E30] given %s, then it says so, drops the contact, folds nothing more and keeps what is tapped',
    (why) => {
      const { screen, shop } = linked()
      screen.link.say({ type: 'refusedHello', reason: why })
      screen.link.say(shop.does(SELL))
      screen.sync.send(SELL)
      expect(connection(screen)).toMatchObject({ phase: 'outside', why })
      expect([screen.link.rests, screen.sync.confirmed?.seq, screen.link.takeCommands()]).toEqual([1, 2, []])
      expect([screen.sync.view().pending.length, screen.saved.keys('boilboard.bench.queue.').length]).toEqual([1, 1])
      expect([screen.reloads(), screen.movedTo]).toEqual([0, []])
    },
  )

  it('[E30] given it stays outside for ten minutes, then it asks 20 to 30 times and says all the while that it is', () => {
    const screen = fakeScreen()
    screen.link.up()
    screen.link.say({ type: 'refusedHello', reason: 'no-token' })
    let asked = 0
    for (let n = 0; n < 600; n += 1) {
      asked += pass(screen, 1)
      if (hellos(screen).length > 0) screen.link.say({ type: 'refusedHello', reason: 'no-token' })
      expect(connection(screen).phase).toBe('outside')
    }
    expect(asked).toBeGreaterThanOrEqual(20)
    expect(asked).toBeLessThanOrEqual(30)
  })

  it('[E30] given many screens, then they ask at different times', () => {
    const firstAsked = Array.from({ length: 20 }, () => {
      const screen = fakeScreen()
      screen.link.up()
      screen.link.say({ type: 'refusedHello', reason: 'revoked' })
      let seconds = 0
      while (pass(screen, 1) === 0) seconds += 1
      return seconds
    })
    expect(new Set(firstAsked).size).toBeGreaterThan(5)
  })

  it('[E30] given it is let in again, then it goes on where it was and sends what was tapped', () => {
    const { screen, shop } = linked()
    screen.link.say({ type: 'refusedHello', reason: 'revoked' })
    screen.sync.send(SELL)
    shop.does(SELL)
    expect(pass(screen, 31)).toBe(1)
    expect(hellos(screen)).toMatchObject([{ afterSeq: 2 }])
    screen.link.say(shop.welcome(2))
    const [commands = []] = screen.link.takeCommands()
    screen.link.say(shop.take(commands))
    expect([connection(screen).phase, screen.sync.confirmed?.seq, screen.sync.view().pending]).toEqual(['live', 4, []])
    expect(pass(screen, 120)).toBe(0)
  })

  it('[E30] given somebody looks at the page, then it asks at once, however often that is not more than each 2 s', () => {
    const { screen } = linked()
    screen.link.say({ type: 'refusedHello', reason: 'revoked' })
    screen.clock.pass(3_000)
    for (let n = 0; n < 10; n += 1) screen.sync.woke()
    expect(screen.link.restarts).toBe(1)
    screen.link.up()
    screen.link.say({ type: 'refusedHello', reason: 'revoked' })
    screen.sync.woke()
    expect(screen.link.restarts).toBe(1)
  })
})

describe('a device that was moved', () => {
  it('[E31] given taps wait, then it goes to its new page, which tells of them until that is put away; they stay', () => {
    const { screen: bench, shop } = linked()
    bench.link.down()
    bench.sync.send(SELL)
    bench.link.up()
    bench.link.say({ type: 'refusedHello', reason: 'moved', role: 'counter' })
    expect([bench.movedTo, bench.link.rests, connection(bench)]).toMatchObject([
      ['counter'],
      1,
      { phase: 'outside', why: 'moved' },
    ])
    const arrive = (role: 'counter' | 'bench') => {
      const page = fakeScreen({ on: bench, role })
      page.link.up()
      page.link.say(shop.welcome(null))
      return page.sync
    }
    const counter = arrive('counter')
    expect(counter.view().notices).toMatchObject([{ kind: 'left-behind', role: 'bench', commands: 1 }])
    expect(counter.view().pending).toEqual([])
    counter.dismiss('left-behind')
    expect(arrive('counter').view().notices).toEqual([])
    expect(arrive('bench').view().pending).toHaveLength(1)
  })

  it('[E31] given nothing waits, then nothing is told', () => {
    const { screen: bench, shop } = linked()
    bench.link.say({ type: 'refusedHello', reason: 'moved', role: 'wall' })
    const wall = fakeScreen({ on: bench, role: 'wall' })
    wall.link.up()
    wall.link.say(shop.welcome(null))
    expect(wall.sync.view().notices).toEqual([])
  })
})

describe('names that the server gives', () => {
  const named = { name: 'Bench 2', stationId: stationId('oven') }

  it('[E32] given a welcome with one, then the device takes it; without one it keeps its own', () => {
    const shop = new LittleShop()
    const screen = fakeScreen()
    screen.link.up()
    expect(hellos(screen)).toMatchObject([{ isRenamed: false }])
    screen.link.say(shop.welcome(null, { device: named }))
    screen.link.say(shop.welcome(2))
    expect(screen.named).toEqual([named])
  })

  it('[E32] given a change at the device, then it is said as one until a welcome answers it, and over a reload', () => {
    const { screen, shop } = linked()
    screen.link.down()
    screen.sync.deviceChanged()
    const again = fakeScreen({ on: screen })
    again.link.up()
    expect(hellos(again)).toMatchObject([{ isRenamed: true }])
    again.link.down()
    again.link.up()
    expect(hellos(again)).toMatchObject([{ isRenamed: true }])
    again.link.say(shop.welcome(null, { device: named }))
    again.link.down()
    again.link.up()
    expect(hellos(again)).toMatchObject([{ isRenamed: false }])
  })

  it('[E32] given a change while a welcome is on its way, then that welcome’s name is not taken, and another hello goes', () => {
    const { screen, shop } = linked()
    screen.link.down()
    screen.link.up()
    hellos(screen)
    screen.sync.deviceChanged()
    screen.link.say(shop.welcome(2, { device: { name: 'Old', stationId: null } }))
    expect([screen.named, hellos(screen)]).toMatchObject([[], [{ isRenamed: true }]])
    screen.link.say(shop.welcome(2, { device: named }))
    expect([screen.named, connection(screen).phase]).toEqual([[named], 'live'])
  })
})
