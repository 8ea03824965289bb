import * as z from 'zod'
import { deviceId, stationId } from '../../shared-core/ids.ts'
import type { DeviceHello, Role } from '../../shared-core/live/protocol.ts'

export const ROLES: readonly Role[] = ['wall', 'bench', 'counter', 'desk']
export const STATION_ID = /^[a-z0-9][a-z0-9.-]{0,63}$/
const DEVICE_ID = STATION_ID
/** Long enough for "Tablet at the oven, left"; shown whole on the desk. */
export const DEVICE_NAME_MAX = 40

const deviceSchema = z.object({
  deviceId: z.string().regex(DEVICE_ID).transform(deviceId),
  name: z.string().trim().min(1).max(DEVICE_NAME_MAX),
  role: z.enum(['wall', 'bench', 'counter', 'desk']),
  stationId: z.union([z.null(), z.string().regex(STATION_ID).transform(stationId)]),
})

/** A device as it introduces itself; null when it does not make sense. */
export function parseDevice(raw: unknown): DeviceHello | null {
  const parsed = deviceSchema.safeParse(raw)
  return parsed.success ? parsed.data : null
}
