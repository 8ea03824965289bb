import * as z from 'zod'
import type { Command } from '../../shared-core/day/commands.ts'
import type { FromScreen } from '../../shared-core/live/protocol.ts'
import { parseDevice } from '../devices/device.ts'

const text = z.string().max(200)
const helloSchema = z.object({
  type: z.literal('hello'),
  protocol: z.number().int(),
  foldVersion: z.number().int(),
  buildId: text,
  device: z.unknown(),
  isRenamed: z.boolean(),
  afterSeq: z.union([z.null(), z.number().int().min(0)]),
  journalId: z.union([z.null(), text]),
  course: z.union([z.null(), text]),
})
const otherSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('commands'), commands: z.array(z.unknown()) }),
  z.object({ type: z.literal('probe'), t0: z.number() }),
  z.object({ type: z.literal('coming'), actKey: text }),
])

export type ParsedMessage =
  | { readonly ok: true; readonly message: FromScreen }
  | { readonly ok: false; readonly isHello: boolean }

/** A screen's message off the wire. Its commands are read one by one by the room, as each is answered by name. */
export function parseFromScreen(raw: unknown): ParsedMessage {
  // A message is read once, by its type: making up what is wrong with it as a hello costs more than reading it.
  if (isHello(raw)) return parseHello(raw)
  const other = otherSchema.safeParse(raw)
  if (!other.success) return { ok: false, isHello: false }
  if (other.data.type !== 'commands') return { ok: true, message: other.data }
  return { ok: true, message: { type: 'commands', commands: other.data.commands as Command[] } }
}

function parseHello(raw: unknown): ParsedMessage {
  const hello = helloSchema.safeParse(raw)
  const device = hello.success ? parseDevice(hello.data.device) : null
  if (!hello.success || device === null) return { ok: false, isHello: true }
  return { ok: true, message: { ...hello.data, device } }
}

function isHello(raw: unknown): boolean {
  return typeof raw === 'object' && raw !== null && 'type' in raw && raw.type === 'hello'
}
