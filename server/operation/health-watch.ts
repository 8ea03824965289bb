import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthReason } from '../../shared-core/live/health.ts'
import { ClockWatch } from './clock-watch.ts'
import { freeMbOf } from './free-space.ts'
import type { Lateness } from './lateness.ts'
import { watchLateness } from './lateness.ts'
import type { ServerLogger } from './log.ts'

/** Gathers why somebody should look at the server, for `GET /api/health`, the desk and the log. */
export interface HealthParts {
  readonly room: { readonly failure: string | null; readonly trouble: string | null }
  readonly history: { readonly behind: number }
  readonly clock: ClockWatch
  readonly lateness: Lateness
  /** Milliseconds of any origin; never jumps. */
  readonly monotonic: () => number
  /** See `freeMbOf`; of the shop's folder. */
  readonly freeMb: () => Promise<number | null>
  /** What other parts have to say: copies, the certificate. */
  readonly others: readonly (() => readonly HealthReason[])[]
  readonly log: ServerLogger
}

/** The journal grows by about 1 MB a day; copying and clearing up need some room themselves. */
const FREE_MB_MIN = 500
const DISK_ASKED_EVERY_MS = 30_000
/** A tap is felt as late from about a tenth of a second; above this something is wrong with the computer. */
const LATE_MS_MAX = 200
/** More than a busy morning leaves for its next lull. */
const BEHIND_MIN = 5_000

export class HealthWatch {
  readonly #parts: HealthParts
  #freeMb: number | null = null
  #askedAtMs = Number.NEGATIVE_INFINITY
  #told = new Set<string>()

  constructor(parts: HealthParts) {
    this.#parts = parts
  }

  /** To be called about once a second. */
  tick(): void {
    const { clock, lateness, monotonic, freeMb } = this.#parts
    const nowMs = monotonic()
    clock.tick()
    lateness.tick(nowMs)
    if (nowMs - this.#askedAtMs >= DISK_ASKED_EVERY_MS) {
      this.#askedAtMs = nowMs
      freeMb().then((mb) => {
        this.#freeMb = mb
      })
    }
    this.#tell()
  }

  /** What stops the shop first. */
  reasons(): readonly HealthReason[] {
    const { room, history, clock, lateness, others } = this.#parts
    const reasons: HealthReason[] = []
    if (room.failure !== null) reasons.push(healthReason('journal-failed', 'failing'))
    else if (room.trouble !== null) reasons.push(healthReason('disk-failing', 'failing'))
    if (this.#freeMb !== null && this.#freeMb < FREE_MB_MIN)
      reasons.push(healthReason('disk-nearly-full', 'warning', { freeMb: this.#freeMb }))
    reasons.push(...clock.reasons(), ...others.flatMap((ask) => ask()))
    if (lateness.lateMs > LATE_MS_MAX) reasons.push(healthReason('slow-answers', 'warning', { ms: lateness.lateMs }))
    if (history.behind >= BEHIND_MIN) reasons.push(healthReason('history-behind', 'note', { entries: history.behind }))
    return reasons
  }

  /** A reason goes to the log when it comes up and when it is over, not each second. */
  #tell(): void {
    const now = this.reasons()
    for (const { code, level, text } of now) {
      if (this.#told.has(code)) continue
      if (level === 'failing') this.#parts.log.error({ code }, text)
      else if (level === 'warning') this.#parts.log.warn({ code }, text)
      else this.#parts.log.info({ code }, text)
    }
    const codes = new Set<string>(now.map(({ code }) => code))
    for (const code of this.#told) if (!codes.has(code)) this.#parts.log.info({ code }, 'this is over')
    this.#told = codes
  }
}

interface WatchHealth extends Pick<HealthParts, 'room' | 'history' | 'others' | 'log'> {
  /** Undefined: there is no folder, and no disk to watch. */
  readonly folder: string | undefined
  /** The server's time, which never goes back. */
  readonly steadyMs: () => number
}

/** The watch over this machine; to be ticked about once a second. */
export function watchHealth({ folder, steadyMs, ...parts }: WatchHealth) {
  const monotonic = () => performance.now()
  const lateness = watchLateness(monotonic())
  const clock = new ClockWatch({ wall: () => Date.now(), monotonic, behindMs: () => steadyMs() - Date.now() })
  const freeMb = async () => (folder === undefined ? null : freeMbOf(folder))
  return { watch: new HealthWatch({ ...parts, clock, lateness, monotonic, freeMb }), stop: () => lateness.stop() }
}
