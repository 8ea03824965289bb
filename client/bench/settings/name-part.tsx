import { DEVICE_PAGE } from '../../live/device-page.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { Choice } from '../../parts/choice.tsx'
import { useTyped } from '../../parts/use-typed.ts'
import type { SettingsPart } from './settings-sheet.tsx'

/** What this tablet is called, and its language. */
export function NamePart({ store, live, say }: SettingsPart) {
  const { settings } = live
  const typedName = useTyped(settings.name, (text) => store.changeSettings({ name: text }))
  return (
    <>
      <label class="bench-field">
        <strong>{say.name}</strong>
        <input class="bench-input" {...typedName} maxLength={DEVICE_NAME_MAX} />
        <span class="bench-quiet">{say.nameHint}</span>
      </label>
      <div class="bench-field">
        <strong>{say.language}</strong>
        <Choice
          name={say.language}
          options={[
            { value: 'shop', label: say.asShop },
            { value: 'en', label: 'English' },
            { value: 'es', label: 'Español' },
          ]}
          chosen={settings.language ?? 'shop'}
          onChoose={(value) => store.changeSettings({ language: value === 'shop' ? null : value })}
        />
      </div>
      <p>
        <a class="bench-link" href={DEVICE_PAGE}>
          {say.anotherScreen}
        </a>
      </p>
    </>
  )
}
