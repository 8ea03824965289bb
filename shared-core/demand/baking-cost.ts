import type { CostJson } from '../live/trust.ts'

/** What one piece of a variety is worth, in cents. */
export interface PieceWorth {
  /** What it costs to make. */
  readonly costCents: number
  /** What it brings as day-old. */
  readonly dayOldCents: number
  /** What is lost when somebody asks for one and there is none. */
  readonly lostCents: number
}

/** Of one variety of a day: how many were there for the day, and how many were asked for. */
export interface Baked {
  readonly date: string
  readonly worth: PieceWorth
  readonly left: number
  readonly lost: number
}

/** So many pieces for a day, all of them there in time. @example bakedAs(40, 46) // { left: 0, lost: 6 } */
export function bakedAs(pieces: number, asked: number): Pick<Baked, 'left' | 'lost'> {
  return { left: Math.max(0, pieces - asked), lost: Math.max(0, asked - pieces) }
}

/**
 * What too many and too few pieces cost. A left one costs what it cost to make, less what it brings as day-old: only so
 * many a day are bought, all varieties together, and which of them is anybody's guess, so each gets its share.
 * @param dayOldSells day-old pieces that a day sells
 */
export function bakingCost(rows: readonly Baked[], dayOldSells: number): CostJson {
  const leftByDay = new Map<string, number>()
  for (const { date, left } of rows) leftByDay.set(date, (leftByDay.get(date) ?? 0) + left)
  let [leftPieces, lostPieces, leftCents, lostCents] = [0, 0, 0, 0]
  for (const { date, worth, left, lost } of rows) {
    const ofDay = leftByDay.get(date) ?? 0
    const bought = ofDay === 0 ? 0 : Math.min(1, dayOldSells / ofDay)
    leftPieces += left
    lostPieces += lost
    leftCents += left * (worth.costCents - worth.dayOldCents * bought)
    lostCents += lost * worth.lostCents
  }
  return { leftPieces, lostPieces, leftCents: Math.round(leftCents), lostCents: Math.round(lostCents) }
}
