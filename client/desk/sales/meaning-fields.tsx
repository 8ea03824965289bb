import type { VarietyId } from '../../../shared-core/ids.ts'
import type { PackLine } from '../../../shared-core/live/sales-import.ts'
import type { Variety } from '../../../shared-core/shop/shop.ts'
import type { SalesWords } from '../../words/desk-sales.ts'
import { PIECES_MAX } from './meaning-edit.ts'

interface PiecesFieldProps {
  readonly pieces: number
  readonly label?: string
  readonly say: SalesWords
  readonly onChange: (pieces: number) => void
}

export function PiecesField({ pieces, label, say, onChange }: PiecesFieldProps) {
  return (
    <label class="desk-field">
      {label ?? say.names.pieces}
      <input
        type="number"
        min={1}
        max={PIECES_MAX}
        value={Number.isNaN(pieces) ? '' : pieces}
        onInput={(event) => onChange(event.currentTarget.valueAsNumber)}
      />
    </label>
  )
}

interface OfVarieties {
  readonly varieties: readonly Variety[]
  readonly say: SalesWords
}

interface VarietyFieldProps extends OfVarieties {
  readonly id: VarietyId | null
  readonly label?: string
  /** Whether it may be said that it does not say which. */
  readonly canBeAny?: boolean
  readonly onChange: (id: VarietyId | null) => void
}

export function VarietyField({ id, label, canBeAny = false, varieties, say, onChange }: VarietyFieldProps) {
  return (
    <label class="desk-field">
      {label ?? say.names.variety}
      <select
        value={id ?? ''}
        onChange={(event) => onChange(varieties.find((one) => one.id === event.currentTarget.value)?.id ?? null)}
      >
        {canBeAny && <option value="">{say.names.anyVariety}</option>}
        {id !== null && varieties.every((one) => one.id !== id) && <option value={id}>{id}</option>}
        {varieties.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
    </label>
  )
}

interface PackFieldProps extends OfVarieties {
  readonly lines: readonly PackLine[]
  readonly onChange: (lines: readonly PackLine[]) => void
}

/** So many of each. */
export function PackField({ lines, onChange, ...of }: PackFieldProps) {
  const { say, varieties } = of
  const put = (at: number, line: PackLine) => onChange(lines.map((one, index) => (index === at ? line : one)))
  const free = varieties.find(({ id }) => lines.every((line) => line.varietyId !== id))
  return (
    <div class="sales-pack">
      {lines.map((line, at) => (
        <div key={line.varietyId} class="desk-form">
          <PiecesField say={say} pieces={line.pieces} onChange={(pieces) => put(at, { ...line, pieces })} />
          <VarietyField
            {...of}
            id={line.varietyId}
            onChange={(id) => {
              if (id !== null && lines.every((one) => one.varietyId !== id)) put(at, { ...line, varietyId: id })
            }}
          />
          {lines.length > 1 && (
            <button
              type="button"
              aria-label={say.names.removeLine(varieties.find(({ id }) => id === line.varietyId)?.name ?? '')}
              onClick={() => onChange(lines.filter((one) => one !== line))}
            >
              ×
            </button>
          )}
        </div>
      ))}
      {free !== undefined && (
        <button type="button" onClick={() => onChange([...lines, { varietyId: free.id, pieces: 1 }])}>
          + {say.names.addLine}
        </button>
      )}
    </div>
  )
}

interface AmongFieldProps extends OfVarieties {
  readonly among: readonly VarietyId[] | null
  readonly onChange: (among: readonly VarietyId[] | null) => void
}

/** Which varieties it can be; none chosen: any. */
export function AmongField({ among, varieties, say, onChange }: AmongFieldProps) {
  const toggle = (id: VarietyId) => {
    const has = among?.includes(id) === true
    const next = varieties.map((one) => one.id).filter((one) => (one === id ? !has : among?.includes(one) === true))
    onChange(next.length === 0 ? null : next)
  }
  return (
    <details class="sales-among" open={among !== null}>
      <summary>{among === null ? say.names.amongAll : say.names.among}</summary>
      {varieties.map(({ id, name }) => (
        <label key={id} class="desk-line">
          <input type="checkbox" checked={among?.includes(id) === true} onChange={() => toggle(id)} />
          {name}
        </label>
      ))}
    </details>
  )
}
