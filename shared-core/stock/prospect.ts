import type { Outlook, VarietyOutlook } from '../live/outlook.ts'
import type { EpochMs } from '../units.ts'
import type { Rod } from './left.ts'

/**
 * How a rod goes on today: by the outlook where there is one, which knows the hour and how sure it is, else by the pace of
 * the last two hours. The one form in which screens speak of it.
 */
export interface Prospect {
  /** What it rests on: sales of past days, typed guesses alone, or today's pace. */
  readonly by: 'sales' | 'guess' | 'pace'
  /** From then on there is none for sale, as likely as not: until more comes (`isGap`), else for the day. Null: not foreseen. */
  readonly goneAtMs: EpochMs | null
  readonly isGap: boolean
  /** It rather lasts, but the chance is worth knowing: soon, or with nothing to come that could be changed. */
  readonly doubt: Doubt | null
  /** It lasts to the close with what is on the way, as far as anybody can tell. */
  readonly lasts: boolean
  /** Expected at the close; null: nobody knows. */
  readonly leftAtClose: number | null
  /** Gone for the day not before and, as well as surely, by then; null: not known, of a gap, and of what lasts. */
  readonly between: { readonly fromMs: EpochMs; readonly toMs: EpochMs | null } | null
}

export type Doubt =
  /** It may be gone before more comes. */
  | { readonly before: 'more' }
  /** It may be gone before the close, hardly before this instant. */
  | { readonly before: 'close'; readonly fromMs: EpochMs }

export interface WithProspect {
  readonly ahead: Prospect
}
export type RodAhead = Rod & WithProspect

export interface Ahead {
  /** Where the day ends, for what lasts by its pace; null: nobody knows. */
  readonly closeMs: EpochMs | null
  /** One of today, and fresh; null: there is none. */
  readonly outlook: Outlook | null
}

/** A doubt about later, with more to come before, changes nothing now. */
const DOUBT_SOON_MS = 2 * 3_600_000
/** Below this nobody would act otherwise than if it were sure to last. Common practice, no source. */
const DOUBT_PERCENT_MIN = 20
const LIKELY_PERCENT = 50

/** The same rods, each with how it goes on. */
export function withProspects<Some extends Going>(
  rods: readonly Some[],
  { closeMs, outlook }: Ahead,
): readonly (Some & WithProspect)[] {
  const known = new Map(outlook?.varieties.map((one) => [one.varietyId, one]))
  return rods.map((rod) => {
    const one = known.get(rod.varietyId)
    return { ...rod, ahead: one === undefined || outlook === null ? byPace(rod, closeMs) : byOutlook(one, outlook) }
  })
}

type Going = Pick<Rod, 'varietyId' | 'goneAtMs' | 'onTheWay'>

const NOT_KNOWN = { goneAtMs: null, isGap: false, doubt: null, lasts: false, leftAtClose: null, between: null } as const

function byPace({ goneAtMs, onTheWay: [next] }: Going, closeMs: EpochMs | null): Prospect {
  const by = 'pace'
  if (goneAtMs === null) return { ...NOT_KNOWN, by }
  if (closeMs !== null && goneAtMs >= closeMs) return { ...NOT_KNOWN, by, lasts: true }
  return { ...NOT_KNOWN, by, goneAtMs, isGap: next !== undefined && goneAtMs < next.readyAtMs }
}

function byOutlook(one: VarietyOutlook, { atMs }: Outlook): Prospect {
  const { basis, shortAtMs, beforeMorePercent, beforeClosePercent, leftAtClose } = one
  const said = { ...NOT_KNOWN, by: basis === 'guess' ? 'guess' : 'sales', leftAtClose } as const
  const { t10Ms, t50Ms, t90Ms } = one.gone
  if (shortAtMs !== null && (beforeMorePercent ?? 0) >= LIKELY_PERCENT) {
    return { ...said, goneAtMs: shortAtMs, isGap: true }
  }
  if (beforeMorePercent !== null && beforeMorePercent >= DOUBT_PERCENT_MIN) {
    return { ...said, doubt: { before: 'more' } }
  }
  const between = t10Ms === null ? null : { fromMs: t10Ms, toMs: t90Ms }
  // The first time that there is none: what is loaded later may come after it all the same.
  if (t50Ms !== null) return { ...said, goneAtMs: t50Ms, between }
  if (beforeClosePercent < DOUBT_PERCENT_MIN || t10Ms === null) return { ...said, lasts: true }
  if (one.moreAtMs !== null && t10Ms - atMs >= DOUBT_SOON_MS) return said
  return { ...said, doubt: { before: 'close', fromMs: t10Ms }, between }
}
