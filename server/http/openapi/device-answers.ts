import * as z from 'zod'

/** What the API answers about devices, as it is described to others. */

const instant = () => z.int().min(0).meta({ description: 'Milliseconds since 1970-01-01T00:00:00Z.' })
const role = () => z.enum(['wall', 'bench', 'counter', 'desk'])
const stationId = () => z.string().nullable()

const device = z.object({
  id: z.string(),
  kind: z
    .enum(['screen', 'script', 'calendar'])
    .meta({ description: 'A browser that joined with a code, or what carries a token.' }),
  name: z.string(),
  role: role(),
  stationId: stationId(),
  joinedAtMs: instant(),
  seenAtMs: instant().nullable().meta({ description: 'When it last asked for anything; null: not yet.' }),
  expiresAtMs: instant().nullable().meta({ description: 'From then on it must join again; null: never.' }),
})

const code = z.object({
  code: z.string().regex(/^\d{6}$/),
  role: role(),
  name: z.string().meta({ description: 'What the device will be called; "": what it calls itself.' }),
  stationId: stationId(),
  expiresAtMs: instant(),
})

const standing = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('open') }),
  z.object({ kind: z.literal('unclaimed') }),
  z.object({ kind: z.literal('unknown'), why: z.enum(['no-token', 'forged', 'revoked', 'expired']) }),
  z.object({ kind: z.literal('joined'), device }),
])

const refusedKind = z.enum([
  ...(['no-token', 'forged', 'revoked', 'expired', 'foreign-host', 'foreign-origin'] as const),
  ...(['wrong-code', 'not-its-role', 'too-many', 'malformed', 'flooding'] as const),
])

export const DEVICE_ANSWERS = {
  Standing: standing,
  Joined: z.object({ standing, page: z.string().meta({ description: 'The page of its role.' }) }),
  Device: device,
  Code: code,
  Devices: z.object({
    devices: z.array(device),
    codes: z.array(code),
    linked: z.array(z.string()).meta({ description: 'Ids of the devices of which a screen is linked now.' }),
  }),
  TokenMade: z.object({ token: z.string().meta({ description: 'Told this once.' }), device }),
  Refused: z.object({
    sinceMs: instant(),
    attempts: z.array(
      z.object({
        kind: refusedKind,
        times: z.int().min(1),
        lastAtMs: instant(),
        lastFrom: z.string().meta({ description: 'The address that the last one came from.' }),
      }),
    ),
  }),
  Copies: z.object({
    folder: z.string(),
    isSameDrive: z.boolean().meta({ description: 'Whether they lie on the drive of the journal itself.' }),
    copy: z
      .object({ seq: z.int().min(0), atMs: instant() })
      .nullable()
      .meta({ description: 'The running copy: its last entry, and when it was last as far on as the journal.' }),
    archives: z.array(
      z.object({ file: z.string(), atMs: instant(), bytes: z.int(), seq: z.int().min(0), hash: z.string() }),
    ),
    trouble: z.string().nullable().meta({ description: 'What went wrong the last time, in a sentence.' }),
  }),
}
