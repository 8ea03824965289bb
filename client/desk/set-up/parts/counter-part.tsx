import { SWEEP_MS_MAX, SWEEP_MS_MIN } from '../../../../shared-core/shop/set-up-limits.ts'
import { NumberField } from '../fields/number-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'

const SOURCES = ['taps', 'till', 'sweeps'] as const

/** Which sales count, how often the doubtful rods are counted, and what a day-old piece costs. */
export function CounterPart(props: SetUpProps) {
  const { draft, say, words } = props
  const { counter } = draft
  const set = changeTo(props, 'counter')
  return (
    <>
      <PickField
        label={say.fields.counter.salesFrom}
        options={SOURCES.map((value) => ({ value, label: say.options.salesFrom[value] }))}
        value={counter.salesFrom}
        onChange={(salesFrom) => set({ ...counter, salesFrom })}
      />
      <div class="setup-columns">
        <SpanField
          label={say.fields.counter.sweepEveryMs}
          ms={counter.sweepEveryMs}
          minMs={SWEEP_MS_MIN}
          maxMs={SWEEP_MS_MAX}
          units={['min', 'h']}
          words={words}
          say={say}
          onChange={(sweepEveryMs) => set({ ...counter, sweepEveryMs })}
        />
        <NumberField
          label={say.fields.counter.dayOldPercent}
          value={counter.dayOldPercent}
          min={0}
          max={100}
          step={5}
          unit="%"
          say={say}
          onChange={(dayOldPercent) => set({ ...counter, dayOldPercent })}
        />
      </div>
    </>
  )
}
