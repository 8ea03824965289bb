/**
 * The one clockwork of a screen: it says "now" on each second of the server's time, so that all screens change their
 * seconds together, and four times a second while something is about to be due. A hidden page does not tick.
 */
export interface TickerParts {
  readonly serverNowMs: () => number
  readonly onTick: () => void
  /** How many times as fast as real time the server's runs. */
  readonly speed: () => number
  /** Whether quarters of a second are wanted now: something under a minute is counting. */
  readonly isCounting: () => boolean
  readonly isHidden: () => boolean
  readonly timers: Timers
}

export interface Timers {
  set(run: () => void, afterMs: number): number
  clear(timer: number): void
}

export interface Ticker {
  /** To be called when the page is shown or hidden, and when the server's time has jumped. */
  reset(): void
  stop(): void
}

const SECOND_MS = 1_000
const QUARTER_MS = 250

/** Starts ticking with a tick at once. */
export function startTicker({ serverNowMs, speed, onTick, isCounting, isHidden, timers }: TickerParts): Ticker {
  let timer: number | null = null
  let stopped = false

  const wait = (): void => {
    if (timer !== null) timers.clear(timer)
    timer = null
    if (stopped || isHidden()) return
    // Time that is sped up changes at most four times in a real second, too.
    const times = speed()
    const stepMs = isCounting() || times > 1 ? QUARTER_MS * times : SECOND_MS
    timer = timers.set(tick, msToBoundary(serverNowMs(), stepMs) / times)
  }
  const tick = (): void => {
    if (timer !== null) timers.clear(timer)
    timer = null
    if (stopped || isHidden()) return
    onTick()
    wait()
  }
  tick()
  return {
    reset: tick,
    stop: () => {
      stopped = true
      wait()
    },
  }
}

/** Time to the next multiple of `stepMs`; a whole step on the boundary itself. @example msToBoundary(1250, 1000) // 750 */
export function msToBoundary(nowMs: number, stepMs: number): number {
  return stepMs - (nowMs % stepMs)
}
