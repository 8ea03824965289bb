import type { DayFigures } from '../../../shared-core/day/figures.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import type { Names } from '../../words/names.ts'

/** A figure as it is read: its name, what it comes to, and what it rests on. */
export interface FigureText {
  readonly name: string
  readonly value: string
  readonly details: readonly string[]
}

/** The five figures of a day in words, always five and always in this order. */
export function figureTexts(figures: DayFigures, { figures: say }: DaySheetWords, names: Names): readonly FigureText[] {
  return [
    missed(figures, say, names),
    left(figures, say),
    onTime(figures, say),
    baked(figures, say),
    unexplained(figures, say),
  ]
}

type Say = DaySheetWords['figures']

function missed({ missed: one }: DayFigures, { missed: say }: Say, names: Names): FigureText {
  if (one === null) return { name: say.name, value: '–', details: [say.nobodyKnows] }
  const { first, pieces, cents } = one
  const detail = first === null ? say.none : say.first(names.variety(first.varietyId), first.fromMs, first.forMs)
  return { name: say.name, value: say.value(pieces, cents), details: [detail] }
}

function left({ left: one }: DayFigures, { left: say }: Say): FigureText {
  if (one === null) return { name: say.name, value: '–', details: [say.notClosed] }
  const { dayOld, given, wasted } = one
  const pieces = dayOld.pieces + given.pieces + wasted.pieces
  const costCents = dayOld.costCents + given.costCents + wasted.costCents
  const details = [
    say.fates(dayOld.pieces, given.pieces, wasted.pieces),
    ...(costCents === 0 ? [] : [say.cost(costCents)]),
  ]
  return { name: say.name, value: say.value(pieces), details }
}

function onTime({ onTime: { atOpen, ovenEmptyByMs } }: DayFigures, { onTime: say }: Say): FigureText {
  const value = atOpen === null ? '–' : `${atOpen.there}/${atOpen.of}`
  const opening = atOpen === null ? say.notOpened : say.atOpen(atOpen.there, atOpen.of)
  const oven = ovenEmptyByMs === null ? say.noChangeover : say.oven(ovenEmptyByMs)
  return { name: say.name, value, details: [opening, oven, say.noOrders] }
}

function baked({ baked: { pieces, crewMinutes, dozensPerCrewHour } }: DayFigures, { baked: say }: Say): FigureText {
  const hours = crewMinutes === null ? say.nobodySaid : say.hours(crewMinutes)
  return {
    name: say.name,
    value: dozensPerCrewHour === null ? '–' : say.dozens(dozensPerCrewHour),
    details: [say.value(pieces), hours],
  }
}

function unexplained({ unexplained: one }: DayFigures, { unexplained: say }: Say): FigureText {
  return {
    name: say.name,
    value: say.value(one.signed),
    details: [say.absolute(one.absolute), say.thrown(one.thrownDough)],
  }
}
