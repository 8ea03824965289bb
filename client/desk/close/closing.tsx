import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { CloseNow } from '../../../shared-core/day/close.ts'
import { byDue } from '../../../shared-core/orders/due-on.ts'
import { ordersOver } from '../../../shared-core/orders/orders-over.ts'
import { toCountAtClose } from '../../../shared-core/stock/close.ts'
import { localDate } from '../../live/clock-text.ts'
import type { CloseStep, CloseWords } from '../../words/desk-close.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { DayFiles } from '../sheet/day-files.tsx'
import type { DayReport } from '../sheet/day-report.ts'
import { ReportAccount } from '../sheet/report-account.tsx'
import { Notes } from '../today/notes-panel.tsx'
import type { GotFigures } from './close-place.tsx'
import { CountStep } from './count-step.tsx'
import { CrewField } from './crew-field.tsx'
import { readCrew } from './crew-view.ts'
import { FatesStep } from './fates-step.tsx'
import type { Fates } from './fates-view.ts'
import { FiguresPart } from './figures-part.tsx'
import { LastStep } from './last-step.tsx'
import { OrdersStep } from './orders-step.tsx'

export interface ClosingParts extends DeskParts {
  readonly close: CloseNow
  readonly report: DayReport
  readonly got: GotFigures
  readonly say: CloseWords
  readonly sheet: DaySheetWords
}

/** The work of a close, in its order; nothing of it must be done before the next. */
export function Closing(parts: ClosingParts) {
  const { live, state, words, close, report, got, say, sheet } = parts
  const [crew, setCrew] = useState('')
  const [fates, setFates] = useState<Fates>(new Map())
  const toCount = toCountAtClose(state, live.nowMs)
  const openOrders = state.day === null ? [] : [...ordersOver(state, state.day, live.nowMs)].sort(byDue)
  // A shop that takes no orders is not asked about them.
  const hasOrders = state.orders.size + state.standing.size > 0
  const isLate = live.shopClock !== null && close.label < localDate(live.shopClock, live.nowMs)
  return (
    <>
      {isLate && (
        <div class="desk-notice" role="status">
          <p>
            <strong>{say.late(close.label)}.</strong> {say.lateHint}
          </p>
        </div>
      )}
      <p class="desk-quiet">{say.lead}</p>
      <ol class="desk-work">
        {(hasOrders || openOrders.length > 0) && (
          <Part step="orders" say={say} isDone={openOrders.length === 0}>
            <OrdersStep {...parts} open={openOrders} />
          </Part>
        )}
        <Part step="count" say={say} isDone={toCount.length === 0}>
          <CountStep {...parts} toCount={toCount} />
        </Part>
        <Part step="fates" say={say}>
          <FatesStep {...parts} fates={fates} onFates={setFates} />
        </Part>
        <Part step="account" say={say}>
          <ReportAccount report={report} words={words} say={sheet} />
          <p>
            {say.account.unexplained}: <strong>{sheet.figures.unexplained.value(report.total.unexplained)}</strong>
            {got.kind === 'got' && got.value.figures !== null && (
              <>
                {' '}
                · {say.account.gaps}: <strong>{got.value.figures.unexplained.absolute}</strong>
              </>
            )}
          </p>
          <p class="desk-quiet">{say.account.explained}</p>
        </Part>
        <Part step="figures" say={say}>
          <FiguresPart got={got} words={words} sheet={sheet} />
        </Part>
        <Part step="crew" say={say} isDone={readCrew(crew).kind === 'minutes'}>
          <CrewField text={crew} onText={setCrew} say={say} />
        </Part>
        <Part step="notes" say={say}>
          <p class="desk-quiet">{say.notes.hint}</p>
          <Notes {...parts} />
        </Part>
        <Part step="close" say={say}>
          <LastStep {...parts} toCount={toCount} crew={readCrew(crew)} fates={fates} />
          <DayFiles label="today" openedAtMs={null} say={sheet} />
        </Part>
      </ol>
    </>
  )
}

interface PartProps {
  readonly step: CloseStep
  readonly say: CloseWords
  readonly isDone?: boolean
  readonly children: ComponentChildren
}

function Part({ step, say, isDone = false, children }: PartProps) {
  const title = say.steps[step]
  return (
    <li class="desk-panel desk-work-part" data-step={step}>
      <section aria-label={title}>
        <h2>
          {title} {isDone && <span class="desk-done-mark">✓</span>}
        </h2>
        {children}
      </section>
    </li>
  )
}
