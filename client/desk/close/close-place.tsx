import '../sheet/sheet.css'
import './close.css'
import { useMemo } from 'preact/hooks'
import { closeNow } from '../../../shared-core/day/close.ts'
import type { DayFigures } from '../../../shared-core/day/figures.ts'
import { notesWaiting } from '../../../shared-core/day/notes.ts'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import { closeWords } from '../../words/desk-close.ts'
import { daySheetWords } from '../../words/desk-day-sheet.ts'
import type { DeskParts } from '../desk-screen.tsx'
import type { Got } from '../get-json.ts'
import { reportOfClosed, reportOfOpen } from '../sheet/day-report.ts'
import { DaySheet } from '../sheet/day-sheet.tsx'
import { useGot } from '../use-got.ts'
import { Closed } from './closed.tsx'
import { Closing } from './closing.tsx'

/** A row of taps is followed by one look at the figures. */
const SETTLED_MS = 700

export interface FiguresAnswer {
  readonly figures: DayFigures | null
}

/** The close of a day: its work from top to bottom, or, once it is closed, what it came to. */
export function ClosePlace(parts: DeskParts) {
  const { live, state, shop, words } = parts
  const say = useMemo(() => closeWords(words), [words])
  const sheet = useMemo(() => daySheetWords(words), [words])
  const label = state.day === null ? (state.lastDay?.label ?? null) : 'today'
  const address = label === null ? null : `/api/v1/days/${label}/figures`
  const got = useGot<FiguresAnswer>(address, state.seq, SETTLED_MS)
  const figures = got.kind === 'got' ? got.value.figures : null
  const notes = notesWaiting(state)
  const ruler = live.shopClock === null ? null : rulerNow(state, live.nowMs, live.shopClock)
  const close = closeNow(state, live.nowMs, ruler)
  const report =
    state.day === null
      ? state.lastDay && reportOfClosed(state.lastDay, figures, notes)
      : reportOfOpen(state, figures, notes)
  if (report === null) return <p>{say.neverOne}</p>
  return (
    <>
      <div class="desk-noprint">
        {close === null ? (
          <Closed {...parts} report={report} got={got} say={say} sheet={sheet} />
        ) : (
          <Closing {...parts} close={close} report={report} got={got} say={say} sheet={sheet} />
        )}
      </div>
      <DaySheet report={report} shopName={shop.profile.name} words={words} say={sheet} />
    </>
  )
}

export type GotFigures = Got<FiguresAnswer>
