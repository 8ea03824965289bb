import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { Outlook, Range, VarietyOutlook } from '../../shared-core/live/outlook.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { AfternoonWords } from '../words/afternoon.ts'

/** What remains for the afternoon, when the oven is the second menu's: reckoned ahead, while loads can still be changed. */
export interface AfternoonAhead {
  /** The changeover. */
  readonly fromMs: EpochMs
  /** By when what is added must be in the oven; null: no load goes in any more. */
  readonly inByMs: EpochMs | null
  /** Worth putting into the last loads besides what is planned, most first. */
  readonly more: readonly Line[]
  /** Those that least surely last first; ties in the set-up's order. */
  readonly rows: readonly AfternoonRow[]
  /** Some of it rests on typed guesses alone. */
  readonly isGuess: boolean
}

export interface AfternoonRow {
  readonly varietyId: VarietyId
  readonly left: Range
  /** Chance in whole percent that it lasts to the close. */
  readonly lastsPercent: number
  readonly more: number
}

/** So long before the changeover counter and wall speak of it. */
const NEAR_MS = 60 * 60_000

/** @returns null without an outlook, and where nothing is to be decided: no changeover, or it is over */
export function afternoonAhead(outlook: Outlook | null, nowMs: EpochMs): AfternoonAhead | null {
  if (outlook === null || outlook.changeoverAtMs === null) return null
  const rows = outlook.varieties.flatMap(rowOf)
  if (rows.length === 0) return null
  const inByMs = outlook.lastLoadInAtMs !== null && outlook.lastLoadInAtMs >= nowMs ? outlook.lastLoadInAtMs : null
  const wanted = rows.filter(({ more }) => inByMs !== null && more > 0).sort((one, other) => other.more - one.more)
  return {
    fromMs: outlook.changeoverAtMs,
    inByMs,
    more: wanted.map(({ varietyId, more }) => ({ varietyId, pieces: more })),
    rows: [...rows].sort((one, other) => one.lastsPercent - other.lastsPercent),
    isGuess: outlook.varieties.some(({ basis, atChangeover }) => atChangeover !== null && basis === 'guess'),
  }
}

/** The last hour before the changeover. */
export function isNear(ahead: AfternoonAhead | null, nowMs: EpochMs): ahead is AfternoonAhead {
  return ahead !== null && nowMs >= ahead.fromMs - NEAR_MS && nowMs < ahead.fromMs
}

/** What the last loads should carry more of, as a sentence: from all of it to the shortest, for one line. */
export function lastLoadTexts({ inByMs, more }: AfternoonAhead, say: AfternoonWords): readonly [string, ...string[]] {
  const [first, ...others] = more
  if (inByMs === null) return [say.noLoads]
  if (first === undefined) return [say.enough(inByMs)]
  const all = say.moreBy(inByMs, more)
  if (others.length === 0) return [all]
  return [all, say.moreFew(inByMs, first, others.length), say.moreShort(inByMs, first, others.length)]
}

function rowOf({ varietyId, atChangeover, rest }: VarietyOutlook): readonly AfternoonRow[] {
  if (atChangeover === null) return []
  const { left, lastsPercent, more } = atChangeover
  // Nobody makes it today and nobody asks for it.
  if (left.q90 === 0 && more === 0 && rest.q90 === 0) return []
  return [{ varietyId, left, lastsPercent, more }]
}
