import { pickableCoolers, pickableMixers } from '../../../../shared-core/shop/pickable-equipment.ts'
import {
  COOLER_TRAYS_MAX,
  NAME_MAX,
  WASH_MS_MAX,
  WEIGHT_THOUSANDTHS_MAX,
} from '../../../../shared-core/shop/set-up-limits.ts'
import type { Mixer } from '../../../../shared-core/shop/shop.ts'
import { NumberField } from '../fields/number-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { TemperatureField } from '../fields/temperature-field.tsx'
import { TextField } from '../fields/text-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { Wrong } from './wrong.tsx'

const NONE = 'none'

/** Mixer and cooler: picked by size, then corrected; or left unsaid. */
export function RoomPart(props: SetUpProps) {
  const { say, misfits } = props
  return (
    <>
      <h3>{say.entity('mixer', null)}</h3>
      <MixerForm {...props} />
      <Wrong misfits={misfits.filter(({ entity }) => entity === 'mixer')} say={say} />
      <h3>{say.entity('cooler', null)}</h3>
      <CoolerForm {...props} />
    </>
  )
}

function MixerForm(props: SetUpProps) {
  const { draft, say } = props
  const { mixer, profile } = draft
  const set = changeTo(props, 'mixer')
  const kinds = pickableMixers(profile.language, profile.weight)
  const like = kinds.find(({ part }) => mixer !== null && isSame(part, mixer))
  return (
    <>
      <PickField
        label={say.form.pickOne}
        options={[
          { value: NONE, label: say.form.notSaid },
          ...kinds.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={mixer === null ? NONE : (like?.id ?? null)}
        onChange={(id) => set(kinds.find((one) => one.id === id)?.part ?? null)}
      />
      {mixer !== null && (
        <div class="setup-columns">
          <MixerNameFields parts={props} mixer={mixer} set={set} />
          {(['leastFlour', 'mostFlour'] as const).map((field) => (
            <NumberField
              key={field}
              label={say.fields.mixer[field]}
              value={mixer[field].thousandths / 1_000}
              min={0.001}
              max={WEIGHT_THOUSANDTHS_MAX / 1_000}
              step={1}
              decimals={3}
              unit={say.options.weightUnit[mixer[field].unit]}
              say={say}
              onChange={(amount) =>
                set({ ...mixer, [field]: { ...mixer[field], thousandths: Math.round(amount * 1_000) } })
              }
            />
          ))}
        </div>
      )}
    </>
  )
}

interface MixerNameProps {
  readonly parts: SetUpProps
  readonly mixer: Mixer
  readonly set: (mixer: Mixer) => void
}

function MixerNameFields({ parts, mixer, set }: MixerNameProps) {
  const { words, say } = parts
  return (
    <>
      <TextField
        label={say.fields.mixer.name}
        value={mixer.name}
        most={NAME_MAX.mixer}
        rule={say.form.nameRule(NAME_MAX.mixer)}
        onChange={(name) => set({ ...mixer, name })}
      />
      <SpanField
        label={say.fields.mixer.washMs}
        ms={mixer.washMs}
        minMs={0}
        maxMs={WASH_MS_MAX}
        units={['min']}
        words={words}
        say={say}
        onChange={(washMs) => set({ ...mixer, washMs })}
      />
    </>
  )
}

/** By what they take: its name and its wash are the shop's to say. */
function isSame(one: Mixer, other: Mixer): boolean {
  return (['leastFlour', 'mostFlour'] as const).every(
    (field) => one[field].thousandths === other[field].thousandths && one[field].unit === other[field].unit,
  )
}

function CoolerForm(props: SetUpProps) {
  const { draft, say } = props
  const { cooler, profile } = draft
  const set = changeTo(props, 'cooler')
  const kinds = pickableCoolers(profile.language, profile.temperature)
  const like = kinds.find(({ part }) => part.trays === cooler?.trays)
  return (
    <>
      <PickField
        label={say.form.pickOne}
        options={[
          { value: NONE, label: say.form.notSaid },
          ...kinds.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={cooler === null ? NONE : (like?.id ?? null)}
        onChange={(id) => set(kinds.find((one) => one.id === id)?.part ?? null)}
      />
      {cooler !== null && (
        <div class="setup-columns">
          <NumberField
            label={say.fields.cooler.trays}
            value={cooler.trays}
            min={1}
            max={COOLER_TRAYS_MAX}
            step={1}
            say={say}
            onChange={(trays) => set({ ...cooler, trays })}
          />
          <TemperatureField
            label={say.fields.cooler.keepsAt}
            value={cooler.keepsAt}
            begin={{ degrees: profile.temperature === 'F' ? 38 : 4, unit: profile.temperature }}
            unit={profile.temperature}
            say={say}
            onChange={(keepsAt) => set({ ...cooler, keepsAt })}
          />
        </div>
      )}
    </>
  )
}
