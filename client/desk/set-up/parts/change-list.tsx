import type { ToldChange } from '../told-changes.ts'

/** Changes in words, one entity a line. */
export function ChangeList({ told }: { readonly told: readonly ToldChange[] }) {
  return (
    <ul class="setup-told-list">
      {told.map(({ what, lines, change }) => (
        <li key={`${change.entity} ${what}`}>
          <strong>{what}</strong>
          <span class="setup-told-lines">
            {lines.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </span>
        </li>
      ))}
    </ul>
  )
}
