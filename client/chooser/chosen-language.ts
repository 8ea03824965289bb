import type { Role } from '../../shared-core/live/protocol.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { changedSettings, loadSettings, saveSettings } from '../live/device-settings.ts'
import type { SavedText } from '../live/saved-text.ts'

export const ROLES: readonly Role[] = ['wall', 'bench', 'counter', 'desk']
const KEY = 'boilboard.chooser.language'

/** The language chosen here before, else the browser's first that we have, else English. */
export function firstLanguage(saved: SavedText, preferred: readonly string[]): Language {
  const chosen = saved.read(KEY)
  if (chosen === 'en' || chosen === 'es') return chosen
  const known = preferred.map((tag) => tag.slice(0, 2).toLowerCase()).find((tag) => tag === 'en' || tag === 'es')
  return known === 'es' ? 'es' : 'en'
}

/** A choice here is the device's: every screen that is opened on it speaks this language. */
export function chooseLanguage(saved: SavedText, language: Language): void {
  saved.write(KEY, language)
  for (const role of ROLES) saveSettings(saved, changedSettings(loadSettings(saved, role), { language }))
}
