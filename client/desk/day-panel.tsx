import type { Account } from '../../shared-core/day/state.ts'
import type { AccountColumn } from '../words/desk.ts'
import type { AccountRow } from './account-view.ts'
import { accountRows, accountTotal, carriedOn, gaps, signed } from './account-view.ts'
import type { DeskParts } from './desk-screen.tsx'
import { Cell } from './panel.tsx'

/** The day: open or close it, and where every piece is. */
export function DayPanel(parts: DeskParts) {
  const { store, state, words } = parts
  const { day } = words.desk
  const openDay = state.day
  return (
    <>
      <div class="desk-line">
        <p>{state.day === null ? day.notOpen : day.open(state.day.label, state.day.openedAtMs)}</p>
        {openDay === null ? (
          <button type="button" class="desk-strong" onClick={() => store.send({ type: 'openDay' })}>
            {day.openIt}
          </button>
        ) : (
          <button
            type="button"
            class="desk-strong"
            onClick={() => store.send({ type: 'closeDay', label: openDay.label })}
          >
            {day.closeIt}
          </button>
        )}
      </div>
      {state.day !== null && <p class="desk-quiet">{day.closeHint}</p>}
      <DayAccount {...parts} />
      <LastDay {...parts} />
    </>
  )
}

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

function DayAccount({ state, words }: DeskParts) {
  const { account, day } = words.desk
  const rows = accountRows(state)
  const open = gaps(state)
  return (
    <>
      <table class="desk-account">
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
      <p class="desk-quiet">
        {account.rule} {account.unexplainedHint}
      </p>
      {open.length === 0 ? (
        <p class="desk-even">✓ {day.accounted}</p>
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

const CLOSED = [
  'shaped',
  'carriedIn',
  'sold',
  'kitchen',
  'wasted',
  'given',
  'dayOld',
  'unexplained',
] as const satisfies readonly (keyof Account)[]

function LastDay({ state, words }: DeskParts) {
  const { account, day } = words.desk
  const { lastDay } = state
  if (lastDay === null) return <p class="desk-quiet">{day.neverClosed}</p>
  return (
    <div class="desk-last-day">
      <h3>{day.last(lastDay.label, lastDay.closedAtMs)}</h3>
      <table class="desk-account">
        <thead>
          <tr>
            <th>{account.columns.dough}</th>
            {CLOSED.map((column) => (
              <th key={column} class="desk-number">
                {account.columns[column]}
              </th>
            ))}
            <th class="desk-number">{account.columns.carriedOn}</th>
          </tr>
        </thead>
        <tbody>
          {lastDay.account.map(({ doughId, account: booked }) => (
            <tr key={doughId}>
              <th>{words.names.dough(doughId)}</th>
              {CLOSED.map((column) => (
                <Cell key={column} value={column === 'unexplained' ? signed(booked.unexplained) : booked[column]} />
              ))}
              <Cell value={carriedOn(booked)} />
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {day.leftAtClose}: {lastDay.left.length === 0 ? day.nothingLeft : words.line.contents(lastDay.left)}
      </p>
    </div>
  )
}
