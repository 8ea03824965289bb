import { dwell } from '../../../../shared-core/shop/default-windows.ts'
import type { Formula } from '../../../../shared-core/shop/formula.ts'
import * as limits from '../../../../shared-core/shop/set-up-limits.ts'
import { spanMs } from '../../../../shared-core/units.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { DegreesField } from '../fields/degrees-field.tsx'
import { DwellFields } from '../fields/dwell-fields.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { FormulaFieldsProps } from './formula-fields.tsx'

/** What is wished for the mixed dough, and what mixing warms it by. */
export function WarmthFields({ parts, formula, set }: FormulaFieldsProps) {
  const { draft, say } = parts
  const unit = draft.profile.temperature
  const { formula: labels } = say.fields
  return (
    <>
      <div class="setup-columns">
        <DegreesField
          label={labels.doughAt}
          value={formula.doughAt}
          unit={unit}
          say={say}
          onChange={(doughAt) => set({ ...formula, doughAt })}
        />
        <DegreesField
          label={labels.friction}
          value={formula.friction}
          unit={unit}
          isDifference
          say={say}
          onChange={(friction) => set({ ...formula, friction })}
        />
      </div>
      <p class="setup-hint">{say.dough.hints.friction}</p>
    </>
  )
}

/** Mixing, mix-ins, rest, bulk ferment. */
export function TimesFields(props: FormulaFieldsProps) {
  const { parts, formula, set } = props
  const { words, say } = parts
  const { formula: labels } = say.fields
  const minutes = ['min', 's'] as const
  return (
    <>
      <div class="setup-columns">
        <SpanField
          label={labels.mixMs}
          ms={formula.mixMs}
          minMs={1_000}
          maxMs={limits.MIX_MS_MAX}
          units={minutes}
          words={words}
          say={say}
          onChange={(mixMs) => set({ ...formula, mixMs })}
        />
        {formula.mixInMs !== null && (
          <SpanField
            label={labels.mixInMs}
            ms={formula.mixInMs}
            minMs={0}
            maxMs={limits.MIX_MS_MAX}
            units={minutes}
            words={words}
            say={say}
            onChange={(mixInMs) => set({ ...formula, mixInMs })}
          />
        )}
        <SpanField
          label={labels.restMs}
          ms={formula.restMs}
          minMs={0}
          maxMs={limits.REST_MS_MAX}
          units={['min', 'h']}
          words={words}
          say={say}
          onChange={(restMs) => set({ ...formula, restMs })}
        />
      </div>
      <BulkFields {...props} />
    </>
  )
}

type Bulk = NonNullable<Formula['bulk']>
/** Two hours with a fold after the first. Common practice, no source. */
const BEGIN: Bulk = { window: dwell('h', 1.5, 2, 3), foldsMs: [], chill: null }

function BulkFields(props: FormulaFieldsProps) {
  const { parts, formula, set } = props
  const { words, say } = parts
  const setBulk = (bulk: Bulk | null) => set({ ...formula, bulk })
  return (
    <OptionalField label={say.fields.formula.bulk} value={formula.bulk} begin={BEGIN} say={say} onChange={setBulk}>
      {(bulk) => (
        <div>
          <p>{say.fields.formula.bulk}</p>
          <DwellFields
            label={say.fields.formula.bulk}
            window={bulk.window}
            words={words}
            say={say}
            onChange={(window) => setBulk({ ...bulk, window })}
          />
          <FoldFields {...props} bulk={bulk} setBulk={setBulk} />
          <OptionalField
            label={say.dough.bulkChill}
            value={bulk.chill}
            begin={dwell('h', 8, 12, 24)}
            say={say}
            onChange={(chill) => setBulk({ ...bulk, chill })}
          >
            {(chill) => (
              <div>
                <p>{say.dough.bulkChill}</p>
                <DwellFields
                  label={say.dough.bulkChill}
                  window={chill}
                  words={words}
                  say={say}
                  onChange={(value) => setBulk({ ...bulk, chill: value })}
                />
              </div>
            )}
          </OptionalField>
        </div>
      )}
    </OptionalField>
  )
}

interface FoldFieldsProps extends FormulaFieldsProps {
  readonly bulk: Bulk
  readonly setBulk: (bulk: Bulk) => void
}

function FoldFields({ parts, bulk, setBulk }: FoldFieldsProps) {
  const { words, say } = parts
  const { foldsMs } = bulk
  const last = foldsMs[foldsMs.length - 1] ?? 0
  return (
    <div class="setup-columns">
      {foldsMs.map((ms, at) => (
        <SpanField
          key={say.dough.fold(at + 1)}
          label={say.dough.fold(at + 1)}
          ms={ms}
          minMs={0}
          maxMs={limits.WINDOW_MS_MAX}
          units={['min', 'h']}
          words={words}
          say={say}
          onChange={(value) => setBulk({ ...bulk, foldsMs: foldsMs.map((one, index) => (index === at ? value : one)) })}
        />
      ))}
      <div class="setup-acts">
        <button
          type="button"
          disabled={foldsMs.length >= limits.FOLDS_MAX}
          onClick={() => setBulk({ ...bulk, foldsMs: [...foldsMs, spanMs(last / 60_000 + 30, 'min')] })}
        >
          + {say.dough.addFold}
        </button>
        {foldsMs.length > 0 && (
          <button
            type="button"
            aria-label={say.dough.table.remove(say.dough.fold(foldsMs.length))}
            onClick={() => setBulk({ ...bulk, foldsMs: foldsMs.slice(0, -1) })}
          >
            {say.dough.takeOff}
          </button>
        )}
      </div>
    </div>
  )
}

export function LossFields({ parts, formula, set }: FormulaFieldsProps) {
  const { say } = parts
  return (
    <div class="setup-columns">
      {(['lossPercent', 'bakeLossPercent'] as const).map((field) => (
        <NumberField
          key={field}
          label={say.fields.formula[field]}
          value={formula[field] / 1_000}
          min={0}
          max={limits.LOSS_PERCENT_MAX}
          step={0.5}
          decimals={3}
          unit="%"
          say={say}
          onChange={(percent) => set({ ...formula, [field]: Math.round(percent * 1_000) })}
        />
      ))}
    </div>
  )
}

/** What the plan goes by: when it is decided, how far ahead, and what is mixed last. */
export function PlanFields({ parts, formula, set }: FormulaFieldsProps) {
  const { say } = parts
  const { hints } = say.dough
  const { formula: labels } = say.fields
  return (
    <div class="setup-columns">
      <div>
        <NumberField
          label={labels.daysAhead}
          value={formula.daysAhead}
          min={1}
          max={limits.DAYS_AHEAD_MAX}
          step={1}
          say={say}
          onChange={(daysAhead) => set({ ...formula, daysAhead })}
        />
        <p class="setup-hint">{hints.daysAhead}</p>
      </div>
      <div>
        <ClockField
          label={labels.decideByMinute}
          minute={formula.decideByMinute}
          say={say}
          onChange={(decideByMinute) => set({ ...formula, decideByMinute })}
        />
        <p class="setup-hint">{hints.decideBy}</p>
      </div>
      <div>
        <NumberField
          label={labels.strength}
          value={formula.strength}
          min={0}
          max={limits.STRENGTH_MAX}
          step={1}
          say={say}
          onChange={(strength) => set({ ...formula, strength })}
        />
        <p class="setup-hint">{hints.strength}</p>
      </div>
    </div>
  )
}
