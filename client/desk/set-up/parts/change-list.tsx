import { idOf } from '../draft.ts'
import type { ToldChange } from '../told-changes.ts'

/** Changes in words, one entity a line. */
export function ChangeList({ told }: { readonly told: readonly ToldChange[] }) {
  return (
    <ul class="setup-told-list">
      {told.map(({ what, lines, change }) => {
        const [first = ''] = lines
        // "Shelf 5 is retired" says what it is of already.
        const isWhole = lines.length === 1 && first.startsWith(what)
        return (
          <li key={`${change.entity} ${idOf(change) ?? ''}`}>
            <strong>{isWhole ? first : what}</strong>
            {!isWhole && (
              <span class="setup-told-lines">
                {lines.map((line) => (
                  <span key={line}>{line}</span>
                ))}
              </span>
            )}
          </li>
        )
      })}
    </ul>
  )
}
