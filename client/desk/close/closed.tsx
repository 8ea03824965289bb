import type { CloseWords } from '../../words/desk-close.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { DayFiles } from '../sheet/day-files.tsx'
import type { DayReport } from '../sheet/day-report.ts'
import { ReportAccount } from '../sheet/report-account.tsx'
import { Notes } from '../today/notes-panel.tsx'
import type { GotFigures } from './close-place.tsx'
import { FiguresPart } from './figures-part.tsx'

interface ClosedParts extends DeskParts {
  readonly report: DayReport
  readonly got: GotFigures
  readonly say: CloseWords
  readonly sheet: DaySheetWords
}

/** A day that is closed: what it came to, on paper and as files, and the way back. */
export function Closed(parts: ClosedParts) {
  const { store, state, words, report, got, say, sheet } = parts
  const { closed } = say
  const { label, closedAtMs, left } = report
  const canReopen = state.lastDay?.before != null
  return (
    <>
      <Panel part="closed" title={closed.title(label)}>
        {closedAtMs !== null && <p>{closed.at(closedAtMs)}</p>}
        <DayFiles label={label} openedAtMs={report.openedAtMs} say={sheet} />
        <div class="desk-line">
          {canReopen && (
            <button type="button" onClick={() => store.send({ type: 'reopenDay', label })}>
              {closed.reopen}
            </button>
          )}
          <span class="desk-quiet">{canReopen ? closed.reopenHint : closed.noReopen}</span>
        </div>
        <div class="desk-line">
          <a class="desk-button" href={addressOf('past', `${label}/${report.openedAtMs}`)}>
            {closed.replay}
          </a>
          <button type="button" onClick={() => store.send({ type: 'openDay' })}>
            {closed.openNext}
          </button>
        </div>
      </Panel>
      <Panel part="figures" title={sheet.figures.title}>
        <FiguresPart got={got} words={words} sheet={sheet} />
      </Panel>
      <Panel part="account" title={sheet.account}>
        <ReportAccount report={report} words={words} say={sheet} />
        <p>
          {sheet.left}: {left === null || left.length === 0 ? sheet.nothingLeft : words.line.contents(left)}
        </p>
        <p class="desk-quiet">{say.account.explained}</p>
      </Panel>
      <Panel part="notes" title={say.steps.notes}>
        <Notes {...parts} />
      </Panel>
    </>
  )
}
