import { WINDOW_MS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { DwellWindow } from '../../../../shared-core/shop/shop.ts'
import { spanMs } from '../../../../shared-core/units.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import type { Words } from '../../../words/words.ts'
import { inUnit } from '../say-value.ts'
import { NumberField } from './number-field.tsx'
import { UnitPick } from './span-field.tsx'

export interface DwellFieldsProps {
  /** The stage, in words. */
  readonly label: string
  readonly window: DwellWindow
  readonly words: Words
  readonly say: SetUpSentences
  readonly onChange: (window: DwellWindow) => void
}

const ENDS = ['earliestMs', 'targetMs', 'latestMs'] as const

/** Earliest, target and latest in one unit. They are three steps of one line, so they stand in one. */
export function DwellFields({ label, window, words, say, onChange }: DwellFieldsProps) {
  const { unit } = window
  return (
    <div class="setup-dwell" role="group" aria-label={label}>
      {ENDS.map((end) => (
        <NumberField
          key={end}
          label={say.form.ends[end]}
          value={inUnit(window[end], unit)}
          min={0}
          max={inUnit(WINDOW_MS_MAX, unit)}
          decimals={3}
          say={say}
          onChange={(value) => onChange({ ...window, [end]: spanMs(value, unit) })}
        />
      ))}
      <UnitPick
        label={label}
        unit={unit}
        units={['s', 'min', 'h']}
        words={words}
        say={say}
        onChange={(next) => onChange({ ...window, unit: next })}
      />
    </div>
  )
}
