import * as z from 'zod'
import { stationId } from '../../shared-core/ids.ts'
import { DEVICE_NAME_MAX, STATION_ID } from '../devices/device.ts'

/** What comes in about devices; the API's document is made of the same. */

const role = z.enum(['wall', 'bench', 'counter', 'desk'])
const name = z.string().trim().max(DEVICE_NAME_MAX)
const fullName = name.min(1)
const station = z.string().regex(STATION_ID).transform(stationId).nullable()
/** A till's maker may ask for years; ten are as good as for ever. */
const DAYS_MAX = 3_650

/** Digits as people type them: "123 456". */
export const joinSchema = z.object({
  code: z
    .string()
    .max(20)
    .transform((typed) => typed.replaceAll(/[\s-]/g, ''))
    .pipe(z.string().regex(/^\d{6}$/)),
  name: name.optional(),
})

export const newCodeSchema = z.object({ role, name: name.optional(), stationId: station.optional() })

export const newTokenSchema = z.object({
  name: fullName,
  role,
  days: z.int().min(1).max(DAYS_MAX).nullable().meta({ description: 'Null: until the desk ends it.' }),
})

export const deviceChangeSchema = z.object({
  name: fullName.optional(),
  role: role.optional(),
  stationId: station.optional(),
})

/** What would be right, for whoever sent something else. */
export const RIGHT = {
  join: 'Send { "code": "123456", "name"?: "Tablet at the oven" }: six digits, and a name of at most 40 characters.',
  newCode: 'Send { "role": "wall", "bench", "counter" or "desk", "name"?, "stationId"? }.',
  newToken: `Send { "name": "Till", "role": "counter", "days": 365 }: a name of 1 to 40 characters, a role, and 1 to ${DAYS_MAX} days or null.`,
  change: 'Send at least one of "name" (1 to 40 characters), "role" (wall, bench, counter, desk) and "stationId".',
} as const
