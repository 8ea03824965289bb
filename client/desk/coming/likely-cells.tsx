import type { ComingDough, Likely } from '../../../shared-core/plan/coming-day.ts'
import type { ComingWords } from '../../words/desk-coming.ts'

type WithBasis = Pick<ComingDough, 'basis'>

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

/** @param of with nothing known the words for it stand in their place */
export function LikelyCells({ of, say }: { readonly of: Likely & WithBasis; readonly say: ComingWords }) {
  if (of.basis === 'nothing')
    return (
      <td class="desk-quiet coming-unknown" colSpan={LIKELY_COLUMNS.length}>
        {say.basis.nothing}
      </td>
    )
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
