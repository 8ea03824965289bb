import { useMemo } from 'preact/hooks'
import { epochMs } from '../../../shared-core/units.ts'
import { localDate } from '../../live/clock-text.ts'
import { Ruler } from '../../parts/ruler.tsx'
import { isClosedDay, offsetMsAt, rulerOfDay } from '../../parts/ruler-of-day.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { addressOf } from '../place.ts'

const RULER_PX = 15

/** The day on its ruler, and whether it is open. */
export function DayPanel(parts: DeskParts) {
  const { store, live, state, words } = parts
  const { day } = words.desk
  const openDay = state.day
  const isOverdue = openDay !== null && live.shopClock !== null && openDay.label < localDate(live.shopClock, live.nowMs)
  return (
    <>
      <DayRuler {...parts} />
      <div class="desk-line">
        <p>{openDay === null ? day.notOpen : day.open(openDay.label, openDay.openedAtMs)}</p>
        {openDay === null ? (
          <button type="button" class="desk-strong" onClick={() => store.send({ type: 'openDay' })}>
            {day.openIt}
          </button>
        ) : (
          <a class="desk-button" href={addressOf('close')}>
            {day.goClose}
          </a>
        )}
      </div>
      {isOverdue && <p class="desk-trouble">{day.overdue(openDay.label)}</p>}
    </>
  )
}

function DayRuler({ store, live, state, words }: DeskParts) {
  const { ruler: say } = words.desk.today
  const { shopClock, nowMs } = live
  const minute = nowMs - (nowMs % 60_000)
  // biome-ignore lint/correctness/useExhaustiveDependencies: it stands at a whole minute and need not be made more often.
  const ruler = useMemo(
    () => (shopClock === null ? null : rulerOfDay(state, nowMs, shopClock, say)),
    [state, minute, shopClock, say],
  )
  if (shopClock === null) return null
  if (ruler === null) return isClosedDay(state, nowMs, shopClock) ? <p class="desk-quiet">{say.closedDay}</p> : null
  return (
    <Ruler
      {...ruler}
      clockText={(ms) => store.localTime(epochMs(ms))}
      offsetAtMs={(ms) => offsetMsAt(shopClock, ms)}
      moreText={(count) => `+${count}`}
      fontPx={RULER_PX * (live.settings.textPercent / 100)}
      name={say.spoken}
    />
  )
}
