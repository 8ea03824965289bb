import type { ThemeChoice } from '../../live/device-settings.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { useTyped } from '../../parts/use-typed.ts'
import { settingsWords } from '../../words/settings.ts'
import type { DeskParts } from '../desk-screen.tsx'

const THEMES: readonly ThemeChoice[] = ['usual', 'light', 'dark', 'clock', 'system']
const PRINTS = { usual: 100, large: 125, largest: 150 } as const
const PRINT_NAMES = ['usual', 'large', 'largest'] as const

/** The desk's own name, its light and its print. */
export function ThisScreen({ store, live, words }: DeskParts) {
  const { screens: say } = words.desk
  const { comfort } = settingsWords(words)
  const { name, theme, textPercent } = live.settings
  const typedName = useTyped(name, (text) => store.changeSettings({ name: text }))
  const print = PRINT_NAMES.find((one) => PRINTS[one] === textPercent) ?? 'usual'
  return (
    <div class="desk-form">
      <label class="desk-field">
        <span>{say.name}</span>
        <input {...typedName} placeholder={say.nameHint} maxLength={DEVICE_NAME_MAX} />
      </label>
      <label class="desk-field">
        <span>{comfort.theme}</span>
        <select
          value={theme}
          onChange={(event) => {
            const chosen = THEMES.find((one) => one === event.currentTarget.value)
            if (chosen !== undefined) store.changeSettings({ theme: chosen })
          }}
        >
          {THEMES.map((one) => (
            <option key={one} value={one}>
              {comfort.themes[one]}
            </option>
          ))}
        </select>
      </label>
      <label class="desk-field">
        <span>{comfort.print}</span>
        <select
          value={print}
          onChange={(event) => {
            const chosen = PRINT_NAMES.find((one) => one === event.currentTarget.value)
            if (chosen !== undefined) store.changeSettings({ textPercent: PRINTS[chosen] })
          }}
        >
          {PRINT_NAMES.map((one) => (
            <option key={one} value={one}>
              {comfort.prints[one]}
            </option>
          ))}
        </select>
      </label>
    </div>
  )
}
