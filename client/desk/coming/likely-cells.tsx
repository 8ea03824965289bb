import type { Likely } from '../../../shared-core/plan/coming-day.ts'
import type { ComingWords } from '../../words/desk-coming.ts'

const LIKELY_COLUMNS = ['likely', 'careful', 'plenty'] as const

export function LikelyHeads({ say }: { readonly say: ComingWords }) {
  return (
    <>
      {LIKELY_COLUMNS.map((column) => (
        <th key={column} class="desk-number">
          {say.columns[column]}
        </th>
      ))}
    </>
  )
}

export function LikelyCells({ of, say }: { readonly of: Likely; readonly say: ComingWords }) {
  return (
    <>
      {LIKELY_COLUMNS.map((column) => (
        <td key={column} class="desk-number" data-label={say.columns[column]}>
          {of[column]}
        </td>
      ))}
    </>
  )
}

/** Opens the reasons below a row. */
export function WhyButton(props: {
  readonly name: string
  readonly isOpen: boolean
  readonly say: ComingWords
  readonly onToggle: () => void
}) {
  const { name, isOpen, say, onToggle } = props
  return (
    <button type="button" class="coming-open" aria-expanded={isOpen} aria-label={say.whyOf(name)} onClick={onToggle}>
      {isOpen ? say.hideWhy : say.why}
    </button>
  )
}
