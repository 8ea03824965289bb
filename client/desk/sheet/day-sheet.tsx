import type { DeskWords } from '../../words/desk.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import type { DayReport } from './day-report.ts'
import { FiguresList } from './figures-list.tsx'
import { figureTexts } from './figures-view.ts'
import { ReportAccount } from './report-account.tsx'

interface DaySheetProps {
  readonly report: DayReport
  readonly shopName: string
  readonly words: DeskWords
  readonly say: DaySheetWords
}

/** The day on one page of paper: black on white, A4 or Letter. On a screen it is not shown. */
export function DaySheet({ report, shopName, words, say }: DaySheetProps) {
  const { label, openedAtMs, closedAtMs, left, figures, notes } = report
  const soldOut = figures?.missed?.byVariety ?? []
  return (
    <article class="desk-sheet" aria-label={say.title}>
      <header>
        <h1>{shopName}</h1>
        <p>{say.head(label, openedAtMs, closedAtMs)}</p>
      </header>
      {figures !== null && (
        <>
          <h2>{say.figures.title}</h2>
          <FiguresList figures={figureTexts(figures, say, words.names)} />
        </>
      )}
      <h2>{say.account}</h2>
      <ReportAccount report={report} words={words} say={say} />
      {left !== null && (
        <>
          <h2>{say.left}</h2>
          <p>{left.length === 0 ? say.nothingLeft : words.line.contents(left)}</p>
        </>
      )}
      {soldOut.length > 0 && (
        <>
          <h2>{say.soldOut}</h2>
          <ul class="desk-sheet-columns">
            {soldOut.map(({ varietyId, times, goneMs, pieces }) => (
              <li key={varietyId}>{say.soldOutLine(words.names.variety(varietyId), times, goneMs, pieces)}</li>
            ))}
          </ul>
        </>
      )}
      {notes.length > 0 && (
        <>
          <h2>{say.notes}</h2>
          <ul>
            {notes.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        </>
      )}
      <p class="desk-sheet-foot">{say.signed} ______________________</p>
    </article>
  )
}
