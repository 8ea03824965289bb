import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * The server's time on a device whose own clock may be wrong, set at any moment, or asleep. The server's clock rules;
 * a screen estimates how far it is ahead of the device's monotonic clock, counts on with that one, and says how far it
 * may be off. Why not the device's wall clock: it jumps when somebody sets it, and a countdown would jump with it.
 */
export interface DeviceClock {
  /** Milliseconds that never go back; they may stand still while the device sleeps. */
  monotonicMs(): number
  /** The time that the device believes; only differences between two readings are used, to notice sleep. */
  wallMs(): number
}

/** One question to the server for its time: t0 and t3 by this device's clock, t1 and t2 by the server's. */
export interface Probe {
  readonly t0: number
  readonly t1: number
  readonly t2: number
  readonly t3: number
}

/**
 * How much two clocks may drift apart: crystals of tablets and small computers are sold with 20–30 ppm either way, so
 * that two of them seldom part by more. Common practice, no source; 50 ppm are 3 ms a minute.
 */
const DRIFT_PPM = 50
/** Both ends read their clocks in whole milliseconds at worst. */
const READING_MS = 2
/** The clocks of one device parting by more than this: it slept, or its clock was set. Less goes into the error only. */
const GAP_MS = 250
/** Differences up to this are made up slowly, larger ones at once: a second nobody waits ten seconds for. */
const SLEW_MS_MAX = 1_000
/** A slewing clock runs this much faster or slower: a half-second is made up in five, and seconds still look even. */
const SLEW_RATE = 0.1

/**
 * Estimates how far the server's clock is ahead of this screen's clock.
 *
 *   offsetMs = ((t1 - t0) + (t2 - t3)) / 2        errorMs = ((t3 - t0) - (t2 - t1)) / 2
 *
 * Why the middle: the split between the way out and the way back is unknown, so we take half.
 * The true offset lies within errorMs either side; keep the probe with the smallest errorMs.
 * @param probe ms: t0 sent, t1 arrived at server, t2 answered, t3 answer received
 * @returns null if the round trip is negative: a clock was stepped mid-probe, probe again
 * Source: RFC 5905 (NTPv4), section 8.
 * @example clockOffset({ t0: 1000, t1: 1510, t2: 1512, t3: 1022 }) // { offsetMs: 500, errorMs: 10 }
 */
export function clockOffset({ t0, t1, t2, t3 }: Probe): { offsetMs: number; errorMs: number } | null {
  const roundTripMs = t3 - t0 - (t2 - t1)
  if (roundTripMs < 0 || t3 < t0) return null
  return { offsetMs: (t1 - t0 + (t2 - t3)) / 2, errorMs: roundTripMs / 2 }
}

interface Estimate {
  readonly offsetMs: number
  readonly errorMs: number
  /** When it was made, by the monotonic clock. */
  readonly atMs: number
}

export class ServerClock {
  readonly #device: DeviceClock
  /**
   * The best estimate so far. One is enough: all errors grow at the same rate, so that the better of two stays the
   * better one, and a worn one loses against the next probe by itself.
   */
  #best: Estimate | null = null
  /** What is shown less what the estimate says, when the estimate last changed; it melts at the slew rate. */
  #slew = { fromMs: 0, atMs: 0 }
  /** How far the device's wall clock was ahead of its monotonic one when that was last taken into account. */
  #wallAheadMs: number
  /** How many times as fast as the device's clock the server's runs: 1, but for a demo that is sped up. */
  #speed = 1
  readonly #originMs: number

  constructor(device: DeviceClock) {
    this.#device = device
    this.#originMs = device.monotonicMs()
    this.#wallAheadMs = device.wallMs() - device.monotonicMs()
  }

  get speed(): number {
    return this.#speed
  }

