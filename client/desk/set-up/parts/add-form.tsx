import { useId, useState } from 'preact/hooks'
import type { SetUpSentences } from '../../../words/set-up.ts'

export interface AddFormProps {
  readonly label: string
  readonly most: number
  readonly isFull: boolean
  readonly say: SetUpSentences
  readonly onAdd: (name: string) => void
}

/** A name for a new one; the rest begins with values that make sense. */
export function AddForm({ label, most, isFull, say, onAdd }: AddFormProps) {
  const id = useId()
  const [name, setName] = useState('')
  if (isFull) return <p class="setup-hint">{say.list.full}</p>
  return (
    <form
      class="setup-add"
      onSubmit={(event) => {
        event.preventDefault()
        if (name.trim() === '') return
        onAdd(name.trim())
        setName('')
      }}
    >
      <div class="setup-field">
        <label for={id}>{label}</label>
        <input
          id={id}
          type="text"
          value={name}
          maxLength={most}
          autoComplete="off"
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <button type="submit" disabled={name.trim() === ''}>
        + {say.list.add}
      </button>
    </form>
  )
}
