import { useState } from 'preact/hooks'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { instantOfMinute } from '../../live/clock-text.ts'
import { useMeasuredWidth } from '../../parts/measured-width.ts'
import { Ruler } from '../../parts/ruler.tsx'
import { offsetMsAt } from '../../parts/ruler-of-day.ts'
import type { RulerDay } from '../../parts/ruler-view.ts'
import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'
import { Picture } from './picture.tsx'
import { laneSizes, pictureView } from './picture-view.ts'
import type { Pin } from './wishes.ts'
import { shownLoads, withPin } from './wishes.ts'

const MINUTE_MS = 60_000
const MARGIN_MS = 15 * MINUTE_MS
/** Narrower, a load is no wider than a finger; then the picture is moved sideways. */
const PX_PER_HOUR_LEAST = 130
const CLOSER = 2

/** Kettle, boards and shelves as lanes under the day's ruler, and the loads in them, which can be moved by hand. */
export function PicturePanel(parts: DayParts) {
  const { say, words, plan, live, shop } = parts
  const [ref, roomPx] = useMeasuredWidth<HTMLDivElement>()
  const [isCloser, setCloser] = useState(false)
  const [dragged, setDragged] = useState<Pin | null>(null)
  const day = dayOf(parts)
  const fontPx = Math.round((13 * live.settings.textPercent) / 100)
  const leastPx = ((day.toMs - day.fromMs) / 3_600_000) * PX_PER_HOUR_LEAST * (fontPx / 13)
  const widthPx = Math.max(roomPx, Math.round(leastPx)) * (isCloser ? CLOSER : 1)
  const shown = dragged === null ? parts.shown : shownLoads(plan, withPin(parts.wishes, dragged))
  const view = pictureView({
    fromMs: day.fromMs,
    toMs: day.toMs,
    widthPx,
    fontPx,
    shelfIds: shelvesOf(parts),
    loads: [...parts.running, ...shown],
    cycleMs: shop.kettle.cycleMs,
    boards: shop.boards,
    isOnBoards: (id) => shop.varieties.get(id)?.bakedOn !== 'pan',
    nameOf: words.names.variety,
  })
  const clockText = (ms: number) => words.times.clock(epochMs(ms))
  return (
    <Panel part="plan-picture" title={say.picture.title} isWide>
      <p class="desk-quiet">{say.picture.hint}</p>
      <div class="plan-picture" style={{ fontSize: `${fontPx}px` }}>
        <LaneNames {...parts} fontPx={fontPx} most={view.boards.most} />
        <div class="plan-scroll" ref={ref}>
          {roomPx > 0 && (
            <>
              <Ruler
                {...day}
                widthPx={widthPx}
                fontPx={fontPx}
                clockText={clockText}
                offsetAtMs={(ms) => offsetMsAt(parts.room.clock, ms)}
                moreText={(count) => `+${count}`}
                name={say.picture.ruler}
              />
              <Picture {...parts} view={view} day={day} widthPx={widthPx} fontPx={fontPx} onDragged={setDragged} />
            </>
          )}
        </div>
      </div>
      <Legend {...parts} />
      <p class="desk-line desk-noprint">
        <button type="button" onClick={() => setCloser(!isCloser)}>
          {isCloser ? say.picture.whole : say.picture.closer}
        </button>
      </p>
    </Panel>
  )
}

/** The hours that the line works, with the marks of the day on them. */
function dayOf({ plan, date, room, state, live, say, running }: DayParts): RulerDay {
  const noonMs = room.noonOf(date)
  const ruler = rulerOf(state, live.nowMs, (minute) => instantOfMinute(room.clock, minute, noonMs), date)
  const all = [...running, ...plan.loads.map((load) => ({ load }))].map(({ load }) => load)
  const starts = all.map(({ kettleAtMs, inAtMs }) => kettleAtMs ?? inAtMs)
  const ends = all.map(({ readyAtMs }) => readyAtMs)
  const { picture } = say
  const changeover = ruler?.changeover ?? null
  const orders =
    ruler === null || ruler.openMs < live.nowMs ? [] : [{ key: 'opening', atMs: ruler.openMs, text: picture.opening }]
  // Of a running day what is past is done: the room is for what is still to come.
  const begun = state.day?.label === date ? [live.nowMs] : [ruler?.ovenReadyMs ?? noonMs, ruler?.openMs ?? noonMs]
  const fromMs = Math.min(...starts, ...begun) - MARGIN_MS
  const toMs = Math.max(...ends, changeover?.fromMs ?? noonMs, noonMs - 3_600_000) + MARGIN_MS
  return {
    fromMs,
    toMs,
    nowMs: Math.max(fromMs, Math.min(toMs, live.nowMs)),
    orders,
    ...(changeover === null ? {} : { changeover: { ...changeover, text: picture.changeover } }),
    ...(plan.last === null ? {} : { lastLoad: { atMs: plan.last.inByMs, text: picture.lastLoad } }),
  }
}

/** Shelves in use, and any other that a load is on. */
function shelvesOf({ shop, plan, running }: DayParts): readonly ShelfId[] {
  const own = inUse(shop.shelves).map(({ id }) => id)
  const others = [...plan.loads, ...running.map(({ load }) => load)].map(({ shelfId }) => shelfId)
  return [...new Set([...own, ...others])]
}

function LaneNames(parts: DayParts & { readonly fontPx: number; readonly most: number }) {
  const { say, words, shop, fontPx, most } = parts
  const size = laneSizes(fontPx)
  return (
    <div class="plan-lanes" aria-hidden="true">
      <span style={{ height: `${size.kettle}px` }}>{say.picture.kettle}</span>
      <span style={{ height: `${size.boards}px` }}>
        {say.picture.boards}
        <br />
        <span class="desk-quiet">{say.picture.boardsOf(most, shop.boards.count)}</span>
      </span>
      <span class="plan-lanes-gap" />
      {shelvesOf(parts).map((id) => (
        <span key={id} style={{ height: `${size.shelf}px` }}>
          {words.line.shelf(id)}
        </span>
      ))}
    </div>
  )
}

/** What each form in the picture means, as far as it is in it. */
function Legend({ say, shown, running, wishes }: DayParts) {
  const { key } = say.picture
  const kinds = [
    ...(shown.some(({ load }) => !load.isPinned) ? (['advised'] as const) : []),
    ...(shown.some(({ load }) => load.isPinned) ? (['pinned'] as const) : []),
    ...(running.length > 0 ? (['running'] as const) : []),
    'firstSide' as const,
    'cooling' as const,
    ...(shown.some(({ load }) => load.contacts.length > 0) ? (['contact'] as const) : []),
    ...(wishes.forbids.some(({ varietyId }) => varietyId === null) ? (['forbidden'] as const) : []),
  ]
  return (
    <ul class="plan-key">
      {kinds.map((kind) => (
        <li key={kind}>
          <span class={`plan-key-${kind}`} /> {key[kind]}
        </li>
      ))}
    </ul>
  )
}
