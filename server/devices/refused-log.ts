import type { RefusedAttempts, RefusedKind } from '../../shared-core/live/devices.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/** An address is short; what an attacker sends as one must not fill the memory. */
const FROM_LENGTH_MAX = 64

/** Every attempt that was refused, counted by kind since the start: one line a kind, however many come. */
export class RefusedLog {
  readonly sinceMs: EpochMs
  readonly #now: () => EpochMs
  readonly #byKind = new Map<RefusedKind, RefusedAttempts>()

  constructor(now: () => EpochMs) {
    this.#now = now
    this.sinceMs = now()
  }

  /** @param from the address that it came from, or the name of a device that is known */
  count(kind: RefusedKind, from: string | undefined): void {
    const times = (this.#byKind.get(kind)?.times ?? 0) + 1
    const lastFrom = (from ?? '').replace(/^::ffff:/, '').slice(0, FROM_LENGTH_MAX)
    this.#byKind.set(kind, { kind, times, lastAtMs: this.#now(), lastFrom })
  }

  /** The latest first. */
  attempts(): readonly RefusedAttempts[] {
    return [...this.#byKind.values()].sort((one, other) => other.lastAtMs - one.lastAtMs)
  }
}
