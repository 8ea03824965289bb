import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { HealthReason } from '../../shared-core/live/health.ts'
import type { OutlookTold, PlanTold } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { History } from '../history/history.ts'
import type { Log } from '../live/room-parts.ts'
import { localDate } from '../live/shop-clock.ts'
import { AdviceKeeper } from './advice-keeper.ts'
import { Feed } from './feed.ts'
import type { WorkDesk } from './work-desk.ts'
import { workHere } from './work-desk.ts'

export interface AdviceParts {
  /** Left out: the same without a thread, as tests do. */
  readonly work: WorkDesk | undefined
  /** The room's, changed in place. */
  readonly state: State
  readonly history: History
  readonly now: () => EpochMs
  readonly tellAll: (told: OutlookTold | PlanTold) => void
  readonly log: Log & { info(details: object, message: string): void }
}

/** Advice as the server keeps it up: the thread told of the shop, and plan and outlook told to the screens. */
export interface Advice {
  /** The thread, told of all that the shop knows by now before it is asked. */
  readonly work: Pick<WorkDesk, 'ask' | 'onBegun'>
  /** The last that were told; null: none yet. */
  readonly outlook: () => OutlookTold | null
  readonly plan: () => PlanTold | null
  readonly reasons: () => readonly HealthReason[]
  /** What was tapped is on disk. */
  entriesCame(entries: readonly Entry[]): void
  /** To be called about once a second. */
  tick(): void
  close(): Promise<void>
}

export function adviceFor(parts: AdviceParts): Advice {
  const { state, history, now, tellAll, log } = parts
  const work = parts.work ?? workHere({ salesFile: ':memory:' })
  const keeper = new AdviceKeeper({
    desk: work,
    history,
    now,
    monotonic: () => performance.now(),
    after: (ms, run) => {
      const timer = setTimeout(run, ms)
      return () => clearTimeout(timer)
    },
    tellAll,
    log,
  })
  const today = () => (state.shop === null ? null : localDate(state.shop.profile.zone, now()))
  const feed = new Feed({ desk: work, history, shop: () => state.shop, today, onTold: () => keeper.news(), log })
  return {
    work: {
      ask: async (kind, asked) => {
        await feed.tell()
        return work.ask(kind, asked)
      },
      onBegun: (run) => work.onBegun(run),
    },
    outlook: () => keeper.outlook,
    plan: () => keeper.plan,
    reasons: () => work.reasons(),
    entriesCame: (entries) => keeper.news(entries.every(isOfSales)),
    tick: () => {
      work.tick()
      void feed.tell()
      keeper.tick()
    },
    close: async () => {
      keeper.close()
      await work.close()
      await feed.close()
    },
  }
}

function isOfSales({ events }: Entry): boolean {
  return events.every(({ type }) => type === 'stockTaken' || type === 'saleNoted')
}
