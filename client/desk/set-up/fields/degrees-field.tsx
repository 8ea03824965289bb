import type { Degrees } from '../../../../shared-core/shop/formula.ts'
import { FRICTION_DEGREES_MAX, ROOM_DEGREES_MAX, ROOM_DEGREES_MIN } from '../../../../shared-core/shop/set-up-limits.ts'
import { milliCelsiusOf, milliDifferenceOf } from '../../../../shared-core/shop/temperature.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { NumberField } from './number-field.tsx'

export interface DegreesFieldProps {
  readonly label: string
  readonly value: Degrees
  /** The shop's: what was entered in the other one is shown in this, and kept so once it is changed. */
  readonly unit: Degrees['unit']
  /** A difference between two temperatures, as friction is. */
  readonly isDifference?: boolean
  readonly say: SetUpSentences
  readonly onChange: (value: Degrees) => void
}

/** A temperature of the dough room, with tenths. */
export function DegreesField({ label, value, unit, isDifference = false, say, onChange }: DegreesFieldProps) {
  return (
    <NumberField
      label={label}
      value={degreesIn(value, unit, isDifference)}
      min={isDifference ? 0 : ROOM_DEGREES_MIN}
      max={isDifference ? FRICTION_DEGREES_MAX : ROOM_DEGREES_MAX}
      step={1}
      decimals={1}
      unit={`°${unit}`}
      say={say}
      onChange={(degrees) => onChange({ thousandths: Math.round(degrees * 1_000), unit })}
    />
  )
}

/** @example degreesIn({ thousandths: 24_000, unit: 'C' }, 'F', false) // 75.2 */
export function degreesIn(value: Degrees, unit: Degrees['unit'], isDifference: boolean): number {
  if (value.unit === unit) return value.thousandths / 1_000
  const milli = isDifference ? milliDifferenceOf(value) : milliCelsiusOf(value)
  const degrees = unit === 'C' ? milli / 1_000 : (milli * 9) / 5_000 + (isDifference ? 0 : 32)
  return Math.round(degrees * 10) / 10
}
