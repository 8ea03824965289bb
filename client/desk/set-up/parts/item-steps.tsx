import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { MenuItem, MenuStep, OvenStep } from '../../../../shared-core/shop/kitchen.ts'
import { ITEM_STEPS_MAX, TAKES_MS_MAX, TAKES_MS_MIN } from '../../../../shared-core/shop/set-up-limits.ts'
import { spanMs } from '../../../../shared-core/units.ts'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { OvenStepFields } from './oven-step.tsx'

export interface ItemStepsProps extends SetUpProps {
  readonly item: MenuItem
  readonly set: (item: MenuItem) => void
}

const BY_HAND_MS = spanMs(1, 'min')
const BAKE_MS = spanMs(4, 'min')
const NEW_BAKE: OvenStep = { slots: 1, at: null, turns: [] }

/** How an item is made: at most three parts, each at a station, by hand or in the oven. */
export function ItemSteps(props: ItemStepsProps) {
  const { draft, say, item, set } = props
  const { steps } = item
  const words = say.kitchen.item
  const stations = inUse(draft.kitchenStations)
  const [first] = stations
  const put = (next: readonly MenuStep[]) => set({ ...item, steps: next })
  return (
    <div role="group" aria-label={say.fields.menuItem.steps}>
      <h3>{say.fields.menuItem.steps}</h3>
      <p class="setup-hint">{first === undefined ? words.noStations : words.stepsHint}</p>
      {steps.map((step, at) => (
        // Parts have no name of their own: their place in the list is what they are.
        <StepFields
          key={at}
          {...props}
          step={step}
          at={at}
          put={(next) => put(steps.map((one, index) => (index === at ? next : one)))}
        />
      ))}
      {first !== undefined && steps.length < ITEM_STEPS_MAX && (
        <div class="setup-acts">
          <button
            type="button"
            onClick={() => put([...steps, { stationId: first.id, takesMs: BY_HAND_MS, oven: null }])}
          >
            + {words.addStep}
          </button>
        </div>
      )}
    </div>
  )
}

interface StepFieldsProps extends ItemStepsProps {
  readonly step: MenuStep
  readonly at: number
  readonly put: (step: MenuStep) => void
}

function StepFields({ step, at, put, item, set, ...props }: StepFieldsProps) {
  const { draft, say, words: deskWords } = props
  const words = say.kitchen.item
  const [no, { steps }] = [at + 1, item]
  const stations = inUse(draft.kitchenStations)
  return (
    <fieldset class="setup-part-of">
      <legend>{words.step(no)}</legend>
      <div class="setup-columns">
        <PickField
          label={words.station}
          options={stations.map(({ id, name }) => ({ value: id, label: name }))}
          value={step.stationId}
          onChange={(stationId) => put({ ...step, stationId })}
        />
        <PickField
          label={words.made}
          options={[
            { value: 'byHand', label: words.how.byHand },
            { value: 'inOven', label: words.how.inOven },
          ]}
          value={step.oven === null ? 'byHand' : 'inOven'}
          onChange={(how) => put(how === 'byHand' ? { ...step, oven: null } : inTheOven(step))}
        />
        <SpanField
          label={words.takes}
          ms={step.takesMs}
          minMs={TAKES_MS_MIN}
          maxMs={TAKES_MS_MAX}
          words={deskWords}
          say={say}
          onChange={(takesMs) => put({ ...step, takesMs })}
        />
      </div>
      {step.oven !== null && (
        <OvenStepFields {...props} takesMs={step.takesMs} oven={step.oven} put={(oven) => put({ ...step, oven })} />
      )}
      <div class="setup-acts">
        {at > 0 && (
          <button type="button" onClick={() => set({ ...item, steps: earlier(steps, at) })}>
            ↑ {words.earlier(no)}
          </button>
        )}
        <button type="button" onClick={() => set({ ...item, steps: steps.filter((_, index) => index !== at) })}>
          × {words.removeStep(no)}
        </button>
      </div>
    </fieldset>
  )
}

/** A bake takes longer than what hands do; what somebody has said of the time stays. */
function inTheOven(step: MenuStep): MenuStep {
  return { ...step, takesMs: step.takesMs === BY_HAND_MS ? BAKE_MS : step.takesMs, oven: step.oven ?? NEW_BAKE }
}

/** @example earlier([a, b, c], 2) // [a, c, b] */
export function earlier(steps: readonly MenuStep[], at: number): readonly MenuStep[] {
  const [before, step] = [steps[at - 1], steps[at]]
  if (before === undefined || step === undefined) return steps
  return [...steps.slice(0, at - 1), step, before, ...steps.slice(at + 1)]
}
