import type { ComponentChildren } from 'preact'
import { Key } from '../parts/key.tsx'

export interface SmallKeyProps {
  readonly label: string
  readonly chosen?: boolean | undefined
  readonly name?: string | undefined
  readonly refusal?: string | undefined
  readonly onPress: () => void
}

/** A key as wide as it is high. */
export function SmallKey({ label, chosen, name, refusal, onPress }: SmallKeyProps) {
  return (
    <div class="counter-small-key">
      <Key chosen={chosen} name={name} refusal={refusal} onPress={onPress}>
        <span class="counter-word">{label}</span>
      </Key>
    </div>
  )
}

/** A key that takes its share of what the others leave. */
export function Wide({ share, id, children }: { share: number; id?: string; children: ComponentChildren }) {
  return (
    <div class="counter-wide" data-key={id} style={{ flexGrow: share }}>
      {children}
    </div>
  )
}

export function Back({ label, onPress }: { label: string; onPress: () => void }) {
  return (
    <div class="counter-small-key counter-back">
      <Key onPress={onPress}>
        <span class="counter-word">{label}</span>
      </Key>
    </div>
  )
}
