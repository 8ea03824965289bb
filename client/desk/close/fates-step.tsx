import { PiecesField } from '../pieces-field.tsx'
import type { ClosingParts } from './closing.tsx'
import type { FateRow, Fates } from './fates-view.ts'
import { allTo, fateActs, fateOf, fateRows, totalFates, withFate } from './fates-view.ts'

interface FatesStepProps extends ClosingParts {
  readonly fates: Fates
  readonly onFates: (fates: Fates) => void
}

/** What is left by variety: given away, wasted; the rest stays as day-old. */
export function FatesStep({ store, close, say, fates, onFates }: FatesStepProps) {
  const { fates: sayFates } = say
  const rows = fateRows(close.left)
  if (rows.length === 0) return <p class="desk-quiet">{sayFates.nothing}</p>
  const { given, wasted } = totalFates(rows, fates)
  const book = () => {
    for (const act of fateActs(rows, fates)) if (store.send(act) === null) return
    onFates(new Map())
  }
  return (
    <>
      <p class="desk-quiet">{sayFates.hint}</p>
      <div class="desk-line">
        <button type="button" onClick={() => onFates(allTo(rows, 'given'))}>
          {sayFates.allGiven}
        </button>
        <button type="button" onClick={() => onFates(allTo(rows, 'wasted'))}>
          {sayFates.allWasted}
        </button>
        <button type="button" onClick={() => onFates(allTo(rows, null))}>
          {sayFates.allStay}
        </button>
      </div>
      <FatesTable rows={rows} fates={fates} say={say} onChange={onFates} />
      <button type="button" class="desk-strong" disabled={given + wasted === 0} onClick={book}>
        {given + wasted === 0 ? sayFates.nothingToBook : sayFates.book(given, wasted)}
      </button>
    </>
  )
}

interface FatesTableProps {
  readonly rows: readonly FateRow[]
  readonly fates: Fates
  readonly say: ClosingParts['say']
  readonly onChange: (fates: Fates) => void
}

function FatesTable({ rows, fates, say, onChange }: FatesTableProps) {
  const { columns } = say.fates
  return (
    <table class="desk-fates">
      <thead>
        <tr>
          <th>{columns.variety}</th>
          <th class="desk-number">{columns.left}</th>
          <th>{columns.given}</th>
          <th>{columns.wasted}</th>
          <th class="desk-number">{columns.dayOld}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <FateLine key={row.key} row={row} fates={fates} say={say} onChange={onChange} />
        ))}
      </tbody>
    </table>
  )
}

function FateLine({ row, fates, say, onChange }: Omit<FatesTableProps, 'rows'> & { readonly row: FateRow }) {
  const { given, wasted } = fateOf(row, fates)
  const name = row.isDayOld ? say.fates.earlier(row.name) : row.name
  const field = (label: string, value: number, fate: 'given' | 'wasted') => (
    <PiecesField
      label={label}
      value={value}
      most={row.pieces}
      lessName={(step) => say.pieces.less(label, step)}
      moreName={(step) => say.pieces.more(label, step)}
      onChange={(pieces) => onChange(withFate(row, fates, { [fate]: pieces ?? 0 }))}
    />
  )
  return (
    <tr>
      <th>{name}</th>
      <td class="desk-number" data-column={say.fates.columns.left}>
        {row.pieces}
      </td>
      <td data-column={say.fates.columns.given}>{field(say.fates.given(name), given, 'given')}</td>
      <td data-column={say.fates.columns.wasted}>{field(say.fates.wasted(name), wasted, 'wasted')}</td>
      <td class="desk-number" data-column={say.fates.columns.dayOld}>
        {row.pieces - given - wasted}
      </td>
    </tr>
  )
}
