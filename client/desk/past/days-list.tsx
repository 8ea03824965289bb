import { useEffect, useMemo, useState } from 'preact/hooks'
import type { DeskWords } from '../../words/desk.ts'
import type { PastWords } from '../../words/desk-past.ts'
import { pastWords } from '../../words/desk-past.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { Sideways } from '../sideways.tsx'
import { useGot } from '../use-got.ts'
import type { DayListed } from './day-record.ts'
import { daySeries, dayTexts } from './days-view.ts'
import { Plot } from './plot.tsx'

/** So many days at once: a month with what came before it. */
const A_PAGE = 40

/** All days with their figures, newest first, and small drawings of how they went. */
export function DaysList({ state, words }: PlaceParts) {
  const say = useMemo(() => pastWords(words), [words])
  const [before, setBefore] = useState<number | null>(null)
  const [earlier, setEarlier] = useState<readonly DayListed[]>([])
  // A close or a reopening makes another list; each act does not.
  const version = `${state.day?.openedAtMs} ${state.lastDay?.closedAtMs}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: another list begins anew, or a day would fall between its pages.
  useEffect(() => {
    setBefore(null)
    setEarlier([])
  }, [version])
  const newest = useGot<readonly DayListed[]>(`/api/v1/days?limit=${A_PAGE}`, version)
  const more = useGot<readonly DayListed[]>(before === null ? null : `/api/v1/days?limit=${A_PAGE}&before=${before}`)
  const got = before !== null && more.kind === 'got' ? more.value : null
  useEffect(() => {
    if (got !== null) setEarlier((so) => [...so, ...got])
  }, [got])
  if (newest.kind !== 'got') {
    const text = newest.kind === 'no-contact' ? say.noContact : newest.kind === 'not-yet' ? say.notReady : say.waiting
    return (
      <p class="desk-quiet" role="status">
        {text}
      </p>
    )
  }
  const days = [...newest.value, ...earlier]
  if (days.length === 0) return <p>{say.none}</p>
  const last = days[days.length - 1]
  const hasMore = got === null ? newest.value.length === A_PAGE : got.length === A_PAGE
  return (
    <>
      <Plots days={days} say={say} words={words} />
      <Panel part="days" title={words.desk.places.past}>
        <Table days={days} say={say} words={words} />
        {hasMore && last !== undefined && (
          <button type="button" onClick={() => setBefore(last.openedAtMs)}>
            {say.older}
          </button>
        )}
      </Panel>
    </>
  )
}

interface ListProps {
  readonly days: readonly DayListed[]
  readonly say: PastWords
  readonly words: DeskWords
}

/** Two days make no line worth drawing. */
const PLOT_DAYS_MIN = 3

function Plots({ days, say, words }: ListProps) {
  const series = daySeries(days)
  if (days.length < PLOT_DAYS_MIN) return null
  return (
    <div class="desk-plots">
      {series.map(({ plot, values }) => (
        <Plot
          key={plot}
          title={say.plots[plot]}
          values={values}
          spoken={say.plotSpoken(
            say.plots[plot],
            values.map((value) => (value === null ? say.notKnown : String(value))),
          )}
          first={words.times.date(days[days.length - 1]?.label ?? '')}
          last={words.times.date(days[0]?.label ?? '')}
        />
      ))}
    </div>
  )
}

function Table({ days, say, words }: ListProps) {
  const { columns } = say
  return (
    <Sideways name={words.desk.places.past}>
      <table class="desk-days">
        <thead>
          <tr>
            <th>{columns.day}</th>
            <th class="desk-number">{columns.missed}</th>
            <th class="desk-number">{columns.left}</th>
            <th class="desk-number">{columns.onTime}</th>
            <th class="desk-number">{columns.dozens}</th>
            <th class="desk-number">{columns.unexplained}</th>
          </tr>
        </thead>
        <tbody>
          {days.map((day) => {
            const texts = dayTexts(day, say)
            return (
              <tr key={day.openedAtMs}>
                <th>
                  <a href={addressOf('past', `${day.label}/${day.openedAtMs}`)} aria-label={say.look(day.label)}>
                    {words.times.date(day.label)}
                  </a>
                  {day.closedAtMs === null && <span class="desk-quiet"> ({say.open})</span>}
                </th>
                {texts.map((text, place) => (
                  // A day's figures are told by their place.
                  <td key={columns[COLUMN_ORDER[place] ?? 'day']} class="desk-number">
                    {text}
                  </td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </Sideways>
  )
}

const COLUMN_ORDER = ['missed', 'left', 'onTime', 'dozens', 'unexplained'] as const
