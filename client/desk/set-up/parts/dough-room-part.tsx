import { defaultDoughRoom } from '../../../../shared-core/shop/default-dough-room.ts'
import type { DoughRoom } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import * as limits from '../../../../shared-core/shop/set-up-limits.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { DegreesField } from '../fields/degrees-field.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField, TickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { WeightField } from '../fields/weight-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { Wrong } from './wrong.tsx'

/** How the dough room works: its hours, hands and scale, and the warmth that is assumed where nobody has read any. */
export function DoughRoomPart(props: SetUpProps) {
  const { draft, say, misfits } = props
  const set = changeTo(props, 'doughRoom')
  const room = draft.doughRoom
  if (room === null) {
    return (
      <p>
        <button type="button" class="desk-button" onClick={() => set(defaultDoughRoom(draft.profile))}>
          {say.dough.begin}
        </button>
      </p>
    )
  }
  const fields = { parts: props, room, set }
  return (
    <>
      <HoursFields {...fields} />
      <HandsFields {...fields} />
      <ScaleFields {...fields} />
      <h3>{say.dough.sections.warmth}</h3>
      <WarmthFields {...fields} />
      <Wrong misfits={misfits.filter(({ entity }) => entity === 'doughRoom')} say={say} />
      <div class="setup-acts">
        <button type="button" onClick={() => set(null)}>
          {say.form.leaveUnsaid}
        </button>
      </div>
    </>
  )
}

interface RoomFieldsProps {
  readonly parts: SetUpProps
  readonly room: DoughRoom
  readonly set: (room: DoughRoom) => void
}

function HoursFields({ parts, room, set }: RoomFieldsProps) {
  const { say } = parts
  return (
    <div class="setup-columns">
      {(['fromMinute', 'coolerByMinute'] as const).map((field) => (
        <ClockField
          key={field}
          label={say.fields.doughRoom[field]}
          minute={room[field]}
          say={say}
          onChange={(minute) => set({ ...room, [field]: minute })}
        />
      ))}
    </div>
  )
}

function HandsFields({ parts, room, set }: RoomFieldsProps) {
  const { say } = parts
  const { doughRoom: labels } = say.fields
  return (
    <div class="setup-columns">
      <NumberField
        label={labels.handPiecesPerHour}
        value={room.handPiecesPerHour}
        min={1}
        max={limits.HAND_PIECES_MAX}
        step={10}
        say={say}
        onChange={(handPiecesPerHour) => set({ ...room, handPiecesPerHour })}
      />
      <NumberField
        label={labels.rollers}
        value={room.rollers}
        min={1}
        max={limits.ROLLERS_MAX}
        step={1}
        say={say}
        onChange={(rollers) => set({ ...room, rollers })}
      />
      {CAPACITIES.map(({ field, begin, max, step }) => (
        <OptionalField
          key={field}
          label={labels[field]}
          value={room[field]}
          begin={begin}
          say={say}
          onChange={(value) => set({ ...room, [field]: value })}
        >
          {(value) => (
            <NumberField
              label={labels[field]}
              value={value}
              min={1}
              max={max}
              step={step}
              say={say}
              onChange={(next) => set({ ...room, [field]: next })}
            />
          )}
        </OptionalField>
      ))}
    </div>
  )
}

const CAPACITIES = [
  { field: 'dividerPiecesPerHour', begin: 3_000, max: limits.DIVIDER_PIECES_MAX, step: 100 },
  { field: 'proofTrays', begin: 40, max: limits.COOLER_TRAYS_MAX, step: 1 },
] as const

function ScaleFields({ parts, room, set }: RoomFieldsProps) {
  const { draft, say } = parts
  const { doughRoom: labels } = say.fields
  const formulas = inUse(draft.formulas)
  return (
    <>
      <WeightField
        label={labels.scaleStep}
        value={room.scaleStep}
        say={say}
        onChange={(scaleStep) => set({ ...room, scaleStep })}
      />
      <PickField
        label={labels.flourIn}
        options={(['none', 'halfBags', 'bags'] as const).map((value) => ({ value, label: say.dough.flourIn[value] }))}
        value={room.flourIn}
        onChange={(flourIn) => set({ ...room, flourIn })}
      />
      {room.flourIn !== 'none' && (
        <>
          <PickField
            label={labels.surplusTo}
            options={[
              { value: '', label: say.form.notSaid },
              ...formulas.map(({ id, name }) => ({ value: id as string, label: name })),
            ]}
            value={room.surplusTo ?? ''}
            onChange={(id) => set({ ...room, surplusTo: formulas.find((one) => one.id === id)?.id ?? null })}
          />
          <p class="setup-hint">{say.dough.hints.surplusTo}</p>
        </>
      )}
    </>
  )
}

function WarmthFields({ parts, room, set }: RoomFieldsProps) {
  const { draft, words, say } = parts
  const { doughRoom: labels } = say.fields
  return (
    <>
      <div class="setup-columns">
        {(['roomAt', 'flourAt', 'tapAt', 'hotTapAt'] as const).map((field) => (
          <DegreesField
            key={field}
            label={labels[field]}
            value={room[field]}
            unit={draft.profile.temperature}
            say={say}
            onChange={(value) => set({ ...room, [field]: value })}
          />
        ))}
        <TickField label={labels.hasIce} value={room.hasIce} onChange={(hasIce) => set({ ...room, hasIce })} />
      </div>
      <div class="setup-columns">
        <div>
          <DegreesField
            label={labels.provesAt}
            value={room.provesAt}
            unit={draft.profile.temperature}
            say={say}
            onChange={(provesAt) => set({ ...room, provesAt })}
          />
          <p class="setup-hint">{say.dough.hints.provesAt}</p>
        </div>
        <div>
          <SpanField
            label={labels.coolsIn}
            ms={room.coolsIn}
            minMs={60_000}
            maxMs={limits.COOLS_IN_MS_MAX}
            units={['min', 'h']}
            words={words}
            say={say}
            onChange={(coolsIn) => set({ ...room, coolsIn })}
          />
          <p class="setup-hint">{say.dough.hints.coolsIn}</p>
        </div>
      </div>
    </>
  )
}
