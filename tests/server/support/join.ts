import { COOKIE } from '../../../server/devices/credentials.ts'
import type { JoinedDevice } from '../../../shared-core/live/devices.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { TestServer } from './start-server.ts'
import { ask } from './start-server.ts'

/** Codes one after the other, so that a test knows them: "000001" is followed by "000002". */
export function codesFrom(first: number): () => string {
  let next = first
  return () => String(next++).padStart(6, '0')
}

export interface JoinedTest {
  readonly id: string
  readonly token: string
  readonly device: JoinedDevice
  /** What its browser sends with every request of a page of ours. */
  readonly headers: Record<string, string>
}

/** A browser that has joined with this code. @throws when it was not let in */
export async function joinedAt(server: TestServer, code: string, headers = {}): Promise<JoinedTest> {
  const asked = await ask(server, '/api/v1/join', { body: { code }, headers })
  const [cookie] = asked.headers['set-cookie'] ?? []
  const token = new RegExp(`^${COOKIE}=([^;]+)`).exec(cookie ?? '')?.[1]
  if (token === undefined) throw new Error(`not let in: ${asked.text}`)
  const { standing } = asked.json as { standing: { device: JoinedDevice } }
  return { id: standing.device.id, token, device: standing.device, headers: browserHeaders(server, token) }
}

export function browserHeaders({ port }: { readonly port: number }, token: string): Record<string, string> {
  return { cookie: `${COOKIE}=${token}`, origin: `http://127.0.0.1:${port}`, host: `127.0.0.1:${port}` }
}

/** One of each way to come in, or not, of one role. */
export interface Faces {
  readonly joined: string
  readonly expired: string
  readonly revoked: string
}

/** Lets a browser in with this role, without the way over HTTP. @returns its token */
export function letIn({ door }: TestServer, role: Role): { readonly id: string; readonly token: string } {
  const { membership } = door
  if (membership === null) throw new Error('an open shop lets in everybody')
  const code = membership.isUnclaimed
    ? membership.codes.terminalCode
    : membership.codes.make({ role, ...UNNAMED })?.code
  const joined = membership.join({ code: code ?? '', name: '', from: 'test', before: null })
  if (joined.kind !== 'joined' || joined.device.role !== role) throw new Error(`not let in as ${role}`)
  return { id: joined.device.id, token: joined.token }
}

const UNNAMED = { name: '', stationId: null }

/** Tokens of three devices of this role: one that holds, one that was not used for too long, one that was shown out. */
export function facesOf(server: TestServer, role: Role): Faces {
  const [joined, expired, revoked] = [letIn(server, role), letIn(server, role), letIn(server, role)]
  const register = server.door.membership?.register
  const record = register?.byId(expired.id)
  if (record != null) register?.save({ ...record, joinedAtMs: epochMs(0), seenAtMs: null })
  server.door.membership?.showOut(revoked.id)
  return { joined: joined.token, expired: expired.token, revoked: revoked.token }
}
