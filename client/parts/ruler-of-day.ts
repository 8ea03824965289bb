import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { instantOfMinute, minuteOfDay } from '../live/clock-text.ts'
import type { RulerDay } from './ruler-view.ts'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000

/** What a screen writes on the ruler. */
export interface RulerOfDayWords {
  lastLoad(atMs: EpochMs): string
  readonly lastLoadGone: string
  readonly changeover: string
  /** A planned load that would not be out by the changeover. */
  tooLate(atMs: EpochMs): string
}

/**
 * The shop's day as a ruler, as it stands at a whole minute: it need not be painted more often.
 * @returns null without a set-up, and where the hours make no day
 */
export function rulerOfDay(state: State, nowMs: EpochMs, clock: ShopClock, words: RulerOfDayWords): RulerDay | null {
  const { shop } = state
  if (shop === null) return null
  const minuteMs = epochMs(nowMs - (nowMs % MINUTE_MS))
  const { openMinute, closeMinute } = shop.hours
  // A shop that closes after midnight is then still in the day before.
  const isDayBefore = closeMinute <= openMinute && minuteOfDay(clock, nowMs) < closeMinute
  const anchorMs = isDayBefore ? epochMs(nowMs - DAY_MS) : nowMs
  const ruler = rulerOf(state, minuteMs, (minute) => instantOfMinute(clock, minute, anchorMs))
  if (ruler === null || ruler.toMs <= ruler.fromMs) return null
  const { fromMs, toMs, changeover, secondMenu, lastLoadInByMs: lastMs, marks } = ruler
  const lastText = lastMs === null || nowMs > lastMs ? words.lastLoadGone : words.lastLoad(lastMs)
  const hasSecond = changeover !== null && secondMenu !== null && changeover.toMs < toMs
  return {
    fromMs,
    toMs,
    nowMs: minuteMs,
    lastLoad: lastMs === null ? undefined : { atMs: lastMs, text: lastText },
    changeover: changeover === null ? undefined : { ...changeover, text: words.changeover },
    secondMenu: hasSecond ? { fromMs: changeover.toMs, toMs, text: secondMenu } : undefined,
    orders: marks
      .filter((mark) => mark.tooLate)
      .map(({ plannedId, atMs }) => ({ key: plannedId, atMs, text: words.tooLate(atMs), trouble: true })),
  }
}

/** The shop's offset from UTC at an instant, in ms: what the ruler numbers its hours by. */
export function offsetMsAt({ offsets }: ShopClock, atMs: number): number {
  let offsetMinutes = offsets[0]?.offsetMinutes ?? 0
  for (const offset of offsets) if (offset.fromMs <= atMs) offsetMinutes = offset.offsetMinutes
  return offsetMinutes * MINUTE_MS
}
