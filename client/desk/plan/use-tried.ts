import { useEffect, useState } from 'preact/hooks'
import type { Plan, PlanFigures } from '../../../shared-core/live/plan.ts'
import { call } from '../call.ts'
import type { Wishes } from './wishes.ts'

export type Tried =
  /** `last`: as it was tried before the newest touch. */
  | { readonly kind: 'waiting'; readonly last: Plan | null }
  | { readonly kind: 'failed' }
  /** `free`: of the day with nothing set and nothing left free. */
  | { readonly kind: 'tried'; readonly plan: Plan; readonly free: PlanFigures }

/** A row of arrow keys asks once. */
const WAIT_MS = 250

/**
 * What the day's plan becomes with these wishes, as the server reckons it; nothing is written.
 * @param wishes null: nothing is tried
 */
export function useTried(date: string, wishes: Wishes | null): Tried {
  const body = wishes === null ? null : JSON.stringify(bodyOf(date, wishes))
  const [got, setGot] = useState<{ readonly body: string; readonly tried: Tried } | null>(null)
  useEffect(() => {
    if (body === null) return setGot(null)
    let isCurrent = true
    const timer = window.setTimeout(async () => {
      const done = await call<TriedJson>('POST', '/api/v1/plan/try', JSON.parse(body))
      if (isCurrent) setGot({ body, tried: triedOf(done.kind === 'done' ? done.value : null) })
    }, WAIT_MS)
    return () => {
      isCurrent = false
      window.clearTimeout(timer)
    }
  }, [body])
  if (got !== null && got.body === body) return got.tried
  return { kind: 'waiting', last: body !== null && got?.tried.kind === 'tried' ? got.tried.plan : null }
}

interface TriedJson {
  /** Null: nothing is known of what will be asked for. */
  readonly plan: Plan | null
  readonly free: PlanFigures | null
}

function triedOf(json: TriedJson | null): Tried {
  if (json === null || json.plan === null || json.free === null) return { kind: 'failed' }
  return { kind: 'tried', plan: json.plan, free: json.free }
}

function bodyOf(date: string, { pins, forbids }: Wishes): object {
  return { date, loads: pins.map(({ shelfId, inAtMs, lines }) => ({ shelfId, inAtMs, lines })), forbids }
}
