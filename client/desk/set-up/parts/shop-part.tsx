import { NAME_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Language } from '../../../../shared-core/shop/shop.ts'
import { PickField } from '../fields/pick-field.tsx'
import { TextField } from '../fields/text-field.tsx'
import { inLanguage } from '../picks.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { ZoneField } from './zone-field.tsx'

const LANGUAGES: readonly { readonly value: Language; readonly label: string }[] = [
  { value: 'en', label: 'English' },
  { value: 'es', label: 'Español' },
]

/** Name, place, language, units, clock. */
export function ShopPart(props: SetUpProps) {
  const { draft, say, change } = props
  const { profile } = draft
  const set = changeTo(props, 'profile')
  const { fields, options } = say
  return (
    <>
      <PickField
        label={fields.profile.language}
        options={LANGUAGES}
        value={profile.language}
        onChange={(language) => change(inLanguage(draft, language))}
      />
      <TextField
        label={fields.profile.name}
        value={profile.name}
        most={NAME_MAX.shop}
        rule={say.form.nameRule(NAME_MAX.shop)}
        onChange={(name) => set({ ...profile, name })}
      />
      <ZoneField
        label={fields.profile.zone}
        zone={profile.zone}
        say={say}
        onChange={(zone) => set({ ...profile, zone })}
      />
      <div class="setup-columns">
        <PickField
          label={fields.profile.temperature}
          options={(['F', 'C'] as const).map((value) => ({ value, label: options.temperature[value] }))}
          value={profile.temperature}
          onChange={(temperature) => set({ ...profile, temperature })}
        />
        <PickField
          label={fields.profile.weight}
          options={(['lb-oz', 'g'] as const).map((value) => ({ value, label: options.weight[value] }))}
          value={profile.weight}
          onChange={(weight) => set({ ...profile, weight })}
        />
        <PickField
          label={fields.profile.clock}
          options={([12, 24] as const).map((value) => ({ value, label: options.clock[value] }))}
          value={profile.clock}
          onChange={(clock) => set({ ...profile, clock })}
        />
      </div>
    </>
  )
}
