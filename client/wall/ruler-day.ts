import type { Ruler } from '../../shared-core/day/ruler.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { Hours } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { instantOfMinute, minuteOfDay } from '../live/clock-text.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { RulerWords } from '../words/wall.ts'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000

/** The day's ruler with its words, as it stands at a whole minute: it need not be painted more often. */
export function rulerDay(state: State, nowMs: EpochMs, clock: ShopClock, words: RulerWords): RulerDay | null {
  const minuteMs = epochMs(nowMs - (nowMs % MINUTE_MS))
  const hours = state.shop?.hours
  if (hours === undefined) return null
  const anchorMs = isAfterMidnight(hours, minuteOfDay(clock, nowMs)) ? epochMs(nowMs - DAY_MS) : nowMs
  const ruler = rulerOf(state, minuteMs, (minute) => instantOfMinute(clock, minute, anchorMs))
  return ruler === null || ruler.toMs <= ruler.fromMs ? null : withWords(ruler, words)
}

/** A shop that closes after midnight is then still in the day before. */
function isAfterMidnight({ openMinute, closeMinute }: Hours, minute: number): boolean {
  return closeMinute <= openMinute && minute < closeMinute
}

function withWords(ruler: Ruler, words: RulerWords): RulerDay {
  const { fromMs, toMs, nowMs, changeover, secondMenu, lastLoadInByMs, marks } = ruler
  const late = marks.filter((mark) => mark.tooLate)
  return {
    fromMs,
    toMs,
    nowMs,
    lastLoad:
      lastLoadInByMs === null
        ? undefined
        : {
            atMs: lastLoadInByMs,
            text: nowMs <= lastLoadInByMs ? words.lastLoadBy(lastLoadInByMs) : words.lastLoadGone,
          },
    changeover: changeover === null ? undefined : { ...changeover, text: words.changeover },
    secondMenu:
      changeover === null || secondMenu === null || changeover.toMs >= toMs
        ? undefined
        : { fromMs: changeover.toMs, toMs, text: secondMenu },
    orders: late.map(({ plannedId, atMs }) => ({ key: plannedId, atMs, text: words.tooLate(atMs), trouble: true })),
  }
}

/** The shop's offset from UTC at an instant, for the ruler's hours. */
export function offsetMsAt(clock: ShopClock, atMs: number): number {
  let offsetMinutes = clock.offsets[0]?.offsetMinutes ?? 0
  for (const offset of clock.offsets) if (offset.fromMs <= atMs) offsetMinutes = offset.offsetMinutes
  return offsetMinutes * MINUTE_MS
}
