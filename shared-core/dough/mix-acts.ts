import type { EpochMs } from '../units.ts'
import { epochMs, later, spanMs } from '../units.ts'
import type { Mix } from './mix.ts'
import type { RoomActParts } from './room-acts.ts'

/** How long after its time mixing, or a fold, counts as late (common practice, no source). */
const LATE_AFTER_MS = spanMs(15, 'min')
/** Mix-ins weighed before are called for so long: with dough on the hands nobody taps that they went in. */
const MIX_INS_CALLED_MS = spanMs(1, 'min')

/** What one mix asks for next. @param startMs when mixing should begin */
export function actsOfMix(mix: Mix, startMs: EpochMs, nowMs: EpochMs): readonly RoomActParts[] {
  const of = { mixId: mix.id, formulaId: mix.formula.id }
  switch (mix.stage) {
    case 'planned':
      return [
        {
          ...of,
          key: `startMix:${mix.id}`,
          kind: 'startMix',
          atMs: startMs,
          latestAtMs: later(startMs, LATE_AFTER_MS),
        },
      ]
    case 'mixing':
      return [...mixIns(mix, nowMs), ...stageOver(mix, 'mixerOff')]
    case 'rest':
      return stageOver(mix, 'restOver')
    case 'bulk':
      return [...nextFold(mix), ...stageOver(mix, 'bulkOver')]
    case 'bulkChill':
      return stageOver(mix, 'bulkChillOver')
    default:
      return []
  }
}

/** A rest of no time is over as it begins; a bulk without a window says nothing. */
function stageOver(mix: Mix, kind: 'mixerOff' | 'restOver' | 'bulkOver' | 'bulkChillOver'): readonly RoomActParts[] {
  const { id, formula, sinceMs, until } = mix
  if (until === null && kind !== 'restOver') return []
  const atMs = until?.targetAtMs ?? sinceMs
  const latestAtMs = until?.latestAtMs ?? null
  return [{ key: `${kind}:${id}`, kind, sinceMs, atMs, latestAtMs, mixId: id, formulaId: formula.id }]
}

/** Called until they are weighed in; those that stood weighed before, for a minute. */
function mixIns(mix: Mix, nowMs: EpochMs): readonly RoomActParts[] {
  const { id, formula, sinceMs, mixedAtMs, until } = mix
  const inside = mix.lines.filter(({ at }) => at === 'mixIn')
  if (formula.mixInMs === null || inside.length === 0) return []
  const atMs = epochMs((mixedAtMs ?? sinceMs) + formula.mixInMs)
  const weighed = inside.flatMap(({ weighedAtMs }) => weighedAtMs ?? [])
  const isDone = weighed.length === inside.length && Math.max(...weighed) >= atMs
  if (isDone) return []
  const parts = { key: `mixIns:${id}`, kind: 'mixIns', sinceMs, atMs, mixId: id, formulaId: formula.id } as const
  if (weighed.length < inside.length) return [{ ...parts, latestAtMs: until?.targetAtMs ?? null }]
  return nowMs < later(atMs, MIX_INS_CALLED_MS) ? [parts] : []
}

function nextFold({ id, formula, sinceMs, folds }: Mix): readonly RoomActParts[] {
  const afterMs = formula.bulk?.foldsMs[folds]
  if (afterMs === undefined) return []
  const fold = folds + 1
  const atMs = later(sinceMs, afterMs)
  const latestAtMs = later(atMs, LATE_AFTER_MS)
  return [
    { key: `fold:${id}:${fold}`, kind: 'fold', sinceMs, atMs, latestAtMs, mixId: id, formulaId: formula.id, fold },
  ]
}
