import type { SetUpSentences } from '../../../words/set-up.ts'
import type { Listed } from '../lists.ts'

export interface RetiredListProps<Entity extends Listed> {
  readonly entities: readonly Entity[]
  readonly say: SetUpSentences
  readonly onBack: (entity: Entity) => void
}

/** What is out of use, folded away; nothing is ever deleted. */
export function RetiredList<Entity extends Listed>({ entities, say, onBack }: RetiredListProps<Entity>) {
  if (entities.length === 0) return null
  return (
    <details class="setup-retired">
      <summary>{say.list.retired(entities.length)}</summary>
      <p class="setup-hint">{say.list.retiredHint}</p>
      <ul>
        {entities.map((entity) => (
          <li key={entity.id} class="setup-row setup-retired-row">
            <span>{entity.name}</span>
            <button type="button" aria-label={`${say.list.bringBack}: ${entity.name}`} onClick={() => onBack(entity)}>
              {say.list.bringBack}
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}
