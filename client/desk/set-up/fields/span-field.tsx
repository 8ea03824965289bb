import { useState } from 'preact/hooks'
import type { DurationMs, TimeUnit } from '../../../../shared-core/units.ts'
import { spanMs } from '../../../../shared-core/units.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import type { Words } from '../../../words/words.ts'
import { inUnit, spanParts } from '../say-value.ts'
import { NumberField } from './number-field.tsx'

export interface SpanFieldProps {
  readonly label: string
  readonly ms: number
  readonly minMs: number
  readonly maxMs: number
  readonly units?: readonly TimeUnit[]
  readonly words: Words
  readonly say: SetUpSentences
  readonly onChange: (ms: DurationMs) => void
}

const STEP = { s: 10, min: 1, h: 1 } as const

/** A span of time with its unit. Another unit tells the same span another way. */
export function SpanField(props: SpanFieldProps) {
  const { label, ms, minMs, maxMs, units = ['s', 'min'], words, say, onChange } = props
  const natural = spanParts(ms).unit
  const [unit, setUnit] = useState<TimeUnit>(units.includes(natural) ? natural : (units[0] ?? 'min'))
  return (
    <div class="setup-span">
      <NumberField
        label={label}
        value={inUnit(ms, unit)}
        min={inUnit(minMs, unit)}
        max={inUnit(maxMs, unit)}
        step={STEP[unit]}
        decimals={3}
        say={say}
        onChange={(value) => onChange(spanMs(value, unit))}
      />
      <UnitPick label={label} unit={unit} units={units} words={words} say={say} onChange={setUnit} />
    </div>
  )
}

export interface UnitPickProps {
  readonly label: string
  readonly unit: TimeUnit
  readonly units: readonly TimeUnit[]
  readonly words: Words
  readonly say: SetUpSentences
  readonly onChange: (unit: TimeUnit) => void
}

export function UnitPick({ label, unit, units, words, say, onChange }: UnitPickProps) {
  return (
    <select
      class="setup-unit-pick"
      aria-label={`${label}: ${say.form.unit}`}
      value={unit}
      onChange={(event) => {
        const chosen = units.find((one) => one === event.currentTarget.value)
        if (chosen !== undefined) onChange(chosen)
      }}
    >
      {units.map((one) => (
        <option key={one} value={one}>
          {words.times.units[one]}
        </option>
      ))}
    </select>
  )
}
