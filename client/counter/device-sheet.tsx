import type { ComponentChildren } from 'preact'
import { DEVICE_PAGE } from '../live/device-page.ts'
import { DEVICE_NAME_MAX } from '../live/device-settings.ts'
import { Choice } from '../parts/choice.tsx'
import { ComfortSettings } from '../parts/comfort-settings.tsx'
import { useTyped } from '../parts/use-typed.ts'
import { settingsWords, versionText } from '../words/settings.ts'
import type { CounterParts } from './counter-screen.tsx'
import { Back } from './small-key.tsx'

export interface DeviceProps extends CounterParts {
  readonly onClose: () => void
}

/** What this screen is called, its language and its size. */
export function DeviceSheet({ store, live, words, onClose }: DeviceProps) {
  const say = settingsWords(words)
  const { settings } = live
  const typedName = useTyped(settings.name, (text) => store.changeSettings({ name: text }))
  return (
    <section class="counter-sheet" role="dialog" aria-label={say.title}>
      <div class="counter-sheet-head">
        <h1>{say.title}</h1>
      </div>
      <div class="counter-fields">
        <Field title={say.name}>
          <input aria-label={say.name} {...typedName} maxLength={DEVICE_NAME_MAX} />
        </Field>
        <Field title={`${say.diagonal} (″)`}>
          <NumberInput
            name={say.diagonal}
            value={settings.diagonalInches}
            onValue={(diagonalInches) => store.changeSettings({ diagonalInches })}
          />
        </Field>
        <Field title={`${say.distance} (m)`}>
          <NumberInput
            name={say.distance}
            value={settings.viewingMetres}
            onValue={(viewingMetres) => store.changeSettings({ viewingMetres })}
          />
        </Field>
      </div>
      <div class="counter-languages">
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
      <ComfortSettings settings={settings} words={say.comfort} onChange={(change) => store.changeSettings(change)} />
      <p class="counter-quiet">
        {words.cautions.aidShort} {versionText(say, live)} <a href={DEVICE_PAGE}>{say.anotherScreen}</a>
      </p>
      <div class="counter-keys">
        <Back label={words.counter.back} onPress={onClose} />
      </div>
    </section>
  )
}

function Field({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <div class="counter-field">
      <span class="counter-quiet" aria-hidden="true">
        {title}
      </span>
      {children}
    </div>
  )
}

interface NumberInputProps {
  readonly name: string
  readonly value: number
  readonly onValue: (value: number) => void
}

/** A value out of range is left as it was. */
function NumberInput({ name, value, onValue }: NumberInputProps) {
  const typed = useTyped(String(value), (text) => onValue(text === '' ? Number.NaN : Number(text)))
  return <input type="number" aria-label={name} inputMode="decimal" step="0.1" {...typed} />
}
