import { useState } from 'preact/hooks'
import type { Place } from '../../../shared-core/dough/mix.ts'
import { placeNow } from '../../../shared-core/dough/places.ts'
import { Panel } from '../panel.tsx'
import { chartOf } from './chart-view.ts'
import type { RoomParts } from './room.ts'
import { timeOf } from './room-times.ts'
import { readDegrees } from './typed-degrees.ts'

/** Those that clocks follow have a chart; the others serve the water. */
const CHARTED: readonly Place[] = ['room', 'cooler']
const OTHERS: readonly Place[] = ['flour', 'tap']
const BACK_MS = 48 * 3_600_000
const SIZE = { widthPx: 420, heightPx: 90 }

/** Readings of the dough room, typed here or posted, and what the clocks reckon with. */
export function TempsPanel(parts: RoomParts) {
  const { say } = parts
  return (
    <Panel part="temps" title={say.running.temps} isWide>
      <p class="desk-quiet">{say.running.tempsHint}</p>
      <div class="dough-temps">
        {CHARTED.map((place) => (
          <section key={place}>
            <PlaceHead {...parts} place={place} />
            <PlaceChart {...parts} place={place} />
          </section>
        ))}
        {OTHERS.map((place) => (
          <section key={place}>
            <PlaceHead {...parts} place={place} />
          </section>
        ))}
      </div>
    </Panel>
  )
}

interface PlaceProps extends RoomParts {
  readonly place: Place
}

function PlaceHead({ place, ...parts }: PlaceProps) {
  const { store, state, shop, words, say, room } = parts
  const { nowMs } = parts.live
  const [text, setText] = useState('')
  const unit = shop.profile.temperature
  const degrees = readDegrees(text, unit)
  const readings = state.readings.get(place)
  const last = readings?.points[readings.points.length - 1]
  const now = placeNow(state, shop, place, nowMs)
  return (
    <>
      <h3>{say.running.place[place]}</h3>
      <p class="dough-big">{now === null ? '–' : room.degrees(now)}</p>
      <p class="desk-quiet">
        {last !== undefined
          ? say.running.readOn(room.degrees(last.milliCelsius), timeOf(last.atMs, parts))
          : now === null
            ? words.desk.today.oven.none
            : say.running.assumed(room.degrees(now))}
      </p>
      <form
        class="desk-line"
        onSubmit={(event) => {
          event.preventDefault()
          if (degrees !== null && store.send({ type: 'readPlace', place, read: degrees }) !== null) setText('')
        }}
      >
        <input
          class="desk-short"
          inputMode="decimal"
          aria-label={say.running.readingOf(say.running.place[place])}
          placeholder={`°${unit}`}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <button
          type="submit"
          disabled={degrees === null}
          aria-label={`${say.running.place[place]}: ${say.running.record}`}
        >
          {say.running.record}
        </button>
      </form>
    </>
  )
}

function PlaceChart({ live, state, shop, say, room, place }: PlaceProps) {
  const now = placeNow(state, shop, place, live.nowMs)
  const points = state.readings.get(place)?.points ?? []
  if (now === null || points.length < 2) return null
  const chart = chartOf(points, now, { fromMs: room.minuteMs - BACK_MS, toMs: room.minuteMs, ...SIZE })
  const [lowest, highest] = [room.degrees(chart.lowestMilliCelsius), room.degrees(chart.highestMilliCelsius)]
  return (
    <figure class="dough-chart">
      <svg
        role="img"
        aria-label={say.running.chart(say.running.place[place], lowest, highest)}
        viewBox={`-6 -6 ${SIZE.widthPx + 12} ${SIZE.heightPx + 12}`}
        width="100%"
      >
        <line class="dough-chart-now" x1={0} x2={SIZE.widthPx} y1={chart.nowY} y2={chart.nowY} />
        <polyline class="dough-chart-line" points={chart.points} />
        {chart.dots.map(({ x, y }) => (
          <circle key={x} class="dough-chart-dot" cx={x} cy={y} r={3} />
        ))}
      </svg>
      <figcaption class="desk-quiet desk-small dough-chart-foot">
        <span>{say.running.hoursBack}</span>
        <span>
          {lowest} … {highest}
        </span>
        <span>{say.running.now}</span>
      </figcaption>
      <p class="desk-quiet desk-small">{say.running.reckons(room.degrees(now))}</p>
    </figure>
  )
}
