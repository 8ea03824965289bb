import './coming.css'
import { useMemo, useState } from 'preact/hooks'
import { dateAfter, isDate } from '../../../shared-core/day/label.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { ComingDay } from '../../../shared-core/plan/coming-day.ts'
import { comingWords } from '../../words/desk-coming.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { useRoom } from '../dough/room.ts'
import { addressOf } from '../place.ts'
import { useGot } from '../use-got.ts'
import { BakePanel } from './bake-panel.tsx'
import type { Yours } from './coming-view.ts'
import { DoughPanel } from './dough-panel.tsx'
import type { ComingParts } from './parts.ts'

/** Dough is decided one to three days ahead. */
const DAYS_AHEAD = 3
/** Sales come in meanwhile: so often the advice is asked for anew. */
const ANEW_MS = 2 * 60_000

/** How much dough for the days to come, and how many pieces to bake: advised, with why, and taken over in one touch. */
export function ComingPlace({ within, ...parts }: PlaceParts) {
  const { live, shop, state, words } = parts
  const say = useMemo(() => comingWords(words), [words])
  const room = useRoom(live.shopClock, live.nowMs, shop)
  // Kept here, so that what is typed for a day outlives a look at another one.
  const [typed, setTyped] = useState<ReadonlyMap<string, Yours>>(new Map())
  const date = room === null ? null : isDate(within) ? within : dateAfter(room.today, 1)
  const stands = useMemo(() => standsNow(state), [state])
  // What is wanted, ordered and chilled change the advice at once; sales come all day.
  const version = `${Math.floor(live.nowMs / ANEW_MS)} ${state.lastDay?.closedOn ?? ''} ${stands}`
  const got = useGot<ComingDay>(date === null ? null : `/api/v1/coming?date=${date}`, version, 150)
  if (room === null || date === null) return <p class="desk-quiet">{say.waiting}</p>
  const of = { ...parts, say, room, date }
  const dates = Array.from({ length: 1 + DAYS_AHEAD }, (_, n) => dateAfter(room.today, n))
  return (
    <>
      <nav class="desk-pages" aria-label={say.datesName}>
        {[...new Set([...dates, date])].map((one) => (
          <a key={one} href={addressOf('coming', one)} aria-current={one === date ? 'page' : undefined}>
            {words.times.date(one)}
          </a>
        ))}
      </nav>
      {got.kind === 'got' ? (
        <Day
          {...of}
          day={got.value}
          yours={typed.get(date) ?? NOTHING_TYPED}
          onYours={(next) => setTyped(new Map([...typed, [date, next]]))}
        />
      ) : (
        <p class="desk-quiet" role="status">
          {got.kind === 'waiting' ? say.waiting : got.kind === 'no-contact' ? say.noContact : say.notYet}
        </p>
      )}
    </>
  )
}

function standsNow({ wanted, batches, orders, standing }: State): string {
  const stand = [...batches.values()].filter(({ stage }) => stage === 'proof' || stage === 'chill')
  const ordered = [...orders.values()].map(({ dueAtMs, lines }) => [dueAtMs, lines])
  return JSON.stringify([
    [...wanted.values()],
    stand.map(({ doughId, pieces }) => [doughId, pieces]),
    ordered,
    [...standing.values()],
  ])
}

const NOTHING_TYPED: Yours = new Map()

function Day(props: ComingParts) {
  const { day, say, words, date, room } = props
  const { today } = room
  const unknown = day.doughs.filter(({ basis }) => basis === 'nothing')
  if (day.isClosed) return <p>{say.closed(words.times.date(date))}</p>
  if (day.doughs.length === 0) return <p>{say.noDoughs}</p>
  return (
    <>
      {unknown.length > 0 && (
        <p class="desk-notice">
          <span>{say.unknownOf(unknown.map(({ doughId }) => words.names.dough(doughId)))}</span>{' '}
          <a href={addressOf('setUp', 'usual')}>{say.toUsual}</a>{' '}
          <a href={addressOf('salesIn')}>{words.desk.places.salesIn}</a>
        </p>
      )}
      {day.doughs.every(({ basis }) => basis === 'guess') && (
        <p class="desk-notice">
          <span>{say.onlyGuesses}</span> <a href={addressOf('setUp')}>{words.desk.places.setUp}</a>{' '}
          <a href={addressOf('salesIn')}>{words.desk.places.salesIn}</a>
        </p>
      )}
      {/* Today's dough is made; which pieces are baked of it is decided today. */}
      {date > today && <DoughPanel {...props} />}
      <BakePanel {...props} />
      {date <= today && <p class="desk-quiet">{say.legend}</p>}
      <p>
        <a href={addressOf('orders', date)}>{say.toOrders}</a>
      </p>
      <p>
        <a href={addressOf('history', 'trust')}>{say.changedBefore}</a>
      </p>
    </>
  )
}
