import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import type { Socket } from 'socket.io-client'
import { io } from 'socket.io-client'
import { cpuMsOf, ForeignCpu, median, ms, quantile } from './figures.ts'
import { helloOf, idOf, saleOf, turnOf } from './messages.ts'
import type { Started } from './server-process.ts'
import { rssMbOf, startProcess } from './server-process.ts'

/**
 * 200 screens and 500 commands a second for a minute: a burst each tenth of a second, one command from each of 50
 * screens, until all 200 have heard it. The floor is a bare broadcast that writes and groups what arrives in a turn as
 * ours does, in alternating blocks of one run. All screens live in this one process, whose work is part of both figures.
 */
const SCREENS = 200
const BURST = 50
const BURSTS_A_SECOND = 10
const BLOCK_SECONDS = 5
const WARM_UP_SECONDS = 2
const AIM_RATIO = 2

const { values } = parseArgs({ options: { seconds: { type: 'string', default: '60' } } })
const blocks = Math.max(1, Math.round(Number(values.seconds) / BLOCK_SECONDS))
if (!Number.isFinite(blocks))
  throw new Error(`--seconds is "${values.seconds}"; it must be a number, e.g. --seconds 10`)

/** One server with its screens. */
class Side {
  readonly server: Started
  readonly sockets: readonly Socket[]
  readonly #tap: (n: number) => object
  #sent = 0
  /** By command: when its burst began. */
  readonly #beganMs = new Map<string, number>()
  #times: number[] = []
  #heard = 0
  #messages = 0

  constructor(server: Started, sockets: readonly Socket[], tap: (n: number) => object) {
    this.server = server
    this.sockets = sockets
    this.#tap = tap
    for (const socket of sockets) socket.on('m', (message: Heard) => this.#hear(message))
  }

  /** @returns for each screen and burst its time to the last command, and messages a screen a burst */
  async run(seconds: number): Promise<Block> {
    this.#times = []
    this.#messages = 0
    const bursts = seconds * BURSTS_A_SECOND
    const beganMs = performance.now()
    const done: number[] = []
    for (let burst = 0; burst < bursts; burst += 1) {
      const dueMs = beganMs + (burst * 1_000) / BURSTS_A_SECOND
      if (dueMs > performance.now()) await wait(dueMs - performance.now())
      const burstBeganMs = performance.now()
      this.#burst(burstBeganMs)
      const wanted = this.#sent * SCREENS
      // The next burst is sent when it is due, whether or not this one is through.
      this.#whenHeard(wanted, () => done.push(performance.now() - burstBeganMs))
    }
    await new Promise<void>((resolve) => this.#whenHeard(this.#sent * SCREENS, resolve))
    const tookSeconds = (performance.now() - beganMs) / 1_000
    return {
      times: this.#times,
      done,
      messages: this.#messages / SCREENS / bursts,
      rate: (bursts * BURST) / tookSeconds,
    }
  }

  #burst(nowMs: number): void {
    for (let n = 0; n < BURST; n += 1) {
      this.#beganMs.set(idOf(this.#sent), nowMs)
      this.sockets[this.#sent % SCREENS]?.emit('m', this.#tap(this.#sent))
      this.#sent += 1
    }
  }

  readonly #waiting: { readonly wanted: number; readonly run: () => void }[] = []

  #whenHeard(wanted: number, run: () => void): void {
    this.#waiting.push({ wanted, run })
    this.#look()
  }

  #look(): void {
    for (let [first] = this.#waiting; first !== undefined && this.#heard >= first.wanted; [first] = this.#waiting) {
      this.#waiting.shift()
      first.run()
    }
  }

  #hear(message: Heard): void {
    if (message.type !== 'turn') return
    const nowMs = performance.now()
    this.#messages += 1
    for (const { commandId } of message.entries) {
      const beganMs = this.#beganMs.get(commandId)
      if (beganMs === undefined) continue
      this.#heard += 1
      this.#times.push(nowMs - beganMs)
    }
    this.#look()
  }
}

interface Heard {
  readonly type: string
  readonly entries: readonly { readonly commandId: string }[]
}

interface Block {
  /** Milliseconds from a burst's beginning until a screen heard a command of it. */
  readonly times: readonly number[]
  /** Milliseconds until all screens had heard all of a burst. */
  readonly done: readonly number[]
  readonly messages: number
  readonly rate: number
}

