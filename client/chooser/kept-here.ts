import { loadSettings } from '../live/device-settings.ts'
import { deviceIdKey } from '../live/queue-store.ts'
import type { SavedText } from '../live/saved-text.ts'
import { ROLES } from './chosen-language.ts'

/** What this device called itself before it joined; "" when it had no name, or several. */
export function savedName(saved: SavedText): string {
  const names = new Set(ROLES.map((role) => loadSettings(saved, role).name).filter((name) => name !== ''))
  const [name = ''] = names
  return names.size === 1 ? name : ''
}

/** Taps of any screen of this device that no server has answered. */
export function unsentTaps(saved: SavedText): number {
  return ROLES.reduce((sum, role) => sum + saved.keys(`boilboard.${role}.queue.`).length, 0)
}

/**
 * A browser that lost its key joins as another device, and the ids that its screens made belong to the one that it was:
 * new ones are made. Taps that wait keep their own ids and go out all the same.
 */
export function forgetIds(saved: SavedText): void {
  for (const role of ROLES) saved.remove(deviceIdKey(role))
}
