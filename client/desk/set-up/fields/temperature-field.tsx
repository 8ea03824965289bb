import { DEGREES_MAX, DEGREES_MIN } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Temperature } from '../../../../shared-core/shop/shop.ts'
import { degreesIn, milliCelsius } from '../../../../shared-core/shop/temperature.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { NumberField } from './number-field.tsx'
import { OptionalField } from './optional-field.tsx'

export interface TemperatureFieldProps {
  readonly label: string
  readonly value: Temperature | null
  readonly begin: Temperature
  /** The shop's: what was entered in the other one is shown in this, and kept so once it is changed. */
  readonly unit: Temperature['unit']
  readonly say: SetUpSentences
  readonly onChange: (value: Temperature | null) => void
}

export function TemperatureField({ label, value, begin, unit, say, onChange }: TemperatureFieldProps) {
  return (
    <OptionalField label={label} value={value} begin={begin} say={say} onChange={onChange}>
      {(given) => (
        <NumberField
          label={label}
          value={given.unit === unit ? given.degrees : degreesIn(unit, milliCelsius(given))}
          min={DEGREES_MIN}
          max={DEGREES_MAX}
          step={5}
          unit={say.options.temperature[unit]}
          say={say}
          onChange={(degrees) => onChange({ degrees, unit })}
        />
      )}
    </OptionalField>
  )
}