const folder = mkdtempSync(join(tmpdir(), 'boilboard-load-'))
const shop = join(folder, 'shop')
const ours = await startProcess(['dist/server.mjs', '--open', '--shop', shop])
const floor = await startProcess([
  '--import',
  'tsx',
  'tests/bench/floor-server.ts',
  join(folder, 'floor.sqlite'),
  'grouped',
])
try {
  const sides = { ours: await ourSide(), floor: new Side(floor, await connect(floor), turnOf) }
  const before = figuresOf(ours)
  const taken: { ours: Block[]; floor: Block[] } = { ours: [], floor: [] }
  await sides.ours.run(WARM_UP_SECONDS)
  await sides.floor.run(WARM_UP_SECONDS)
  const cpu = { ours: 0, floor: 0 }
  const foreign = new ForeignCpu([process.pid, ours.pid, floor.pid])
  for (let block = 0; block < blocks; block += 1) {
    for (const name of ['ours', 'floor'] as const) {
      const cpuBefore = cpuMsOf(sides[name].server.pid)
      taken[name].push(await sides[name].run(BLOCK_SECONDS))
      cpu[name] += cpuMsOf(sides[name].server.pid) - cpuBefore
    }
  }
  report(taken, cpu)
  console.log(`  processors used by other programs meanwhile: ${(foreign.share() * 100).toFixed(0)} %`)
  const after = figuresOf(ours)
  console.log(
    `  our server: memory ${before.rssMb.toFixed(0)} → ${after.rssMb.toFixed(0)} MB, files ${before.fileMb.toFixed(1)} → ${after.fileMb.toFixed(1)} MB`,
  )
} finally {
  await ours.stop()
  await floor.stop()
  // Sockets of the clients would try to come back for ever.
  setImmediate(() => process.exit())
  rmSync(folder, { recursive: true, force: true })
}

async function ourSide(): Promise<Side> {
  const sockets = await connect(ours)
  for (const [n, socket] of sockets.entries()) socket.emit('m', helloOf(n))
  await Promise.all(sockets.map((socket) => new Promise((resolve) => socket.once('m', resolve))))
  const { state } = await (await fetch(`${ours.address}/api/v1/state`)).json()
  const [[varietyId]] = state.shop.varieties
  return new Side(ours, sockets, (n) => saleOf(n, varietyId))
}

async function connect(server: Started): Promise<Socket[]> {
  const sockets: Socket[] = []
  for (let n = 0; n < SCREENS; n += 1) {
    const socket = io(server.address, { transports: ['websocket'], forceNew: true })
    await new Promise<void>((resolve) => socket.once('connect', resolve))
    sockets.push(socket)
  }
  return sockets
}

function figuresOf({ pid }: Started): { readonly rssMb: number; readonly fileMb: number } {
  const bytes = readdirSync(shop)
    .filter((file) => file.startsWith('journal'))
    .map((file) => statSync(join(shop, file)).size)
  return { rssMb: rssMbOf(pid), fileMb: bytes.reduce((sum, size) => sum + size, 0) / 1024 / 1024 }
}

function report(
  taken: { readonly ours: readonly Block[]; readonly floor: readonly Block[] },
  cpu: { ours: number; floor: number },
): void {
  console.log(
    `\n${SCREENS} screens, ${BURST * BURSTS_A_SECOND} commands a second (${blocks} blocks of ${BLOCK_SECONDS} s each, alternating)`,
  )
  for (const name of ['ours', 'floor'] as const) {
    const all = taken[name].flatMap(({ times }) => times)
    const done = taken[name].flatMap((block) => block.done)
    const { messages, rate } = {
      messages: median(taken[name].map((block) => block.messages)),
      rate: median(taken[name].map((block) => block.rate)),
    }
    console.log(
      `  ${name.padEnd(6)} heard p50 ${ms(quantile(all, 0.5))}  p99 ${ms(quantile(all, 0.99))}  most ${ms(quantile(all, 1))}; burst at all screens p50 ${ms(median(done))}  p99 ${ms(quantile(done, 0.99))}`,
    )
    console.log(
      `         ${rate.toFixed(0)} commands a second, ${messages.toFixed(2)} messages a screen a burst of ${BURST}, server ${(cpu[name] / 10 / blocks / BLOCK_SECONDS).toFixed(0)} % of a core`,
    )
  }
  const ratios = taken.ours.map(({ times }, n) => median(times) / median(taken.floor[n]?.times ?? []))
  console.log(`  ratio of p50, median of blocks: ${median(ratios).toFixed(2)} (aim ≤ ${AIM_RATIO})`)
}
