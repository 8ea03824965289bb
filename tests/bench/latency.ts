import { EventEmitter, once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import type { Socket } from 'socket.io-client'
import { io } from 'socket.io-client'
import { ForeignCpu, median, ms, quantile } from './figures.ts'
import { helloOf, saleOf, turnOf } from './messages.ts'
import type { Started } from './server-process.ts'
import { startProcess } from './server-process.ts'

/** Tap → on disk → received by 50 screens, ours and the floor in alternating blocks of one run. */
const SCREENS = 50
const BLOCKS = 12
const TAPS_A_BLOCK = 100
const AIM_RATIO = 1.5

interface Side {
  readonly server: Started
  readonly screens: readonly Screen[]
  readonly tap: (n: number) => unknown
  /** The bytes of one message, for the reader to judge whether like is compared with like. */
  readonly received: { bytes: number }
}

interface Screen {
  readonly socket: Socket
  /** Emits "tap" when one has arrived. */
  readonly heard: EventEmitter
}

const folder = mkdtempSync(join(tmpdir(), 'boilboard-bench-'))
const ours = await startProcess(['dist/server.mjs', '--open', '--shop', join(folder, 'shop')])
const floor = await startProcess(['--import', 'tsx', 'tests/bench/floor-server.ts', join(folder, 'floor.sqlite')])
try {
  const sides: { readonly [name: string]: Side } = { ours: await ourSide(ours), floor: await floorSide(floor) }
  const foreign = new ForeignCpu([process.pid, ours.pid, floor.pid])
  const taken: { [name: string]: number[][] } = { ours: [], floor: [] }
  // The first block of each warms the engines up and is not counted.
  for (let block = 0; block <= BLOCKS; block += 1) {
    for (const [name, side] of Object.entries(sides)) {
      const times = await runBlock(side, block)
      if (block > 0) taken[name]?.push(times)
    }
  }
  report(taken, foreign.share(), sides)
} finally {
  await ours.stop()
  await floor.stop()
  // Sockets of the clients would try to come back for ever.
  setImmediate(() => process.exit())
  rmSync(folder, { recursive: true, force: true })
}

function report(
  taken: { [name: string]: number[][] },
  foreign: number,
  sides: { readonly [name: string]: Side },
): void {
  const [mine = [], bare = []] = [taken.ours, taken.floor]
  const ratios = mine.map((block, n) => median(block) / median(bare[n] ?? []))
  console.log(
    `\nTap → on disk → received by ${SCREENS} screens (${BLOCKS} blocks of ${TAPS_A_BLOCK} taps each, alternating)`,
  )
  for (const [name, blocks] of Object.entries(taken)) {
    const all = blocks.flat()
    const bytes = sides[name]?.received.bytes
    console.log(
      `  ${name.padEnd(6)} p50 ${ms(quantile(all, 0.5))}  p99 ${ms(quantile(all, 0.99))}  message ${bytes} bytes`,
    )
  }
  console.log(`  ratio of p50, median of blocks: ${median(ratios).toFixed(2)} (aim ≤ ${AIM_RATIO})`)
  console.log(`  processors used by other programs meanwhile: ${(foreign * 100).toFixed(0)} %`)
}

async function runBlock(side: Side, block: number): Promise<number[]> {
  const times: number[] = []
  for (let n = 0; n < TAPS_A_BLOCK; n += 1) {
    const [sender] = side.screens
    const began = performance.now()
    const all = Promise.all(side.screens.map(({ heard }) => once(heard, 'tap')))
    sender?.socket.emit('m', side.tap(block * TAPS_A_BLOCK + n))
    await all
    times.push(performance.now() - began)
    // People tap now and then: a rest lets the last message's buffers drain.
    await wait(2)
  }
  return times
}

async function ourSide(server: Started): Promise<Side> {
  const received = { bytes: 0 }
  const screens = await connect(server, received, (socket, n) => socket.emit('m', helloOf(n)))
  const { state } = await (await fetch(`${server.address}/api/v1/state`)).json()
  const [[varietyId]] = state.shop.varieties
  return { server, screens, tap: (n) => saleOf(n, varietyId), received }
}

/** The floor sends what ours sends: a turn with one sale. */
async function floorSide(server: Started): Promise<Side> {
  const received = { bytes: 0 }
  const screens = await connect(server, received, () => undefined)
  return { server, screens, received, tap: turnOf }
}

async function connect(
  server: Started,
  received: { bytes: number },
  greet: (socket: Socket, n: number) => void,
): Promise<Screen[]> {
  const made: Screen[] = []
  for (let n = 0; n < SCREENS; n += 1) {
    const socket = io(server.address, { transports: ['websocket'], forceNew: true })
    const heard = new EventEmitter()
    socket.on('m', (message: { type: string }) => {
      // Ours also says who is there.
      if (message.type !== 'turn') return
      if (received.bytes === 0) received.bytes = JSON.stringify(message).length
      heard.emit('tap')
    })
    await new Promise<void>((resolve) => socket.once('connect', resolve))
    greet(socket, n)
    made.push({ socket, heard })
  }
  await wait(500)
  return made
}
