import type { StationId } from '../../shared-core/ids.ts'
import type { DeviceKind, JoinedDevice } from '../../shared-core/live/devices.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

const A_DAY_MS = 86_400_000
/** A screen that nobody used for so long must join again: longer than a shop that closes for the winter. */
export const UNUSED_MS_MAX = 180 * A_DAY_MS

/** One device as the register keeps it. */
export interface DeviceRecord {
  readonly id: string
  readonly kind: DeviceKind
  readonly tokenHash: string
  /** "" until it has told one. */
  readonly name: string
  readonly role: Role
  readonly stationId: StationId | null
  readonly joinedAtMs: EpochMs
  readonly seenAtMs: EpochMs | null
  /** Of a script's or a calendar's token; null: without an end. A screen's follows from when it was seen. */
  readonly scriptEndsAtMs: EpochMs | null
  /** Its token is worth nothing any more. `itself`: it gave it back. */
  readonly ended: { readonly by: 'desk' | 'itself'; readonly atMs: EpochMs } | null
}

/** From when on its token is not taken any more; null: never. */
export function expiryOf({ kind, scriptEndsAtMs, seenAtMs, joinedAtMs }: DeviceRecord): EpochMs | null {
  return kind === 'screen' ? epochMs(Math.max(seenAtMs ?? 0, joinedAtMs) + UNUSED_MS_MAX) : scriptEndsAtMs
}

export function isExpired(record: DeviceRecord, nowMs: EpochMs): boolean {
  const expiresAtMs = expiryOf(record)
  return expiresAtMs !== null && nowMs >= expiresAtMs
}

/** Whether its token lets it in. */
export function isLive(record: DeviceRecord, nowMs: EpochMs): boolean {
  return record.ended === null && !isExpired(record, nowMs)
}

/** As it is told to others: without anything secret. */
export function asJoined(record: DeviceRecord): JoinedDevice {
  const { id, kind, name, role, stationId, joinedAtMs, seenAtMs } = record
  return { id, kind, name, role, stationId, joinedAtMs, seenAtMs, expiresAtMs: expiryOf(record) }
}
