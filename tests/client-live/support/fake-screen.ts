import type { Link, LinkEvents, OpenLink } from '../../../client/live/link.ts'
import { ScreenSync } from '../../../client/live/screen-sync.ts'
import type { Command } from '../../../shared-core/day/commands.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { DeviceHello, FromScreen, Role, ToScreen } from '../../../shared-core/live/protocol.ts'
import { FakeClock, FakeSaved } from './fake-device.ts'

/** The screen's end of a link that the test plays the other end of. What is said before `up` is lost, as it should be. */
export class FakeLink implements Link {
  readonly sent: FromScreen[] = []
  restarts = 0
  rests = 0
  closed = false
  readonly #events: LinkEvents
  #isUp = false

  constructor(events: LinkEvents) {
    this.#events = events
  }

  up(): void {
    this.#isUp = true
    this.#events.up()
  }

  down(): void {
    this.#isUp = false
    this.#events.down()
  }

  say(message: ToScreen): void {
    this.#events.message(JSON.parse(JSON.stringify(message)))
  }

  send(message: FromScreen): void {
    if (this.#isUp) this.sent.push(JSON.parse(JSON.stringify(message)))
  }

  restart(): void {
    this.restarts += 1
  }

  /** As over a socket: whoever hangs up hears of it. */
  rest(): void {
    this.rests += 1
    if (this.#isUp) this.down()
  }

  close(): void {
    this.closed = true
  }

  /** What was sent since the last time that this was asked. */
  take(): FromScreen[] {
    return this.sent.splice(0)
  }

  /** The commands among them, message by message. */
  takeCommands(): (readonly Command[])[] {
    return this.take().flatMap((message) => (message.type === 'commands' ? [message.commands] : []))
  }
}

export interface FakeScreen {
  readonly sync: ScreenSync
  readonly link: FakeLink
  readonly clock: FakeClock
  readonly saved: FakeSaved
  readonly reloads: () => number
  readonly changes: () => number
  readonly movedTo: Role[]
  readonly named: Pick<DeviceHello, 'name' | 'stationId'>[]
}

/** A screen of its own parts; `on` the same device, it is the page after a reload, or a second page. */
export function fakeScreen(
  options: { on?: Pick<FakeScreen, 'clock' | 'saved'>; role?: Role; buildId?: string } = {},
): FakeScreen {
  const clock = options.on?.clock ?? new FakeClock()
  const saved = options.on?.saved ?? new FakeSaved()
  const links: FakeLink[] = []
  let [reloads, changes] = [0, 0]
  const movedTo: Role[] = []
  const named: FakeScreen['named'] = []
  const openLink: OpenLink = (events) => {
    const link = new FakeLink(events)
    links.push(link)
    return link
  }
  const sync = new ScreenSync({
    decide,
    openLink,
    saved,
    clock,
    makeId: makeIds(),
    device: () => ({ name: 'Test', role: options.role ?? 'bench', stationId: null }),
    buildId: options.buildId ?? 'build-1',
    reload: () => {
      reloads += 1
    },
    moveTo: (role) => movedTo.push(role),
    named: (device) => named.push(device),
    onChange: () => {
      changes += 1
    },
  })
  const [link] = links
  if (link === undefined) throw new Error('the screen opened no link')
  return { sync, link, clock, saved, reloads: () => reloads, changes: () => changes, movedTo, named }
}

/** Different in every screen of a test run, and the same in every run of a test file. */
function makeIds(): () => string {
  pages += 1
  const page = pages
  let made = 0
  return () => {
    made += 1
    return `page${page}-${made}`
  }
}
let pages = 0
