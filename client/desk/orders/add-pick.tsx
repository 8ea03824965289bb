interface AddPickProps<Id extends string> {
  /** What a choice does; it stands in the field while nothing is chosen. */
  readonly label: string
  readonly options: readonly { readonly id: Id; readonly name: string }[]
  readonly onPick: (id: Id) => void
}

/** A list out of which each choice adds something. */
export function AddPick<Id extends string>({ label, options, onPick }: AddPickProps<Id>) {
  return (
    <select
      class="orders-add"
      aria-label={label}
      value=""
      onChange={(event) => {
        const found = options.find(({ id }) => id === event.currentTarget.value)
        event.currentTarget.value = ''
        if (found !== undefined) onPick(found.id)
      }}
    >
      <option value="">{label}</option>
      {options.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  )
}
