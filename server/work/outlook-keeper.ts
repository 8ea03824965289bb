import type { Today } from '../../shared-core/demand/today.ts'
import { todayOf } from '../../shared-core/demand/today-of.ts'
import type { OutlookTold } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import type { Log } from '../live/room-parts.ts'
import type { WorkDesk } from './work-desk.ts'
import { WorkStopped } from './work-desk.ts'

/** Raised by one whenever the same day gives another outlook. */
const ENGINE = 1
/** From one outlook to the next while people tap: quick enough for a counter, and every screen paints it. */
const GAP_MS = 500
/** Without news the day goes on all the same. */
const ANEW_MS = 60_000
/** A history that is further behind is being made anew: what it takes for today is long over. */
const BEHIND_MAX = 200

export interface OutlookParts {
  readonly desk: WorkDesk
  readonly history: Pick<History, 'behind' | 'catchUp' | 'today'>
  /** The shop's time. */
  readonly now: () => EpochMs
  /** Milliseconds of any origin; never jumps. */
  readonly monotonic: () => number
  readonly after: (ms: number, run: () => void) => () => void
  readonly tellAll: (told: OutlookTold) => void
  readonly log: Log
}

/**
 * Keeps the outlook of today: asks for it anew after what was tapped and as time goes by, one at a time and only the
 * newest, and tells every screen. Of today it asks the history's fold, a moment behind the room's and off a tap's path.
 */
export class OutlookKeeper {
  readonly #parts: OutlookParts
  #latest: OutlookTold | null = null
  #askedAtMs = Number.NEGATIVE_INFINITY
  #askedShopMs = Number.NEGATIVE_INFINITY
  #isNews = true
  #isAsking = false
  #forget: (() => void) | null = null
  #isClosed = false

  constructor(parts: OutlookParts) {
    this.#parts = parts
    parts.desk.onBegun(() => this.news())
  }

  /** The last that was told; null: none yet. */
  get latest(): OutlookTold | null {
    return this.#latest
  }

  /** Something was tapped, or the thread knows more. */
  news(): void {
    this.#isNews = true
    this.#plan()
  }

  /** To be called about once a second. */
  tick(): void {
    if (this.#parts.now() - this.#askedShopMs >= ANEW_MS) this.news()
  }

  close(): void {
    this.#isClosed = true
    this.#forget?.()
  }

  #plan(): void {
    if (!this.#isNews || this.#isAsking || this.#forget !== null || this.#isClosed) return
    const waitMs = Math.max(0, this.#askedAtMs + GAP_MS - this.#parts.monotonic())
    this.#forget = this.#parts.after(waitMs, () => {
      this.#forget = null
      void this.#ask()
    })
  }

  async #ask(): Promise<void> {
    const { now, monotonic, log } = this.#parts
    this.#isNews = false
    this.#isAsking = true
    this.#askedAtMs = monotonic()
    this.#askedShopMs = now()
    try {
      await this.#askNow()
    } catch (error) {
      if (!(error instanceof WorkStopped)) log.error({ error }, 'the outlook of today could not be reckoned')
    }
    this.#isAsking = false
    this.#plan()
  }

  async #askNow(): Promise<void> {
    const { desk, history, now } = this.#parts
    if (history.behind > BEHIND_MAX) return
    await history.catchUp()
    const asked = history.today((state, sales) => ({
      today: todayOf(state, sales, now()),
      noonMs: sales.noonMs,
      seq: state.seq,
    }))
    if (asked === null || !isOpen(asked)) {
      if (this.#latest !== null && this.#latest.outlook !== null) this.#tell(this.#latest.basedOnSeq, null)
      return
    }
    const { today, noonMs, seq } = asked
    const outlook = await desk.ask('outlook', { today, noonMs })
    if (outlook !== null) this.#tell(seq, outlook)
  }

  #tell(basedOnSeq: number, outlook: OutlookTold['outlook']): void {
    this.#latest = { type: 'outlook', basedOnSeq, engine: ENGINE, outlook }
    this.#parts.tellAll(this.#latest)
  }
}

function isOpen<Asked extends { readonly today: Today | null }>(asked: Asked): asked is Asked & { today: Today } {
  return asked.today !== null
}
