import type { SavedText } from '../../../client/live/saved-text.ts'
import type { DeviceClock } from '../../../client/live/server-clock.ts'

/** A device's two clocks, turned by hand. */
export class FakeClock implements DeviceClock {
  monotonic: number
  wall: number

  constructor(wall = 1_700_000_000_000, monotonic = 5_000) {
    this.wall = wall
    this.monotonic = monotonic
  }

  pass(ms: number): void {
    this.monotonic += ms
    this.wall += ms
  }

  /** Asleep: the monotonic clock stands still. */
  sleep(ms: number): void {
    this.wall += ms
  }

  monotonicMs(): number {
    return this.monotonic
  }

  wallMs(): number {
    return this.wall
  }
}

/** A device's store that lives as long as the test; `full` makes it refuse to write. */
export class FakeSaved implements SavedText {
  readonly texts = new Map<string, string>()
  full = false

  read(key: string): string | null {
    return this.texts.get(key) ?? null
  }

  write(key: string, text: string): boolean {
    if (!this.full) this.texts.set(key, text)
    return !this.full
  }

  remove(key: string): void {
    this.texts.delete(key)
  }

  keys(prefix: string): string[] {
    return [...this.texts.keys()].filter((key) => key.startsWith(prefix))
  }
}
