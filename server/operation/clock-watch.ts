import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthReason } from '../../shared-core/live/health.ts'

/**
 * Watches the machine's clock. The server's own time never goes back, so a wrong clock disturbs no count; but what is
 * recorded carries it, and a plan for six o'clock begins when the clock says so.
 */
export interface ClockParts {
  /** Milliseconds since 1970, as the machine has it; may jump. */
  readonly wall: () => number
  /** Milliseconds of any origin; never jumps. */
  readonly monotonic: () => number
  /** How far the machine's clock is behind the server's time, which never goes back. */
  readonly behindMs: () => number
}

/** A clock that is kept by the network steps back by less than this. */
const BEHIND_MS_MAX = 5_000
/** Between two looks; a clock that was a little off and is put right is no news. */
const JUMP_MS_MIN = 60_000
/** A jump is told until somebody had a working day to see it. */
const JUMP_TOLD_MS = 12 * 3_600_000
/** The year of this release: no clock that is right says less. */
const YEAR_MIN = 2026
/** A computer that lost its clock's battery may say anything; nobody runs a release for that long. */
const YEAR_MAX = YEAR_MIN + 20
const MINUTE_MS = 60_000

export class ClockWatch {
  readonly #parts: ClockParts
  #last: { readonly wallMs: number; readonly monotonicMs: number }
  #jump: { readonly minutes: number; readonly seenAtMs: number } | null = null

  constructor(parts: ClockParts) {
    this.#parts = parts
    this.#last = { wallMs: parts.wall(), monotonicMs: parts.monotonic() }
  }

  /** To be called about once a second. */
  tick(): void {
    const now = { wallMs: this.#parts.wall(), monotonicMs: this.#parts.monotonic() }
    const jumpMs = now.wallMs - this.#last.wallMs - (now.monotonicMs - this.#last.monotonicMs)
    this.#last = now
    if (jumpMs >= JUMP_MS_MIN) this.#jump = { minutes: Math.round(jumpMs / MINUTE_MS), seenAtMs: now.monotonicMs }
  }

  reasons(): readonly HealthReason[] {
    const reasons: HealthReason[] = []
    const behindMs = this.#parts.behindMs()
    if (behindMs >= BEHIND_MS_MAX)
      reasons.push(healthReason('clock-set-back', 'warning', { minutes: Math.ceil(behindMs / MINUTE_MS) }))
    const jump = this.#jump
    if (jump !== null && this.#parts.monotonic() - jump.seenAtMs < JUMP_TOLD_MS)
      reasons.push(healthReason('clock-jumped', 'warning', { minutes: jump.minutes }))
    const year = new Date(this.#parts.wall()).getUTCFullYear()
    if (year < YEAR_MIN || year > YEAR_MAX) reasons.push(healthReason('clock-wrong-year', 'warning', { year }))
    return reasons
  }
}
