import type { Schedule } from './schedule.ts'

const LINES_MAX = 40

/** What goes wrong in a simulated day. Each kind is counted, and a run in which none fired proves nothing. */
export type FaultKind = (typeof FAULT_KINDS)[number]
export const FAULT_KINDS = [
  'cut',
  'stall',
  'late-arrival',
  'repeat',
  'reload',
  'clock-step',
  'sleep',
  'append-fails',
  'append-unsure',
  'stop-before-append',
  'stop-after-append',
  'stop-before-answer',
  'server-clock-step',
  'new-build',
  'same-tap',
] as const

/** The last things that happened, for the person who has to find out why, and how often each fault fired. */
export class Story {
  readonly faults = new Map<FaultKind, number>()
  readonly #schedule: Schedule
  readonly #beganMs: number
  readonly #lines: string[] = []

  constructor(schedule: Schedule) {
    this.#schedule = schedule
    this.#beganMs = schedule.nowMs
  }

  tell(who: string, what: string): void {
    const seconds = (this.#schedule.nowMs - this.#beganMs) / 1_000
    this.#lines.push(`${seconds.toFixed(3).padStart(10)} s  ${who.padEnd(9)} ${what}`)
    if (this.#lines.length > LINES_MAX) this.#lines.shift()
  }

  fault(kind: FaultKind, who: string, what = ''): void {
    this.faults.set(kind, (this.faults.get(kind) ?? 0) + 1)
    this.tell(who, `${kind} ${what}`.trimEnd())
  }

  toString(): string {
    return this.#lines.join('\n')
  }
}
