import { describe, expect, it } from 'vitest'
import { varietyId } from '../../shared-core/ids.ts'
import type { Welcome } from '../../shared-core/live/protocol.ts'
import type { FakeScreen } from './support/fake-screen.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const SELL = { type: 'sell', lines: [{ varietyId: varietyId('sesame'), pieces: 6 }] } as const
const NEWER: Partial<Welcome> = { foldVersion: 99, buildId: 'build-2' }
const phase = (screen: FakeScreen) => screen.sync.view().connection.phase

function linked(shop = new LittleShop(), on?: FakeScreen) {
  const screen = fakeScreen(on === undefined ? {} : { on })
  screen.link.up()
  screen.link.say(shop.welcome(null))
  screen.link.take()
  return { screen, shop }
}

/** The link breaks and a server that differs in something answers. */
function meet(screen: FakeScreen, shop: LittleShop, change: Partial<Welcome>): void {
  screen.link.down()
  screen.link.up()
  screen.link.say(shop.welcome(screen.sync.confirmed?.seq ?? null, change))
}

function pass(screen: FakeScreen, seconds: number): void {
  for (let n = 0; n < seconds; n += 1) {
    screen.clock.pass(1_000)
    screen.sync.tick()
  }
}

describe('a server that folds in another form', () => {
  it('[C8] given it answers, then the screen stands still, says so and reloads at once, keeping its queue', () => {
    const { screen, shop } = linked()
    meet(screen, shop, NEWER)
    screen.link.take()
    screen.link.say(shop.does(SELL))
    screen.sync.send(SELL)
    expect([phase(screen), screen.sync.confirmed?.seq, screen.link.takeCommands()]).toEqual(['stale', 2, []])
    screen.sync.tick()
    expect(screen.reloads()).toBe(1)
    expect(linked(shop, screen).screen.sync.view().pending).toHaveLength(1)
  })

  it('[C8] given the page comes back no newer, then it does not reload again at once, and later it does', () => {
    const { screen, shop } = linked()
    meet(screen, shop, NEWER)
    screen.sync.tick()
    const again = fakeScreen({ on: screen })
    meet(again, shop, NEWER)
    pass(again, 25)
    expect([phase(again), again.reloads()]).toEqual(['stale', 0])
    pass(again, 10)
    expect(again.reloads()).toBe(1)
  })

  it('[C8] given the contact is lost then, then it still says that it stands still', () => {
    const { screen, shop } = linked()
    meet(screen, shop, NEWER)
    screen.link.down()
    expect(phase(screen)).toBe('stale')
  })

  it('[C8] given a protocol that the server refuses, then the same', () => {
    const { screen } = linked()
    screen.link.say({ type: 'refusedHello', reason: 'malformed' })
    screen.sync.tick()
    expect([phase(screen), screen.reloads()]).toEqual(['stale', 1])
  })

  it('[C8] given taps that the device could not save, then it does not reload', () => {
    const { screen, shop } = linked()
    screen.link.down()
    screen.saved.full = true
    screen.sync.send(SELL)
    screen.saved.full = false
    meet(screen, shop, NEWER)
    pass(screen, 100)
    expect(screen.reloads()).toBe(0)
  })
})

describe('a server with another build of the pages', () => {
  it('[C8] given it is used, then it reloads only when it has been left alone for a minute', () => {
    const { screen, shop } = linked()
    meet(screen, shop, { buildId: 'build-2' })
    for (let n = 0; n < 4; n += 1) {
      screen.sync.touched()
      pass(screen, 50)
    }
    expect([phase(screen), screen.reloads()]).toEqual(['live', 0])
    pass(screen, 15)
    expect(screen.reloads()).toBe(1)
  })

  it('[C8] given something is pending, then it waits for the answer', () => {
    const { screen, shop } = linked()
    meet(screen, shop, { buildId: 'build-2' })
    screen.link.take()
    screen.sync.send(SELL)
    pass(screen, 200)
    expect(screen.reloads()).toBe(0)
    for (const commands of screen.link.takeCommands()) screen.link.say(shop.take(commands))
    pass(screen, 2)
    expect(screen.reloads()).toBe(1)
  })

  it('[C8] given the reload brings the same page, then the next try is ten minutes later', () => {
    const { screen, shop } = linked()
    meet(screen, shop, { buildId: 'build-2' })
    pass(screen, 61)
    expect(screen.reloads()).toBe(1)
    const again = fakeScreen({ on: screen })
    meet(again, shop, { buildId: 'build-2' })
    pass(again, 500)
    expect(again.reloads()).toBe(0)
    pass(again, 120)
    expect(again.reloads()).toBe(1)
  })

  it('[C8] given the same build, then nothing reloads', () => {
    const { screen } = linked()
    pass(screen, 300)
    expect(screen.reloads()).toBe(0)
  })
})

describe('a server that is gone again before the page is loaded anew', () => {
  it('[N14] given another build and a page left alone, then it stays, and is loaded anew once the server is back', () => {
    const { screen, shop } = linked()
    meet(screen, shop, { buildId: 'build-2' })
    screen.link.down()
    pass(screen, 3_600)
    expect(screen.reloads()).toBe(0)
    meet(screen, shop, { buildId: 'build-2' })
    pass(screen, 1)
    expect(screen.reloads()).toBe(1)
  })

  it('[C8] given a server that cannot read the hello and hangs up at once, then the page is loaded anew all the same', () => {
    const { screen } = linked()
    screen.link.down()
    screen.link.up()
    screen.link.say({ type: 'refusedHello', reason: 'malformed' })
    screen.link.down()
    pass(screen, 1)
    expect(screen.reloads()).toBe(1)
  })
})

describe('which version is told', () => {
  it('[E38] given a newer build is served, then the screen says so until it has been loaded', () => {
    const { screen, shop } = linked()
    expect(screen.sync.view()).toMatchObject({ version: '0.0.0', isOutdated: false })
    meet(screen, shop, { buildId: 'build-2', version: '0.1.0' })
    expect(screen.sync.view()).toMatchObject({ version: '0.1.0', isOutdated: true })
    const again = fakeScreen({ on: screen, buildId: 'build-2' })
    meet(again, shop, { buildId: 'build-2', version: '0.1.0' })
    expect(again.sync.view()).toMatchObject({ version: '0.1.0', isOutdated: false })
  })
})
