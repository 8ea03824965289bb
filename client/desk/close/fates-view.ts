import type { Act } from '../../../shared-core/day/commands.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { Rod } from '../../../shared-core/stock/left.ts'

/** Pieces of one variety that are left, for which somebody says what becomes of them. */
export interface FateRow {
  readonly key: string
  readonly varietyId: VarietyId
  readonly name: string
  /** They are of an earlier day already. */
  readonly isDayOld: boolean
  readonly pieces: number
}

/** What was said of a row; what is neither stays as day-old. */
export interface Fate {
  readonly given: number
  readonly wasted: number
}
export type Fates = ReadonlyMap<string, Fate>
export const NO_FATE: Fate = { given: 0, wasted: 0 }

/** Fresh and day-old pieces of each rod apart, as they are booked apart; in the order of the rods. */
export function fateRows(left: readonly Rod[]): readonly FateRow[] {
  return left.flatMap(({ varietyId, name, forSale, cooling, dayOld }) => {
    const fresh = { key: varietyId, varietyId, name, isDayOld: false, pieces: forSale + cooling }
    const old = { key: `${varietyId} day-old`, varietyId, name, isDayOld: true, pieces: dayOld }
    return [fresh, old].filter(({ pieces }) => pieces > 0)
  })
}

/** What was said, kept to what is there: pieces may have been sold or counted since. */
export function fateOf({ key, pieces }: FateRow, fates: Fates): Fate {
  const { given, wasted } = fates.get(key) ?? NO_FATE
  const kept = Math.min(given, pieces)
  return { given: kept, wasted: Math.min(wasted, pieces - kept) }
}

/** One fate of a row set anew; the other gives way where both are more than there is. */
export function withFate(row: FateRow, fates: Fates, change: Partial<Fate>): Fates {
  const before = fateOf(row, fates)
  const given = change.given ?? Math.min(before.given, row.pieces - (change.wasted ?? 0))
  const wasted = change.wasted ?? Math.min(before.wasted, row.pieces - given)
  return new Map(fates).set(row.key, { given: Math.max(0, given), wasted: Math.max(0, wasted) })
}

/** The same for all rows: all given away, all wasted, or all kept as day-old. */
export function allTo(rows: readonly FateRow[], fate: keyof Fate | null): Fates {
  return new Map(rows.map(({ key, pieces }) => [key, fate === null ? NO_FATE : { ...NO_FATE, [fate]: pieces }]))
}

export function totalFates(rows: readonly FateRow[], fates: Fates): Fate & { readonly stays: number } {
  return rows.reduce(
    (sum, row) => {
      const { given, wasted } = fateOf(row, fates)
      return {
        given: sum.given + given,
        wasted: sum.wasted + wasted,
        stays: sum.stays + row.pieces - given - wasted,
      }
    },
    { given: 0, wasted: 0, stays: 0 },
  )
}

/** The acts that book what was said. */
export function fateActs(rows: readonly FateRow[], fates: Fates): readonly Act[] {
  return rows.flatMap((row) => {
    const { given, wasted } = fateOf(row, fates)
    const { varietyId, isDayOld } = row
    const type = isDayOld ? ('dayOldOut' as const) : ('remove' as const)
    const acts: Act[] = []
    if (given > 0) acts.push({ type, varietyId, pieces: given, fate: 'given' })
    if (wasted > 0) acts.push({ type, varietyId, pieces: wasted, fate: 'wasted' })
    return acts
  })
}
