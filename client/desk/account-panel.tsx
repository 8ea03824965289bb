import type { AccountColumn } from '../words/desk.ts'
import type { AccountRow } from './account-view.ts'
import { accountRows, accountTotal, gaps, signed } from './account-view.ts'
import type { DeskParts } from './desk-screen.tsx'
import { Sideways } from './sideways.tsx'

/** Come in | is somewhere | went. */
const COLUMNS = [
  'shaped',
  'carriedIn',
  'onTheLine',
  'forSale',
  'kept',
  'sold',
  'kitchen',
  'wasted',
  'given',
  'dayOld',
  'unexplained',
] as const satisfies readonly AccountColumn[]

/** Where every piece of the day is. */
export function AccountPanel({ state, words }: DeskParts) {
  const { account, day } = words.desk
  const rows = accountRows(state)
  const open = gaps(state)
  return (
    <>
      <Sideways name={account.title}>
        <table class="desk-account-table">
          <thead>
            <tr>
              <th>{account.columns.dough}</th>
              {COLUMNS.map((column) => (
                <th key={column} class={`desk-number desk-column-${column}`}>
                  {account.columns[column]}
                </th>
              ))}
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
          {rows.length > 1 && (
            <tfoot>
              <tr>
                <th>{account.total}</th>
                <Numbers row={accountTotal(rows)} />
              </tr>
            </tfoot>
          )}
        </table>
      </Sideways>
      <p class="desk-quiet">{`${account.rule} ${account.unexplainedHint}`}</p>
      {open.length === 0 ? (
        <p class="desk-even">{`✓ ${day.accounted}`}</p>
      ) : (
        open.map(({ doughId, pieces }) => (
          <p key={doughId} class="desk-trouble">
            {day.gap(words.names.dough(doughId), pieces)}
          </p>
        ))
      )}
    </>
  )
}

function Numbers({ row }: { readonly row: Omit<AccountRow, 'doughId'> }) {
  return (
    <>
      {COLUMNS.map((column) => (
        <td key={column} class={`desk-number desk-column-${column}`}>
          {column === 'unexplained' ? signed(row.unexplained) : row[column]}
        </td>
      ))}
    </>
  )
}
