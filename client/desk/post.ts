import type { Ask, Params, Refusal } from '../../shared-core/day/answers.ts'
import { ASK_CODES, REFUSAL_CODES } from '../../shared-core/day/answers.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'

/** What became of something that was sent to the shop's API. */
export type Outcome =
  /** `seq`: of its entry in the journal. */
  | { readonly kind: 'taken'; readonly seq: number }
  | { readonly kind: 'ask'; readonly asks: readonly Ask[] }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  /** Each mistake with its place. */
  | { readonly kind: 'mistakes'; readonly problems: readonly Problem[] }
  /** The server said no in a way of its own; `detail` is its sentence. */
  | { readonly kind: 'failed'; readonly detail: string }
  | { readonly kind: 'no-contact' }

export interface Posting {
  readonly address: string
  readonly body: string
  readonly type: 'application/json' | 'text/csv'
  /** Questions that were answered with yes. */
  readonly confirm: readonly string[]
  readonly deviceId: string
  readonly deviceName: string
}

/** Sends a file or list to the shop's API as this desk. Never throws. */
export async function post({ address, body, type, confirm, deviceId, deviceName }: Posting): Promise<Outcome> {
  const query = confirm.length === 0 ? '' : `?confirm=${confirm.join(',')}`
  try {
    const response = await fetch(`${address}${query}`, {
      method: 'POST',
      headers: {
        'content-type': type,
        'x-device-id': deviceId,
        'x-device-name': headerText(deviceName),
        'x-device-role': 'desk',
      },
      body,
    })
    return outcomeOf(await response.json())
  } catch {
    return { kind: 'no-contact' }
  }
}

/** A header takes plain letters only; a name with others is told without them. */
function headerText(name: string): string {
  const plain = name.replace(/[^\x20-\x7e]/g, '').trim()
  return plain === '' ? 'desk' : plain
}

/** The server's answer, whichever of its two forms it has: an answer to a command, or problem details (RFC 9457). */
export function outcomeOf(body: unknown): Outcome {
  const answer = isObject(body) && isObject(body.answer) ? body.answer : body
  if (!isObject(answer)) return { kind: 'failed', detail: '' }
  if (answer.kind === 'taken') return { kind: 'taken', seq: typeof answer.seq === 'number' ? answer.seq : 0 }
  if (answer.kind === 'ask' && Array.isArray(answer.asks)) return { kind: 'ask', asks: answer.asks.flatMap(askIn) }
  if (answer.kind === 'refused') {
    const [refusal] = refusalIn(answer.refusal)
    return refusal === undefined ? { kind: 'failed', detail: '' } : { kind: 'refused', refusal }
  }
  if (Array.isArray(answer.errors)) return { kind: 'mistakes', problems: answer.errors.flatMap(problemIn) }
  return { kind: 'failed', detail: typeof answer.detail === 'string' ? answer.detail : '' }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function askIn(raw: unknown): Ask[] {
  const code = ASK_CODES.find((one) => isObject(raw) && raw.code === one)
  return code === undefined ? [] : [{ code, params: paramsIn(raw) }]
}

function refusalIn(raw: unknown): Refusal[] {
  const code = REFUSAL_CODES.find((one) => isObject(raw) && raw.code === one)
  return code === undefined ? [] : [{ code, params: paramsIn(raw) }]
}

function paramsIn(raw: unknown): Params {
  if (!isObject(raw) || !isObject(raw.params)) return {}
  return Object.fromEntries(
    Object.entries(raw.params).filter((pair): pair is [string, string | number | null] => {
      const [, value] = pair
      return value === null || typeof value === 'string' || typeof value === 'number'
    }),
  )
}

function problemIn(raw: unknown): Problem[] {
  if (!isObject(raw)) return []
  const { path, wrong, right } = raw
  return typeof path === 'string' && typeof wrong === 'string' && typeof right === 'string'
    ? [{ path, wrong, right }]
    : []
}