  /** The server says how fast its time runs; what was measured at another speed says nothing any more. */
  runsAt(speed: number): void {
    if (speed === this.#speed) return
    this.#speed = speed
    this.#best = null
    this.#slew = { fromMs: 0, atMs: this.#paced(this.#device.monotonicMs()) }
  }

  /** True once the server has been heard: before that, times of this device are no claim about the server's. */
  get isKnown(): boolean {
    return this.#best !== null
  }

  /**
   * The server's time now. Between two looks it never goes back, except by at most the error that was reported, when a
   * probe shows that it was ahead by more than a second. The device's wall clock until the server has been heard.
   */
  serverNowMs(): EpochMs {
    const nowMs = this.#nowMs()
    if (this.#best === null) return epochMs(Math.max(0, this.#device.wallMs()))
    return epochMs(Math.max(0, nowMs + this.#best.offsetMs + this.#slewLeftMs(nowMs)))
  }

  /** How far `serverNowMs` may be off, ± ms; null when the server has not been heard. */
  errorMs(): number | null {
    if (this.#best === null) return null
    const nowMs = this.#nowMs()
    return errorAt(this.#best, nowMs) + Math.abs(this.#slewLeftMs(nowMs)) + this.#gapErrorMs()
  }

  /** Takes a probe's times in. @returns whether they were of use; false when a clock was stepped meanwhile */
  heard(probe: Probe): boolean {
    const paced = { ...probe, t0: this.#paced(probe.t0), t3: this.#paced(probe.t3) }
    const measured = clockOffset(paced)
    if (measured === null) return false
    const nowMs = this.#nowMs()
    const errorMs = measured.errorMs + READING_MS * this.#speed
    const next = { offsetMs: measured.offsetMs, errorMs, atMs: paced.t3 }
    const best = this.#best
    if (best === null) this.#adopt(next, nowMs)
    else {
      const [bestErrorMs, nextErrorMs] = [errorAt(best, nowMs) + this.#gapErrorMs(), errorAt(next, nowMs)]
      // Two estimates that cannot both be right: the server's clock was set, and the newer one holds.
      const isContradicted = Math.abs(best.offsetMs - next.offsetMs) > bestErrorMs + nextErrorMs
      if (isContradicted || nextErrorMs <= bestErrorMs) this.#adopt(next, nowMs)
    }
    return true
  }

  /**
   * Compares the device's two clocks; to be called at every tick and when a page becomes visible. A wall clock that
   * ran ahead means sleep (the monotonic clock stood still) or somebody setting it: the time counts as slept, and the
   * error grows by as much until the next probe. One that fell back was set back, which does not concern us.
   * @returns true when the server should be asked anew at once
   */
  noticeGap(): boolean {
    const gapMs = this.#gapMs()
    if (gapMs >= 0 && gapMs <= GAP_MS) return false
    this.#wallAheadMs += gapMs
    if (gapMs >= -GAP_MS && gapMs < 0) return false
    if (gapMs > 0 && this.#best !== null) {
      const { offsetMs, errorMs, atMs } = this.#best
      const pacedMs = gapMs * this.#speed
      this.#best = { offsetMs: offsetMs + pacedMs, errorMs: errorMs + pacedMs, atMs }
    }
    return true
  }

  #adopt(next: Estimate, nowMs: number): void {
    const shownMs = this.#best === null ? next.offsetMs : this.#best.offsetMs + this.#slewLeftMs(nowMs)
    const fromMs = shownMs - next.offsetMs
    this.#best = next
    this.#wallAheadMs += this.#gapMs()
    this.#slew = { fromMs: Math.abs(fromMs) > SLEW_MS_MAX ? 0 : fromMs, atMs: nowMs }
  }

  #gapMs(): number {
    return this.#device.wallMs() - this.#device.monotonicMs() - this.#wallAheadMs
  }

  /** A wall clock that is ahead may mean sleep that has not been taken into account. */
  #gapErrorMs(): number {
    return Math.max(0, this.#gapMs()) * this.#speed
  }

  /** The monotonic clock at the server's pace. */
  #nowMs(): number {
    return this.#paced(this.#device.monotonicMs())
  }

  #paced(monotonicMs: number): number {
    return this.#originMs + (monotonicMs - this.#originMs) * this.#speed
  }

  #slewLeftMs(nowMs: number): number {
    const { fromMs, atMs } = this.#slew
    const meltedMs = (nowMs - atMs) * SLEW_RATE
    return Math.sign(fromMs) * Math.max(0, Math.abs(fromMs) - meltedMs)
  }
}

function errorAt({ errorMs, atMs }: Estimate, nowMs: number): number {
  return errorMs + ((nowMs - atMs) * DRIFT_PPM) / 1_000_000
}
