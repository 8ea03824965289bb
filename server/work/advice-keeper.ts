import type { Plan } from '../../shared-core/live/plan.ts'
import type { OutlookTold, PlanTold } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import type { Log } from '../live/room-parts.ts'
import type { AdviseAsked } from './advise-questions.ts'
import { dayNow } from './day-now.ts'
import type { WorkDesk } from './work-desk.ts'
import { WorkStopped } from './work-desk.ts'

/** Raised by one whenever the same day gives another outlook or plan. */
const ENGINE = 1
/** From one to the next while people tap: quick enough for a counter, and every screen paints it. */
const GAP_MS = 500
/** While only sales come: planning takes a shop's computer long, and what sold in seconds changes no load. */
const SALES_GAP_MS = 5_000
/** Without news the day goes on all the same. */
const ANEW_MS = 60_000
/** A history that is further behind is being made anew: what it takes for today is long over. */
const BEHIND_MAX = 200
/** Figures move a little with every sale: alone they are told as often. */
const FIGURES_MS = 30_000
/** The thread answers others meanwhile: planning that takes longer must be known of. */
const SLOW_MS = 250

export interface AdviceKeeperParts {
  readonly desk: WorkDesk
  readonly history: Pick<History, 'behind' | 'catchUp' | 'today'>
  /** The shop's time. */
  readonly now: () => EpochMs
  /** Milliseconds of any origin; never jumps. */
  readonly monotonic: () => number
  readonly after: (ms: number, run: () => void) => () => void
  readonly tellAll: (told: OutlookTold | PlanTold) => void
  readonly log: Log & { info(details: object, message: string): void }
}

/**
 * Keeps plan and outlook of today: asks for both anew after what was tapped and as time goes by, one at a time and only
 * the newest, and tells every screen. Of today it asks the history's fold, a moment behind the room's and off a tap's path.
 */
export class AdviceKeeper {
  readonly #parts: AdviceKeeperParts
  #outlook: OutlookTold | null = null
  #plan: PlanTold | null = null
  /** As it was reckoned last, told or not. */
  #standing: Plan | null = null
  #planToldMs = Number.NEGATIVE_INFINITY
  #askedAtMs = Number.NEGATIVE_INFINITY
  #askedShopMs = Number.NEGATIVE_INFINITY
  #plannedAtMs = Number.NEGATIVE_INFINITY
  #isNews = true
  /** Of other things than sales. */
  #isLineNews = true
  /** Sales came of which the plan does not know yet. */
  #isPlanOwed = false
  #isAsking = false
  #due: { readonly atMs: number; readonly forget: () => void } | null = null
  #isClosed = false

  constructor(parts: AdviceKeeperParts) {
    this.#parts = parts
    parts.desk.onBegun(() => this.news())
  }

  /** The last outlook that was told; null: none yet. */
  get outlook(): OutlookTold | null {
    return this.#outlook
  }

  /** The last plan that was told; null: none yet. */
  get plan(): PlanTold | null {
    return this.#plan
  }

  /**
   * Something was tapped, or the thread knows more.
   * @param isOfSales nothing but sales: the outlook has them at once, the plan within some seconds
   */
  news(isOfSales = false): void {
    this.#isNews = true
    if (!isOfSales) this.#isLineNews = true
    this.#schedule()
  }

  /** To be called about once a second. */
  tick(): void {
    if (this.#parts.now() - this.#askedShopMs >= ANEW_MS) this.news()
  }

  close(): void {
    this.#isClosed = true
    this.#due?.forget()
  }

  #schedule(): void {
    if (!(this.#isNews || this.#isPlanOwed) || this.#isAsking || this.#isClosed) return
    const nowMs = this.#parts.monotonic()
    const dueMs = this.#isNews ? this.#askedAtMs + GAP_MS : this.#plannedAtMs + SALES_GAP_MS
    const atMs = Math.max(nowMs, dueMs)
    if (this.#due !== null && this.#due.atMs <= atMs) return
    this.#due?.forget()
    const forget = this.#parts.after(atMs - nowMs, () => {
      this.#due = null
      void this.#ask()
    })
    this.#due = { atMs, forget }
  }

  async #ask(): Promise<void> {
    const { now, monotonic, log } = this.#parts
    this.#isNews = false
    this.#isPlanOwed = false
    this.#isAsking = true
    this.#askedAtMs = monotonic()
    this.#askedShopMs = now()
    try {
      await this.#askNow()
    } catch (error) {
      if (!(error instanceof WorkStopped)) log.error({ error }, 'advice on today could not be reckoned')
    }
    this.#isAsking = false
    this.#schedule()
  }

