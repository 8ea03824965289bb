import '../sheet/sheet.css'
import './past.css'
import { useMemo } from 'preact/hooks'
import { pastWords } from '../../words/desk-past.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { addressOf } from '../place.ts'
import { useGot } from '../use-got.ts'
import type { DayRecordJson } from './day-record.ts'
import { playedDay } from './day-record.ts'
import { DaysList } from './days-list.tsx'
import { ReplayPage } from './replay-page.tsx'

/** Days that are past: all of them in a list, or the one that the address names. */
export function PastPlace(parts: PlaceParts) {
  return parts.within === '' ? <DaysList {...parts} /> : <OneDay key={parts.within} {...parts} />
}

/** @param within "2026-11-24", or "2026-11-24/" with the instant of its opening where a date has two days */
function OneDay(parts: PlaceParts) {
  const { words, within } = parts
  const say = useMemo(() => pastWords(words), [words])
  const [label = '', opened] = within.split('/')
  const query = opened !== undefined && /^\d+$/.test(opened) ? `?opened=${opened}` : ''
  const got = useGot<DayRecordJson>(`/api/v1/days/${encodeURIComponent(label)}${query}`)
  const record = got.kind === 'got' ? got.value : null
  const day = useMemo(() => (record === null ? null : playedDay(record)), [record])
  return (
    <>
      <p class="desk-noprint">
        <a href={addressOf('past')}>← {say.replay.back}</a>
      </p>
      {day !== null ? (
        <ReplayPage {...parts} day={day} />
      ) : (
        <p class={got.kind === 'waiting' ? 'desk-quiet' : 'desk-trouble'} role="status">
          {record !== null ? say.replay.otherForm : WHY[got.kind](say)}
        </p>
      )}
    </>
  )
}

type Say = ReturnType<typeof pastWords>

const WHY = {
  waiting: (say: Say) => say.replay.loading,
  got: (say: Say) => say.replay.otherForm,
  unknown: (say: Say) => say.replay.unknown,
  'not-yet': (say: Say) => say.notReady,
  'no-contact': (say: Say) => say.noContact,
}
