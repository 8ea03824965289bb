import { describe, expect, it } from 'vitest'
import { loadSettings } from '../../client/live/device-settings.ts'
import type { ShopStore } from '../../client/live/shop-store.ts'
import { createShopStore } from '../../client/live/shop-store.ts'
import { decide } from '../../shared-core/day/decide.ts'
import { shelfId, stationId, varietyId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at } from '../core/support/make.ts'
import { FakeClock, FakeSaved } from './support/fake-device.ts'
import { FakeLink } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const SESAME = varietyId('sesame')
const SELL = { type: 'sell', lines: [{ varietyId: SESAME, pieces: 6 }] } as const

/** A store on a device whose timers run only when its clock is turned. */
class Bench {
  readonly clock = new FakeClock(at('6:47'))
  readonly saved = new FakeSaved()
  readonly link: FakeLink
  readonly store: ShopStore
  hidden = false
  readonly #timers = new Map<number, { readonly run: () => void; readonly dueMs: number }>()
  #made = 0

  constructor() {
    const links: FakeLink[] = []
    this.store = createShopStore({
      decide,
      role: 'bench',
      saved: this.saved,
      clock: this.clock,
      openLink: (events) => {
        const link = new FakeLink(events)
        links.push(link)
        return link
      },
      makeId: () => {
        this.#made += 1
        return `bench-${this.#made}`
      },
      buildId: 'build-1',
      reload: () => undefined,
      moveTo: () => undefined,
      isHidden: () => this.hidden,
      timers: {
        set: (run, afterMs) => {
          this.#made += 1
          this.#timers.set(this.#made, { run, dueMs: this.clock.monotonic + afterMs })
          return this.#made
        },
        clear: (timer) => this.#timers.delete(timer),
      },
    })
    const [link] = links
    if (link === undefined) throw new Error('no link')
    this.link = link
  }

  get timers(): number {
    return this.#timers.size
  }

  pass(ms: number): void {
    const untilMs = this.clock.monotonic + ms
    for (;;) {
      const [next] = [...this.#timers]
        .filter(([, { dueMs }]) => dueMs <= untilMs)
        .sort((a, b) => a[1].dueMs - b[1].dueMs)
      if (next === undefined) break
      this.#timers.delete(next[0])
      this.clock.pass(next[1].dueMs - this.clock.monotonic)
      next[1].run()
    }
    this.clock.pass(untilMs - this.clock.monotonic)
  }

  linked(shop: LittleShop): this {
    this.link.up()
    this.link.say(shop.welcome(null))
    return this
  }
}

describe('the store', () => {
  it('[C14] given a second passes, then the time moves and what is shown stays the same object', () => {
    const bench = new Bench().linked(new LittleShop())
    const before = bench.store.getState()
    bench.pass(1_000)
    const after = bench.store.getState()
    expect(after.nowMs - before.nowMs).toBe(1_000)
    expect(after.shown).toBe(before.shown)
  })

  it('[C14] given something due within a minute, then the time moves each quarter; otherwise each second', () => {
    const shop = new LittleShop()
    const bench = new Bench().linked(shop)
    const times: number[] = []
    bench.store.subscribe(({ nowMs }, before) => {
      if (nowMs !== before.nowMs) times.push(nowMs)
    })
    bench.pass(2_000)
    expect(times.length).toBeLessThanOrEqual(3)
    // The first side takes three and a half minutes: two and three quarters are not soon, three are.
    bench.link.say(shop.does({ type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: SELL.lines }))
    bench.pass(120_000)
    times.length = 0
    bench.pass(10_000)
    expect(times.length).toBeLessThanOrEqual(10)
    bench.pass(40_000)
    times.length = 0
    bench.pass(10_000)
    expect(times.length).toBeGreaterThanOrEqual(40)
  })

  it('[C1, C4] given an act, then subscribers see it at once and again when it is answered', () => {
    const shop = new LittleShop()
    const bench = new Bench().linked(shop)
    bench.link.take()
    const seen: string[] = []
    bench.store.subscribe(({ shown, pending }) => {
      seen.push(`${shown?.stock.get(SESAME)?.soldToday ?? 0} sold, ${pending.length} pending`)
    })
    bench.store.send(SELL)
    for (const commands of bench.link.takeCommands()) bench.link.say(shop.take(commands))
    expect([...new Set(seen)]).toEqual(['6 sold, 1 pending', '6 sold, 0 pending'])
  })

  it('[C13] given the shop’s clock, then times are told by it, and not before it is known', () => {
    const bench = new Bench()
    expect(bench.store.localTime(at('13:05'))).toBe('')
    bench.linked(new LittleShop())
    expect(bench.store.localTime(at('13:05'))).toBe('1:05')
    const clock = { zone: 'Europe/Berlin', offsets: [{ fromMs: epochMs(0), offsetMinutes: 60 }] }
    bench.link.say({ type: 'clockTable', clock })
    expect(bench.store.localTime(at('13:05'))).toBe('8:05')
  })

  it('given another name or station, then the server hears of it; given another volume, then it does not', () => {
    const bench = new Bench().linked(new LittleShop())
    expect(bench.link.take()[0]).toMatchObject({ type: 'hello', device: { name: 'bench benc', stationId: null } })
    bench.store.changeSettings({ volumePercent: 10 })
    expect([bench.store.getState().settings.volumePercent, bench.link.take()]).toEqual([10, []])
    bench.store.changeSettings({ name: 'By the oven' })
    expect(bench.link.take()).toMatchObject([{ type: 'hello', device: { name: 'By the oven' } }])
  })

  it('[E32] given a name from the server, then it is this device’s, kept over a reload; what it calls itself unnamed is none', () => {
    const shop = new LittleShop()
    const bench = new Bench().linked(shop)
    const settings = () => bench.store.getState().settings
    bench.link.say(shop.welcome(2, { device: { name: 'bench benc', stationId: stationId('oven') } }))
    expect([settings().name, settings().stationId]).toEqual(['', 'oven'])
    bench.link.say(shop.welcome(2, { device: { name: 'Bench 2', stationId: null } }))
    expect([settings().name, settings().stationId]).toEqual(['Bench 2', null])
    expect(loadSettings(bench.saved, 'bench').name).toBe('Bench 2')
  })

  it('[C14] given a hidden page, then the time stands and the connection is looked after; shown, it is now at once', () => {
    const bench = new Bench().linked(new LittleShop())
    bench.hidden = true
    bench.store.visibilityChanged()
    const { nowMs } = bench.store.getState()
    bench.link.take()
    bench.pass(61_000)
    expect(bench.store.getState().nowMs).toBe(nowMs)
    expect(bench.link.take()).toMatchObject([{ type: 'probe' }])
    bench.hidden = false
    bench.store.visibilityChanged()
    expect(bench.store.getState().nowMs - nowMs).toBe(61_000)
    expect(bench.link.take()).toMatchObject([{ type: 'probe' }])
  })

  it('given stop, then no timer is left and the link is closed', () => {
    const bench = new Bench().linked(new LittleShop())
    bench.store.stop()
    expect([bench.timers, bench.link.closed]).toEqual([0, true])
  })
})
