import { stepId } from '../../../../shared-core/ids.ts'
import { STEP_OFFSET_MS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Step } from '../../../../shared-core/shop/shop.ts'
import { NumberField } from '../fields/number-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { STEPS } from '../lists.ts'
import { spanSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

const MINUTE_MS = 60_000
const LISTS = ['opening', 'changeover'] as const

/** The two back-timed lists, one under the other. */
export function StepsPart(props: SetUpProps) {
  const { say } = props
  return (
    <>
      {LISTS.map((list) => (
        <section key={list} data-list={list}>
          <h3>{say.options.list[list]}</h3>
          <ListPart
            kind={STEPS}
            parts={props}
            like={newStep(list)}
            among={(step) => step.list === list}
            line={(step) => whenSaid(step, props)}
          >
            {(step, set) => <StepFields parts={props} step={step} set={set} />}
          </ListPart>
        </section>
      ))}
    </>
  )
}

function newStep(list: Step['list']): Step {
  return { id: stepId('new'), name: '', order: 0, list, offsetMs: -30 * MINUTE_MS, kind: 'plain', retired: false }
}

function whenSaid({ offsetMs, list }: Step, { words, say, draft }: SetUpProps): string {
  const span = spanSaid(Math.abs(offsetMs), { words, say, shop: draft })
  return offsetMs === 0 ? say.form.zero[list] : `${span} ${offsetMs < 0 ? say.form.before : say.form.after}`
}

interface StepFieldsProps {
  readonly parts: SetUpProps
  readonly step: Step
  readonly set: (step: Step) => void
}

function StepFields({ parts, step, set }: StepFieldsProps) {
  const { say, words } = parts
  const isBefore = step.offsetMs <= 0
  const signed = (minutes: number, before: boolean) => (before ? 0 - minutes : minutes) * MINUTE_MS
  const minutes = Math.abs(step.offsetMs) / MINUTE_MS
  return (
    <>
      <div class="setup-columns">
        <NumberField
          label={say.fields.step.offsetMs}
          value={minutes}
          min={0}
          max={STEP_OFFSET_MS_MAX / MINUTE_MS}
          step={5}
          unit={words.times.units.min}
          say={say}
          onChange={(value) => set({ ...step, offsetMs: signed(value, isBefore) })}
        />
        <PickField
          label={say.form.zero[step.list]}
          options={[
            { value: 'before', label: say.form.before },
            { value: 'after', label: say.form.after },
          ]}
          value={isBefore ? 'before' : 'after'}
          onChange={(side) => set({ ...step, offsetMs: signed(minutes, side === 'before') })}
        />
      </div>
      {step.list === 'opening' && (
        <PickField
          label={say.fields.step.kind}
          options={(['plain', 'float-test'] as const).map((value) => ({ value, label: say.options.stepKind[value] }))}
          value={step.kind}
          onChange={(kind) => set({ ...step, kind })}
        />
      )}
    </>
  )
}
