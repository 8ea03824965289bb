import type { DeskWords } from '../../words/desk.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import { signedPieces } from '../../words/desk-day-sheet.ts'
import { Sideways } from '../sideways.tsx'
import type { DayReport, ReportRow } from './day-report.ts'

const COLUMNS = ['shaped', 'carriedIn', 'sold', 'kitchen', 'wasted', 'given', 'dayOld', 'unexplained'] as const

interface ReportAccountProps {
  readonly report: Pick<DayReport, 'rows' | 'total'>
  readonly words: DeskWords
  readonly say: DaySheetWords
}

/** Where every piece of the day went, by dough and in total. */
export function ReportAccount({ report, words, say }: ReportAccountProps) {
  const { account } = words.desk
  const { rows, total } = report
  return (
    <Sideways name={say.account}>
      <table class="desk-account-table">
        <thead>
          <tr>
            <th>{account.columns.dough}</th>
            {COLUMNS.map((column) => (
              <th key={column} class="desk-number">
                {account.columns[column]}
              </th>
            ))}
            <th class="desk-number">{say.stillThere}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.doughId}>
              <th>{words.names.dough(row.doughId)}</th>
              <Numbers row={row} />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th>{account.total}</th>
            <Numbers row={total} />
          </tr>
        </tfoot>
      </table>
    </Sideways>
  )
}

function Numbers({ row }: { readonly row: Omit<ReportRow, 'doughId'> }) {
  return (
    <>
      {COLUMNS.map((column) => (
        <td key={column} class="desk-number">
          {column === 'unexplained' ? signedPieces(row.unexplained) : row[column]}
        </td>
      ))}
      <td class="desk-number">{row.stillThere}</td>
    </>
  )
}
