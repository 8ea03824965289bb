import { stationId } from '../../../../shared-core/ids.ts'
import type { Station } from '../../../../shared-core/shop/shop.ts'
import { LINE_ACTS } from '../../../../shared-core/shop/stages.ts'
import { ManyField, PickField } from '../fields/pick-field.tsx'
import { STATIONS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { presetOf, TAP_PRESETS, withPreset } from '../taps.ts'
import { ListPart } from './list-part.tsx'

const NEW: Station = { id: stationId('new'), name: '', order: 0, acts: [], retired: false }

/** Who taps what, as one choice: all that the steps ask. */
export function TapPresets({ draft, say, change }: SetUpProps) {
  const preset = presetOf(draft)
  const shown = preset === 'own' ? ([...TAP_PRESETS, 'own'] as const) : TAP_PRESETS
  return (
    <PickField
      label={say.guide.tapsTitle}
      isTall
      options={shown.map((value) => ({
        value,
        label: say.guide.taps[value].name,
        hint: say.guide.taps[value].hint,
      }))}
      value={preset}
      onChange={(chosen) => {
        if (chosen !== 'own') change(withPreset(draft, chosen))
      }}
    />
  )
}

export function StationsPart(props: SetUpProps) {
  const { say, words } = props
  return (
    <>
      <TapPresets {...props} />
      <h3>{say.form.byStation}</h3>
      <ListPart kind={STATIONS} parts={props} like={NEW} line={({ acts }) => acts.map(words.acts.verb).join(', ')}>
        {(station, set) => (
          <ManyField
            label={say.fields.station.acts}
            options={LINE_ACTS.map((value) => ({ value, label: words.acts.verb(value) }))}
            values={station.acts}
            onChange={(acts) => set({ ...station, acts })}
          />
        )}
      </ListPart>
    </>
  )
}
