import * as limits from '../../../../shared-core/shop/set-up-limits.ts'
import { durationMs } from '../../../../shared-core/units.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField, TickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'

/** How orders are taken, what is left to walk-ins, how pieces are kept and packed, when names are forgotten. */
export function OrdersPart(props: SetUpProps) {
  const { say } = props
  const { heads } = say.kitchen
  return (
    <>
      <h3>{heads.taking}</h3>
      <Dozen {...props} />
      <CutOff {...props} />
      <h3>{heads.walkIns}</h3>
      <Count {...props} field="walkInPercent" min={0} max={100} step={10} unit="%" />
      <Count {...props} field="walkInLeast" min={0} max={limits.WALK_IN_LEAST_MAX} step={6} />
      <h3>{heads.keeping}</h3>
      <Keeps {...props} />
      <NoShow {...props} />
      <h3>{heads.packing}</h3>
      <Span {...props} field="sliceCoolMs" minMs={0} maxMs={limits.SLICE_COOL_MS_MAX} />
      <Span {...props} field="packMs" minMs={0} maxMs={limits.PACK_MS_MAX} />
      <Count {...props} field="boxPieces" min={1} max={limits.BOX_PIECES_MAX} step={1} />
      <h3>{heads.waiting}</h3>
      <Span {...props} field="madeInMs" minMs={limits.MADE_IN_MS_MIN} maxMs={limits.MADE_IN_MS_MAX} />
      <h3>{heads.details}</h3>
      <Count {...props} field="forgetDays" min={1} max={limits.FORGET_DAYS_MAX} step={10} />
    </>
  )
}

/** What a baker's dozen is in most shops; another number is the set-up file's to say, and is offered then. */
const DOZENS = [12, 13]

function Dozen(props: SetUpProps) {
  const { draft, say } = props
  const { orders } = draft
  const set = changeTo(props, 'orders')
  const offered = [...new Set([...DOZENS, orders.dozenPieces])].sort((one, other) => one - other)
  return (
    <>
      <PickField
        label={say.fields.orders.dozenPieces}
        options={offered.map((value) => ({ value, label: say.kitchen.dozen(value) }))}
        value={orders.dozenPieces}
        onChange={(dozenPieces) => set({ ...orders, dozenPieces })}
      />
      <p class="setup-hint">{say.kitchen.does.dozenPieces}</p>
    </>
  )
}

function CutOff(props: SetUpProps) {
  const { draft, say } = props
  const { orders, hours } = draft
  const set = changeTo(props, 'orders')
  const label = say.fields.orders.cutOffMinute
  return (
    <>
      <OptionalField
        label={label}
        value={orders.cutOffMinute}
        begin={hours.closeMinute}
        say={say}
        onChange={(cutOffMinute) => set({ ...orders, cutOffMinute })}
      >
        {(minute) => (
          <ClockField
            label={label}
            minute={minute}
            say={say}
            onChange={(cutOffMinute) => set({ ...orders, cutOffMinute })}
          />
        )}
      </OptionalField>
      <p class="setup-hint">{say.kitchen.does.cutOffMinute}</p>
    </>
  )
}

function Keeps(props: SetUpProps) {
  const { draft, say } = props
  const set = changeTo(props, 'orders')
  return (
    <>
      <TickField
        label={say.fields.orders.keepsAsTheyCome}
        value={draft.orders.keepsAsTheyCome}
        onChange={(keepsAsTheyCome) => set({ ...draft.orders, keepsAsTheyCome })}
      />
      <p class="setup-hint">{say.kitchen.does.keepsAsTheyCome}</p>
    </>
  )
}

/** What is offered to begin with; common practice, no source. */
const NO_SHOW_MS = durationMs(60 * 60_000)

function NoShow(props: SetUpProps) {
  const { draft, say, words } = props
  const { orders } = draft
  const set = changeTo(props, 'orders')
  const label = say.fields.orders.noShowMs
  return (
    <>
      <OptionalField
        label={label}
        value={orders.noShowMs}
        begin={NO_SHOW_MS}
        say={say}
        onChange={(noShowMs) => set({ ...orders, noShowMs })}
      >
        {(ms) => (
          <SpanField
            label={label}
            ms={ms}
            minMs={limits.NO_SHOW_MS_MIN}
            maxMs={limits.NO_SHOW_MS_MAX}
            units={['min', 'h']}
            words={words}
            say={say}
            onChange={(noShowMs) => set({ ...orders, noShowMs })}
          />
        )}
      </OptionalField>
      <p class="setup-hint">{say.kitchen.does.noShowMs}</p>
    </>
  )
}

interface CountProps extends SetUpProps {
  readonly field: 'walkInPercent' | 'walkInLeast' | 'forgetDays' | 'boxPieces'
  readonly min: number
  readonly max: number
  readonly step: number
  readonly unit?: string
}

function Count({ field, min, max, step, unit, ...props }: CountProps) {
  const { draft, say } = props
  const set = changeTo(props, 'orders')
  return (
    <>
      <NumberField
        label={say.fields.orders[field]}
        value={draft.orders[field]}
        min={min}
        max={max}
        step={step}
        unit={unit}
        say={say}
        onChange={(value) => set({ ...draft.orders, [field]: value })}
      />
      <p class="setup-hint">{say.kitchen.does[field]}</p>
    </>
  )
}

interface SpanProps extends SetUpProps {
  readonly field: 'madeInMs' | 'sliceCoolMs' | 'packMs'
  readonly minMs: number
  readonly maxMs: number
}

function Span({ field, minMs, maxMs, ...props }: SpanProps) {
  const { draft, say, words } = props
  const set = changeTo(props, 'orders')
  return (
    <>
      <SpanField
        label={say.fields.orders[field]}
        ms={draft.orders[field]}
        minMs={minMs}
        maxMs={maxMs}
        words={words}
        say={say}
        onChange={(ms) => set({ ...draft.orders, [field]: ms })}
      />
      <p class="setup-hint">{say.kitchen.does[field]}</p>
    </>
  )
}
