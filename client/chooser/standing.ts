import type { Standing } from '../../shared-core/live/devices.ts'

/** Who this device is to the shop, as far as it is known here. */
export type Seen =
  | { readonly kind: 'asking' }
  | { readonly kind: 'no-contact' }
  | { readonly kind: 'known'; readonly standing: Standing }

/** What became of a code. */
export type Joining =
  | { readonly kind: 'joined'; readonly page: string }
  | { readonly kind: 'wrong' }
  /** `waitS`: when to try again; null: the server did not say. */
  | { readonly kind: 'too-many'; readonly waitS: number | null }
  /** The server said no in a way of its own; `detail` is its sentence. */
  | { readonly kind: 'failed'; readonly detail: string }
  | { readonly kind: 'no-contact' }

/** Never throws: whatever goes wrong on the way is no contact. */
export async function askStanding(): Promise<Seen> {
  try {
    const response = await fetch('/api/v1/me')
    return response.ok ? { kind: 'known', standing: await response.json() } : { kind: 'no-contact' }
  } catch {
    return { kind: 'no-contact' }
  }
}

/** @param code six digits @param name what the device calls itself; "" when it has no name. Never throws. */
export async function join(code: string, name: string): Promise<Joining> {
  try {
    const response = await fetch('/api/v1/join', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(name === '' ? { code } : { code, name }),
    })
    if (response.status === 403) return { kind: 'wrong' }
    if (response.status === 429) return { kind: 'too-many', waitS: secondsIn(response.headers.get('retry-after')) }
    const body: unknown = await response.json()
    if (response.ok && isRecord(body) && typeof body.page === 'string') return { kind: 'joined', page: body.page }
    return { kind: 'failed', detail: isRecord(body) && typeof body.detail === 'string' ? body.detail : '' }
  } catch {
    return { kind: 'no-contact' }
  }
}

/** @returns whether the server heard it */
export async function leave(): Promise<boolean> {
  try {
    return (await fetch('/api/v1/leave', { method: 'POST' })).ok
  } catch {
    return false
  }
}

/** Retry-After in its form of seconds (RFC 9110, section 10.2.3). */
function secondsIn(header: string | null): number | null {
  return header !== null && /^\d+$/.test(header) ? Number(header) : null
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
