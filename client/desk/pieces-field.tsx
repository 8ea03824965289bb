interface PiecesFieldProps {
  readonly label: string
  /** Null: nothing is said yet. */
  readonly value: number | null
  readonly most: number
  readonly lessName: (step: number) => string
  readonly moreName: (step: number) => string
  readonly onChange: (value: number | null) => void
}

/** Counted as rods are: by the half-dozen. */
const STEPS = [6, 1] as const

/** A number of pieces: typed, or counted up and down by half-dozens and singles without a keyboard. */
export function PiecesField({ label, value, most, lessName, moreName, onChange }: PiecesFieldProps) {
  const set = (next: number) => onChange(Math.min(most, Math.max(0, next)))
  return (
    <span class="desk-pieces">
      {STEPS.map((step) => (
        <button key={-step} type="button" aria-label={lessName(step)} onClick={() => set((value ?? 0) - step)}>
          −{step}
        </button>
      ))}
      <input
        inputMode="numeric"
        class="desk-short"
        aria-label={label}
        value={value ?? ''}
        onInput={(event) => {
          const text = event.currentTarget.value.trim()
          if (text === '') onChange(null)
          else if (/^\d{1,5}$/.test(text)) set(Number(text))
        }}
      />
      {[...STEPS].reverse().map((step) => (
        <button key={step} type="button" aria-label={moreName(step)} onClick={() => set((value ?? 0) + step)}>
          +{step}
        </button>
      ))}
    </span>
  )
}
