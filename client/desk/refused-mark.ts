import { useEffect } from 'preact/hooks'
import type { RefusedAttempts } from '../../shared-core/live/devices.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { SavedText } from '../live/saved-text.ts'
import { browserText, readJson } from '../live/saved-text.ts'
import type { DeskPlace } from './place.ts'
import { useGot } from './use-got.ts'

/** What the server did not let in, since it began to count. */
export interface Refused {
  readonly sinceMs: EpochMs
  readonly attempts: readonly RefusedAttempts[]
}

const EVERY_MS = 60_000
/** A mistyped code and an old tab are no news. */
const MANY = 5
const KEY = 'boilboard.desk.refused-seen'

/**
 * How many were refused since somebody last looked at the desk's list of them; 0 while that is few.
 * @param place where the desk is: whoever is at the screens looks at the list
 */
export function useRefusedMark(nowMs: EpochMs, place: DeskPlace): number {
  const got = useGot<Refused>('/api/v1/refused', Math.floor(nowMs / EVERY_MS))
  const refused = got.kind === 'got' ? got.value : null
  const isLooking = place === 'screens'
  useEffect(() => {
    if (isLooking && refused !== null) rememberSeen(browserText(), refused)
  }, [isLooking, refused])
  const unseen = refused === null || isLooking ? 0 : unseenIn(browserText(), refused)
  return unseen >= MANY ? unseen : 0
}

export function rememberSeen(saved: SavedText, refused: Refused): void {
  saved.write(KEY, JSON.stringify({ sinceMs: refused.sinceMs, times: total(refused) }))
}

/** How many came after what was seen. A server that was started anew counts anew. */
export function unseenIn(saved: SavedText, refused: Refused): number {
  const seen = readJson(saved, KEY)
  const isOfNow = isSeen(seen) && seen.sinceMs === refused.sinceMs
  return Math.max(0, total(refused) - (isOfNow ? seen.times : 0))
}

function total({ attempts }: Refused): number {
  return attempts.reduce((sum, { times }) => sum + times, 0)
}

function isSeen(value: unknown): value is { readonly sinceMs: number; readonly times: number } {
  if (typeof value !== 'object' || value === null || !('sinceMs' in value) || !('times' in value)) return false
  return typeof value.times === 'number'
}
