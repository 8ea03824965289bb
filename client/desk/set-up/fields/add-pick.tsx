import type { SetUpProps } from '../set-up-parts.ts'

interface Named {
  readonly id: string
  readonly name: string
}

export interface AddPickProps<One extends Named> {
  /** What it adds to, for those who hear the page. */
  readonly label: string
  readonly say: SetUpProps['say']
  /** What can still be added; with none there is nothing to pick. */
  readonly more: readonly One[]
  readonly onAdd: (one: One) => void
}

/** A list that grows by what is picked of it: it falls back to its "+" each time. */
export function AddPick<One extends Named>({ label, say, more, onAdd }: AddPickProps<One>) {
  if (more.length === 0) return null
  const add = say.dough.table.add
  return (
    <select
      class="setup-unit-pick setup-add-line"
      aria-label={`${label}: ${add}`}
      value=""
      onChange={(event) => {
        const chosen = more.find(({ id }) => id === event.currentTarget.value)
        if (chosen !== undefined) onAdd(chosen)
        event.currentTarget.value = ''
      }}
    >
      <option value="">+ {add}</option>
      {more.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  )
}
