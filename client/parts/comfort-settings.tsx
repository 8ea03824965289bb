import type { DeviceSettings, ThemeChoice } from '../live/device-settings.ts'
import type { ComfortWords } from '../words/settings.ts'
import { Choice } from './choice.tsx'

export interface ComfortSettingsProps {
  readonly settings: Pick<DeviceSettings, 'theme' | 'textPercent'>
  readonly words: ComfortWords
  readonly onChange: (change: Partial<DeviceSettings>) => void
}

const THEMES: readonly ThemeChoice[] = ['usual', 'light', 'dark', 'clock', 'system']
const PRINTS = { usual: 100, large: 125, largest: 150 } as const
const PRINT_NAMES = ['usual', 'large', 'largest'] as const

/** Light or dark and the size of print, for the settings of any screen. */
export function ComfortSettings({ settings, words, onChange }: ComfortSettingsProps) {
  const print = PRINT_NAMES.find((name) => PRINTS[name] === settings.textPercent) ?? null
  return (
    <>
      <section class="comfort-field">
        <strong>{words.theme}</strong>
        <Choice
          name={words.theme}
          options={THEMES.map((value) => ({ value, label: words.themes[value] }))}
          chosen={settings.theme}
          onChoose={(theme) => onChange({ theme })}
        />
        <p>{words.themeHint}</p>
      </section>
      <section class="comfort-field">
        <strong>{words.print}</strong>
        <Choice
          name={words.print}
          options={PRINT_NAMES.map((value) => ({ value, label: words.prints[value] }))}
          chosen={print}
          onChoose={(value) => onChange({ textPercent: PRINTS[value] })}
        />
        <p>{words.printHint}</p>
      </section>
    </>
  )
}
