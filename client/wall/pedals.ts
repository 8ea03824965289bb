import type { State } from '../../shared-core/day/state.ts'
import type { StationId } from '../../shared-core/ids.ts'
import { stationId } from '../../shared-core/ids.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { actsForStation } from '../../shared-core/line/acts.ts'
import type { DeviceSettings } from '../live/device-settings.ts'

/** A key may say "coming" instead of doing a station's act. No station can have this id: ids hold no star. */
export const COMING_KEY = stationId('*coming')

/** Stations that some pedal of this screen is tied to, each once. */
export function tiedStations({ keys }: Pick<DeviceSettings, 'keys'>): readonly StationId[] {
  return [...new Set(Object.values(keys))].filter((id) => id !== COMING_KEY)
}

/**
 * The act that a station's pedal does: the first of its own acts, and only while it can be read on the wall. Null:
 * nothing to do there, or what is to do is not on show.
 */
export function pedalAct(
  station: StationId,
  state: State,
  acts: readonly LineActDue[],
  onShow: readonly string[],
): LineActDue | null {
  const found = state.shop?.stations.get(station)
  if (found === undefined) return null
  const [first] = actsForStation(acts, found)
  return first !== undefined && onShow.includes(first.key) ? first : null
}

/** The act that "coming" quiets: the first that is due and not quieted already. */
export function comingAct(
  acts: readonly LineActDue[],
  coming: ReadonlyMap<string, number>,
  nowMs: number,
): LineActDue | null {
  return acts.find((act) => isSounding(act) && act.atMs <= nowMs && (coming.get(act.key) ?? 0) <= nowMs) ?? null
}

/** What is worth a sound: what burns or boils over, and whatever is late. */
export function isSounding({ act, status }: Pick<LineActDue, 'act' | 'status'>): boolean {
  return act === 'lift' || act === 'flip' || act === 'out' || status === 'late'
}