  async #askNow(): Promise<void> {
    const { desk, history, log } = this.#parts
    if (history.behind > BEHIND_MAX) return
    await history.catchUp()
    const asked = this.#asked()
    if (asked === null) {
      this.#tellNone()
      return
    }
    const isPlanKept = this.#isPlanKept(asked)
    if (!isPlanKept) {
      this.#isLineNews = false
      this.#plannedAtMs = this.#askedAtMs
    }
    this.#isPlanOwed = isPlanKept
    const advised = await desk.ask('advise', { ...asked, isPlanKept })
    if (advised === null) return
    if (isPlanKept) return this.#tellOutlook(asked.seq, advised.outlook)
    if (advised.planMs > SLOW_MS) log.info({ planMs: Math.round(advised.planMs) }, 'planning took long')
    this.#standing = advised.plan
    this.#tellPlan(asked.seq, advised.plan)
    this.#tellOutlook(asked.seq, advised.outlook)
  }

  /** Null: no day is open. */
  #asked(): Omit<AdviseAsked, 'isPlanKept'> | null {
    const { history, now } = this.#parts
    const day = dayNow(history, now())
    if (day === null) return null
    const before = this.#standing?.date === day.today.date ? this.#standing : null
    return { ...day, line: day.isAdvised ? day.line : null, before }
  }

  #isPlanKept({ line, before }: Pick<AdviseAsked, 'line' | 'before'>): boolean {
    const isSoon = this.#askedAtMs < this.#plannedAtMs + SALES_GAP_MS
    return line !== null && before !== null && !this.#isLineNews && isSoon
  }

  #tellNone(): void {
    this.#standing = null
    if (this.#plan !== null) this.#tellPlan(this.#plan.basedOnSeq, null)
    if (this.#outlook !== null && this.#outlook.outlook !== null) this.#tellOutlook(this.#outlook.basedOnSeq, null)
  }

  #tellOutlook(basedOnSeq: number, outlook: OutlookTold['outlook']): void {
    this.#outlook = { type: 'outlook', basedOnSeq, engine: ENGINE, outlook }
    this.#parts.tellAll(this.#outlook)
  }

  /** Told when it is another one: each is painted on every screen. */
  #tellPlan(basedOnSeq: number, plan: Plan | null): void {
    const told = this.#plan?.plan ?? null
    const nowMs = this.#parts.monotonic()
    const isAnother = actsText(told) !== actsText(plan)
    const areFiguresOld = nowMs - this.#planToldMs >= FIGURES_MS && figuresText(told) !== figuresText(plan)
    if (!isAnother && !areFiguresOld) return
    this.#planToldMs = nowMs
    this.#plan = { type: 'plan', basedOnSeq, engine: ENGINE, plan }
    this.#parts.tellAll(this.#plan)
  }
}

/**
 * What people go by. Minutes alone, and no time at which something runs out: what is late moves with every look, and a
 * run-out with every sale.
 */
function actsText(plan: Plan | null): string {
  if (plan === null) return 'null'
  const { date, loads, pulls, changed, last, cannot } = plan
  const acts = loads.map(({ why, flipAtMs, outAtMs, readyAtMs, kettleAtMs, inAtMs, ...rest }) => [
    rest,
    why.map(({ kind }) => kind),
    [kettleAtMs, inAtMs, flipAtMs, outAtMs, readyAtMs].map(minuteIn),
  ])
  const ends = last && [last.kettleByMs, last.inByMs, last.emptyByMs, last.loadIds]
  return JSON.stringify([date, acts, pulls.map(({ atMs, ...rest }) => [rest, minuteIn(atMs)]), changed, ends, cannot])
}

function minuteIn(atMs: number | null): number | null {
  return atMs === null ? null : Math.floor(atMs / 60_000)
}

function figuresText(plan: Plan | null): string {
  return JSON.stringify(plan && { ...plan, atMs: 0 })
}
