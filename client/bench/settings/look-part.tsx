import { ComfortSettings } from '../../parts/comfort-settings.tsx'
import type { SettingsPart } from './settings-sheet.tsx'

/** Light or dark, and the size of print. */
export function LookPart({ store, live, say }: SettingsPart) {
  return (
    <ComfortSettings settings={live.settings} words={say.comfort} onChange={(change) => store.changeSettings(change)} />
  )
}
