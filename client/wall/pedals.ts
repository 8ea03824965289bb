import type { StationId } from '../../shared-core/ids.ts'
import type { DeviceSettings } from '../live/device-settings.ts'
import { COMING_KEY } from '../parts/calls.ts'

/** Stations that some pedal of this screen is tied to, each once. */
export function tiedStations({ keys }: Pick<DeviceSettings, 'keys'>): readonly StationId[] {
  return [...new Set(Object.values(keys))].filter((id) => id !== COMING_KEY)
}
