import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { KitchenStationId, StationId } from '../../shared-core/ids.ts'
import { stationId } from '../../shared-core/ids.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { actsForStation } from '../../shared-core/line/acts.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { RoomSound } from './sound-figures.ts'

/** A pedal's key may say "coming" instead of doing a station's act. No station can have this id: ids hold no star. */
export const COMING_KEY = stationId('*coming')

/** A pedal or a one-key pad of a kitchen station, beside those of the line; ids hold no star. */
export function kitchenPedal(id: KitchenStationId): StationId {
  return stationId(`*kitchen ${id}`)
}

/** What burns or boils over, and whatever is late; more would be noise. */
export function isWorthASound({ act, status }: Pick<LineActDue, 'act' | 'status'>): boolean {
  return act === 'lift' || act === 'flip' || act === 'out' || status === 'late'
}

/** Which figure an act of the dough room has; null for what waits without one. The end of a bulk sounds as that of a rest. */
export function roomSound({ kind }: Pick<RoomAct, 'kind'>): RoomSound | null {
  switch (kind) {
    case 'mixIns':
    case 'mixerOff':
    case 'restOver':
    case 'fold':
    case 'chill':
      return kind
    case 'bulkOver':
    case 'bulkChillOver':
      return 'restOver'
    default:
      return null
  }
}

/** The act of the dough room that sounds now and that "coming" would quiet; null when none does. */
export function soundingRoomAct(
  acts: readonly RoomAct[],
  coming: ReadonlyMap<string, EpochMs>,
  nowMs: EpochMs,
): RoomAct | null {
  return acts.find((act) => roomSound(act) !== null && act.atMs <= nowMs && (coming.get(act.key) ?? 0) <= nowMs) ?? null
}

/** The act that sounds now and that "coming" would quiet; null when none does. */
export function soundingAct(
  acts: readonly LineActDue[],
  coming: ReadonlyMap<string, EpochMs>,
  nowMs: EpochMs,
): LineActDue | null {
  return acts.find((act) => isWorthASound(act) && act.atMs <= nowMs && (coming.get(act.key) ?? 0) <= nowMs) ?? null
}

/**
 * The act that a station's pedal does: the first of the station's own acts, and only while it can be read on this
 * screen. Null: nothing to do there, or what is to do is not on show.
 */
export function pedalAct(
  station: StationId,
  state: State,
  { acts, onShow }: { readonly acts: readonly LineActDue[]; readonly onShow: ReadonlySet<string> },
): LineActDue | null {
  const found = state.shop?.stations.get(station)
  if (found === undefined) return null
  const [first] = actsForStation(acts, found)
  return first !== undefined && onShow.has(first.key) ? first : null
}
