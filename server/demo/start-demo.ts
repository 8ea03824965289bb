import type { Command } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import { withPlan } from '../../shared-core/plan/with-plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { DEMO_DEVICES } from './demo-shop.ts'
import { DemoPeople } from './next-move.ts'
import { DemoTaps } from './played.ts'

/** What the demo's people need of the server. They tap through the same seam as every screen. */
export interface DemoSeam {
  /** As `Room.submit`. */
  readonly submit: (device: DeviceHello, commands: readonly Command[]) => Promise<readonly CommandAnswer[]>
  /** As `Room.read`: shows the state while nobody is changing it. */
  readonly read: <Result>(look: (state: State) => Result) => Promise<Result>
  /** The server's clock. */
  readonly nowMs: () => EpochMs
  /** Which loads are advised, null while none are; left out: nobody advises, and they bake by a list of their own. */
  readonly plan?: () => Plan | null
  /** Runs something after so much real time; what comes back cancels it. */
  readonly schedule: (delayMs: number, run: () => void) => () => void
  readonly seed: number
  /** Nobody but those who tap. */
  readonly handsOff: boolean
  /** How often they look around. */
  readonly lookEveryMs: number
  /** Hears of what could not be submitted; the people go on. */
  readonly onTrouble: (error: unknown) => void
}

export interface RunningDemo {
  readonly stop: () => void
}

/** Moves between two looks; more are made at the next. */
const MOVES_A_LOOK_MAX = 100
/** A machine that slept longer than this wakes to the shop as it is; nobody makes up for what was missed. */
const SLEPT_MS = 5 * 60_000

/**
 * Sets the demo's people to work on the running shop: they keep it moving through the morning, the quiet afternoon, the
 * close and the next morning. With `handsOff` they do nothing at all.
 */
export function startDemo(seam: DemoSeam): RunningDemo {
  if (seam.handsOff) return { stop: () => undefined }
  const startMs = seam.nowMs()
  const people = new DemoPeople({ seed: seam.seed, fromMs: startMs, isAdvised: seam.plan !== undefined })
  const taps = new DemoTaps(`live${startMs.toString(36)}`)
  let isStopped = false

  const look = async () => {
    try {
      await doWhatIsDue({ seam, people, taps, isStopped: () => isStopped })
    } catch (error) {
      seam.onTrouble(error)
    }
    if (!isStopped) cancel = seam.schedule(seam.lookEveryMs, () => void look())
  }
  let cancel = seam.schedule(seam.lookEveryMs, () => void look())
  return {
    stop: () => {
      isStopped = true
      cancel()
    },
  }
}

interface Look {
  readonly seam: DemoSeam
  readonly people: DemoPeople
  readonly taps: DemoTaps
  readonly isStopped: () => boolean
}

/** One after the other, each seen by the next: what they do depends on what has just been done. */
async function doWhatIsDue({ seam, people, taps, isStopped }: Look): Promise<void> {
  const nowMs = seam.nowMs()
  if (nowMs - people.nowMs > SLEPT_MS) people.skipTo(epochMs(nowMs - seam.lookEveryMs))
  for (let done = 0; done < MOVES_A_LOOK_MAX && !isStopped(); done += 1) {
    const move = await seam.read((state) => people.next(withPlan(state, seam.plan?.() ?? null), nowMs))
    if (move === null) return
    await seam.submit(DEMO_DEVICES[move.who], [taps.command(move, move.atMs)])
  }
}
