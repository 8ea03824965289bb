import { useRef, useState } from 'preact/hooks'
import { CENTS_MAX, SHOW_LEAST_MAX, USUAL_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { readNumber } from './number-field.tsx'

interface CellProps {
  readonly label: string
  readonly value: number | null
  readonly max: number
  readonly decimals: number
  readonly isOptional: boolean
  readonly say: SetUpSentences
  readonly onChange: (value: number | null) => void
}

/** A number in a table, typed down its column: Enter goes to the cell below. Empty leaves it unsaid where that may be. */
function NumberCell({ label, value, max, decimals, isOptional, say, onChange }: CellProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const before = useRef(value)
  const read = (text: string) => readNumber(text, { min: 0, max, decimals })
  const isEmpty = typed !== null && typed.trim() === ''
  const isWrong = typed !== null && !(isEmpty && isOptional) && read(typed) === null
  return (
    <td>
      <input
        type="text"
        inputMode={decimals === 0 ? 'numeric' : 'decimal'}
        autoComplete="off"
        aria-label={label}
        aria-invalid={isWrong}
        title={isWrong ? say.form.range('0', String(max)) : undefined}
        value={typed ?? (value === null ? '' : value.toFixed(decimals))}
        placeholder={isOptional ? '–' : undefined}
        onFocus={(event) => {
          before.current = value
          event.currentTarget.select()
        }}
        onInput={(event) => {
          const text = event.currentTarget.value
          setTyped(text)
          const next = text.trim() === '' && isOptional ? null : (read(text) ?? before.current)
          if (next !== value) onChange(next)
        }}
        onBlur={() => setTyped(null)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault()
          cellBelow(event.currentTarget)?.focus()
        }}
      />
      {isWrong && <span class="setup-rule">{say.form.range('0', String(max))}</span>}
    </td>
  )
}

export interface CentsCellProps extends Pick<CellProps, 'label' | 'isOptional' | 'say'> {
  readonly cents: number | null
  /** Gets whole cents. */
  readonly onChange: (cents: number | null) => void
}

/** An amount of money. */
export function CentsCell({ cents, onChange, ...rest }: CentsCellProps) {
  return (
    <NumberCell
      {...rest}
      value={cents === null ? null : cents / 100}
      max={CENTS_MAX / 100}
      decimals={2}
      onChange={(amount) => onChange(amount === null ? null : Math.round(amount * 100))}
    />
  )
}

/** Pieces of a usual day, or nobody has said. */
export function UsualCell(props: Pick<CellProps, 'label' | 'value' | 'say' | 'onChange'>) {
  return <NumberCell {...props} max={USUAL_MAX} decimals={0} isOptional />
}

/** Pieces that should be on show; none where there is no such wish. */
export function ShowCell(props: Pick<CellProps, 'label' | 'value' | 'say' | 'onChange'>) {
  return <NumberCell {...props} max={SHOW_LEAST_MAX} decimals={0} isOptional={false} />
}

/** The field of the same column in the next row. */
function cellBelow(input: HTMLInputElement): HTMLInputElement | null {
  const cell = input.closest('td')
  const below = cell?.closest('tr')?.nextElementSibling?.children[cell.cellIndex]
  return below?.querySelector('input') ?? null
}
