import { WEIGHT_THOUSANDTHS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Weight } from '../../../../shared-core/shop/shop.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { NumberField } from './number-field.tsx'

export interface WeightFieldProps {
  readonly label: string
  readonly value: Weight
  readonly units?: readonly Weight['unit'][]
  readonly isLabelSilent?: boolean
  readonly say: SetUpSentences
  readonly onChange: (value: Weight) => void
}

const UNITS = ['g', 'kg', 'oz', 'lb'] as const

/** A weight and its unit. Another unit is another weight: 50 lb become 50 kg, as when one has typed the wrong unit. */
export function WeightField({ label, value, units = UNITS, isLabelSilent = false, say, onChange }: WeightFieldProps) {
  return (
    <div class="setup-field setup-weight">
      {!isLabelSilent && <span>{label}</span>}
      <div class="setup-number">
        <NumberField
          label={label}
          value={value.thousandths / 1_000}
          min={0.001}
          max={WEIGHT_THOUSANDTHS_MAX / 1_000}
          decimals={3}
          isLabelSilent
          say={say}
          onChange={(amount) => onChange({ ...value, thousandths: Math.round(amount * 1_000) })}
        />
        <select
          class="setup-unit-pick"
          aria-label={`${label}: ${say.form.unit}`}
          value={value.unit}
          onChange={(event) => {
            const unit = units.find((one) => one === event.currentTarget.value)
            if (unit !== undefined) onChange({ ...value, unit })
          }}
        >
          {units.map((unit) => (
            <option key={unit} value={unit}>
              {say.options.weightUnit[unit]}
            </option>
          ))}
        </select>
      </div>
    </div>
  )
}
