import { doughAccount } from '../../../shared-core/day/dough-account.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { RoomParts } from './room.ts'

const COLUMNS = ['mixed', 'shaped', 'lost', 'spoilt', 'unexplained', 'left'] as const

/** From the mixer on every gram is accounted for: the mixes that stand in the state, each as a whole. */
export function DoughAccountPanel({ state, say, room }: RoomParts) {
  const rows = doughAccount(state.mixes.values())
  const { account } = say
  return (
    <Panel part="dough-account" title={account.title} isWide>
      {rows.length === 0 ? (
        <p>{account.none}</p>
      ) : (
        <>
          <p class="desk-quiet">{account.rule}</p>
          <Sideways name={account.title}>
            <table>
              <thead>
                <tr>
                  <th>{account.columns.formula}</th>
                  {COLUMNS.map((column) => (
                    <th key={column} class="desk-number">
                      {account.columns[column]}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.formulaId}>
                    <th scope="row">{account.head(row.name, row.mixes)}</th>
                    {COLUMNS.map((column) => (
                      <td
                        key={column}
                        class={`desk-number${column === 'unexplained' && row.unexplained !== 0 ? ' desk-trouble' : ''}`}
                      >
                        {row[column] === 0 ? '' : signed(column, room.weight(row[column]), row[column])}
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </Sideways>
        </>
      )}
    </Panel>
  )
}

/** Only what is unexplained goes both ways. */
function signed(column: (typeof COLUMNS)[number], text: string, milligrams: number): string {
  return column === 'unexplained' && milligrams > 0 ? `+${text}` : text
}
