import { COOKIE } from '../../../server/devices/credentials.ts'
import type { JoinedDevice } from '../../../shared-core/live/devices.ts'
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
