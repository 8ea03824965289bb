import type { DayFigures } from '../../../shared-core/day/figures.ts'
import { signedPieces } from '../../words/desk-day-sheet.ts'
import type { PastWords, PlotName } from '../../words/desk-past.ts'
import type { DayListed } from './day-record.ts'

/** A day's five figures as a row tells them: missed, left, there at opening, dozens a crew hour, unexplained. */
export function dayTexts({ figures }: Pick<DayListed, 'figures'>, say: Pick<PastWords, 'notKnown'>): readonly string[] {
  if (figures === null) return [say.notKnown, say.notKnown, say.notKnown, say.notKnown, say.notKnown]
  const { missed, onTime, baked, unexplained } = figures
  const left = leftPieces(figures)
  return [
    missed === null ? say.notKnown : String(missed.pieces),
    left === null ? say.notKnown : String(left),
    onTime.atOpen === null ? say.notKnown : `${onTime.atOpen.there}/${onTime.atOpen.of}`,
    baked.dozensPerCrewHour === null ? say.notKnown : baked.dozensPerCrewHour.toFixed(1),
    signedPieces(unexplained.signed),
  ]
}

export interface Series {
  readonly plot: PlotName
  /** Oldest first; null where a day has none. */
  readonly values: readonly (number | null)[]
}

/** What is drawn by day. @param days newest first, as they are listed */
export function daySeries(days: readonly Pick<DayListed, 'figures'>[]): readonly Series[] {
  const oldestFirst = [...days].reverse()
  const of = (plot: PlotName, value: (figures: DayFigures) => number | null): Series => ({
    plot,
    values: oldestFirst.map(({ figures }) => (figures === null ? null : value(figures))),
  })
  return [
    of('left', leftPieces),
    of('unexplained', ({ unexplained }) => unexplained.signed),
    of('missed', ({ missed }) => missed?.pieces ?? null),
  ]
}

function leftPieces({ left }: DayFigures): number | null {
  return left === null ? null : left.dayOld.pieces + left.given.pieces + left.wasted.pieces
}
