import type { Preview, PreviewRow } from '../../../shared-core/live/sales-import.ts'
import { minuteText } from '../../live/clock-text.ts'
import { Cell } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { SalesParts } from './sales-place.tsx'

interface UnderstoodRowsProps extends SalesParts {
  readonly preview: Preview
}

/** The first rows as they would be taken; one that cannot be read says why. */
export function UnderstoodRows(props: UnderstoodRowsProps) {
  const { preview, say } = props
  const { rows } = say.mapping
  if (preview.rows.length === 0) return <p class="desk-trouble">{say.mapping.noRows}</p>
  return (
    <>
      <h3>{say.mapping.understood}</h3>
      <Sideways name={say.mapping.understood}>
        <table class="sales-rows">
          <thead>
            <tr>
              <th scope="col" class="desk-number">
                {rows.line}
              </th>
              <th scope="col">{rows.day}</th>
              <th scope="col">{rows.time}</th>
              <th scope="col">{rows.item}</th>
              <th scope="col" class="desk-number">
                {rows.pieces}
              </th>
              <th scope="col">{rows.purchase}</th>
            </tr>
          </thead>
          <tbody>
            {preview.rows.map((row) => (
              <Row key={row.line} {...props} row={row} />
            ))}
          </tbody>
        </table>
      </Sideways>
    </>
  )
}

const NOON_MINUTE = 720
const DAY_MINUTES = 1_440

function Row({ row, say, words, shop }: UnderstoodRowsProps & { readonly row: PreviewRow }) {
  const { line, read, fault } = row
  if (read === null)
    return (
      <tr>
        <Cell value={line} />
        <td colSpan={5}>
          <code>{row.cells.join(' | ')}</code>
          <span class="desk-trouble sales-fault">{fault === null ? '' : say.fault(fault)}</span>
        </td>
      </tr>
    )
  const { clock } = shop.profile
  const { am, pm } = words.desk.halfDays
  const half = read.minute === null || clock === 24 ? '' : read.minute % DAY_MINUTES < NOON_MINUTE ? ` ${am}` : ` ${pm}`
  return (
    <tr>
      <Cell value={line} />
      <td>
        {words.times.date(read.date)}, {read.date.slice(0, 4)}
      </td>
      <td>{read.minute === null ? '–' : `${minuteText(read.minute, clock)}${half}`}</td>
      <td>{read.item}</td>
      <Cell value={read.pieces} />
      <td>{read.voided ? say.mapping.voided : read.transaction}</td>
    </tr>
  )
}
