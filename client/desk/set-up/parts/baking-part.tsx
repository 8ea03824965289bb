import {
  BOARD_WAIT_MS_MAX,
  CENTS_MAX,
  DOOR_MS_MAX,
  TOLERANCE_MS_MAX,
  UNIT_PIECES_MAX,
} from '../../../../shared-core/shop/set-up-limits.ts'
import { NumberField } from '../fields/number-field.tsx'
import { TickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { PeopleByHour } from './people-by-hour.tsx'
import { ShowPart } from './show-part.tsx'

/** How loads are planned: advice and when it changes, freshness, the line, hands and people, what is on show. */
export function BakingPart(props: SetUpProps) {
  const { draft, say } = props
  const { baking } = draft
  const { does, heads } = say.baking
  const set = changeTo(props, 'baking')
  return (
    <>
      <TickField
        label={say.fields.baking.advice}
        value={baking.advice}
        onChange={(advice) => set({ ...baking, advice })}
      />
      <p class="setup-hint">{does.advice}</p>
      <Money {...props} field="changeGainCents" step={0.5} />
      <h3>{heads.fresh}</h3>
      <Percent {...props} field="stalePercentPerHour" step={1} />
      <Percent {...props} field="carryPercent" step={5} />
      <h3>{heads.line}</h3>
      <Line {...props} />
      <h3>{heads.hands}</h3>
      <p class="setup-hint">{does.door}</p>
      <Door {...props} />
      <h3>{heads.people}</h3>
      <PeopleByHour {...props} />
      <h3>{heads.show}</h3>
      <ShowPart {...props} />
      <h3>{heads.contact}</h3>
      <Money {...props} field="contactCents" step={0.05} />
    </>
  )
}

interface MoneyProps extends SetUpProps {
  readonly field: 'changeGainCents' | 'contactCents'
  readonly step: number
}

function Money({ field, step, ...props }: MoneyProps) {
  const { say } = props
  const { baking } = props.draft
  const set = changeTo(props, 'baking')
  return (
    <>
      <NumberField
        label={say.fields.baking[field]}
        value={baking[field] / 100}
        min={0}
        max={CENTS_MAX / 100}
        step={step}
        decimals={2}
        say={say}
        onChange={(amount) => set({ ...baking, [field]: Math.round(amount * 100) })}
      />
      <p class="setup-hint">{say.baking.does[field]}</p>
    </>
  )
}

interface PercentProps extends SetUpProps {
  readonly field: 'stalePercentPerHour' | 'carryPercent'
  readonly step: number
}

function Percent({ field, step, ...props }: PercentProps) {
  const { say } = props
  const { baking } = props.draft
  const set = changeTo(props, 'baking')
  return (
    <>
      <NumberField
        label={say.fields.baking[field]}
        value={baking[field]}
        min={0}
        max={100}
        step={step}
        unit="%"
        say={say}
        onChange={(percent) => set({ ...baking, [field]: percent })}
      />
      <p class="setup-hint">{say.baking.does[field]}</p>
    </>
  )
}

function Line(props: SetUpProps) {
  const { say, words } = props
  const { baking } = props.draft
  const set = changeTo(props, 'baking')
  const most = { boardWaitMs: BOARD_WAIT_MS_MAX, toleranceMs: TOLERANCE_MS_MAX } as const
  return (
    <>
      {(['boardWaitMs', 'toleranceMs'] as const).map((field) => (
        <div key={field}>
          <SpanField
            label={say.fields.baking[field]}
            ms={baking[field]}
            minMs={0}
            maxMs={most[field]}
            words={words}
            say={say}
            onChange={(ms) => set({ ...baking, [field]: ms })}
          />
          <p class="setup-hint">{say.baking.does[field]}</p>
        </div>
      ))}
      <NumberField
        label={say.fields.baking.unitPieces}
        value={baking.unitPieces}
        min={1}
        max={UNIT_PIECES_MAX}
        step={1}
        say={say}
        onChange={(unitPieces) => set({ ...baking, unitPieces })}
      />
      <p class="setup-hint">{say.baking.does.unitPieces}</p>
    </>
  )
}

const AT_DOOR = ['loadMs', 'flipMs', 'outMs'] as const

/** A rotating oven brings its shelves to the door one after the other. */
function Door(props: SetUpProps) {
  const { say, words, draft } = props
  const { baking, oven } = draft
  const set = changeTo(props, 'baking')
  return (
    <div class="setup-columns">
      {AT_DOOR.map((act) => (
        <SpanField
          key={act}
          label={say.baking.door[act]}
          ms={baking.door[act]}
          minMs={0}
          maxMs={DOOR_MS_MAX}
          words={words}
          say={say}
          onChange={(ms) => set({ ...baking, door: { ...baking.door, [act]: ms } })}
        />
      ))}
      {oven.kind === 'rotating' && (
        <SpanField
          label={say.fields.baking.turnMs}
          ms={baking.turnMs}
          minMs={0}
          maxMs={DOOR_MS_MAX}
          words={words}
          say={say}
          onChange={(turnMs) => set({ ...baking, turnMs })}
        />
      )}
    </div>
  )
}
