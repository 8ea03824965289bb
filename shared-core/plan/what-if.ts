import type { Line } from '../day/state.ts'
import type { PlanFigures } from '../live/plan.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import type { BakeOff, ShelfGiven } from './bake-off/bake-off.ts'
import type { Problem } from './bake-off-of.ts'
import { problemOf } from './bake-off-of.ts'
import { bestFitted } from './best-of.ts'
import { figuresOf, today } from './figures.ts'
import { joined } from './joined.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'
import { solved } from './solved.ts'

/** One thing another way. */
export type WhatIfChange =
  /** One more, as large as the largest. */
  | { readonly kind: 'shelf' }
  | { readonly kind: 'kettle'; readonly cycleMs: DurationMs }
  | { readonly kind: 'boards'; readonly more: number }
  | { readonly kind: 'opening'; readonly earlierMs: DurationMs }
  /** Later; earlier: negative. */
  | { readonly kind: 'changeover'; readonly byMs: number }
  | { readonly kind: 'order'; readonly dueAtMs: EpochMs; readonly lines: readonly Line[] }
  /** At every hour; nobody less than none. */
  | { readonly kind: 'people'; readonly fewer: number }

/** The day as it is, and with the change. */
export interface WhatIfAnswer {
  readonly before: PlanFigures
  readonly after: PlanFigures
}

const MINUTE_MS = 60_000

/**
 * What the rest of the day would bring with one thing another way, planned anew both times. What does better as it is on
 * the other day is taken over, so that more of anything never seems to bring less.
 */
export function whatIf(asked: PlanAsked, change: WhatIfChange): WhatIfAnswer {
  const problem = problemOf(asked, null)
  const changed = { ...problem, given: changedGiven(asked, problem.given, change) }
  const plans = [problem, changed].map(({ given }) => joined(given, solved(given, asked.effort)))
  // By what the figures count: dough that is kept is no money of that day.
  const figures = (of: Problem) => figuresOf(asked, of, bestFitted(today(of), plans))
  return { before: figures(problem), after: figures(changed) }
}

/** The problem with the change in it. */
export function changedGiven(asked: PlanAsked, given: BakeOff, change: WhatIfChange): BakeOff {
  switch (change.kind) {
    case 'shelf':
      return { ...given, oven: { ...given.oven, shelves: [...given.oven.shelves, oneMore(given.oven.shelves)] } }
    case 'kettle':
      return { ...given, kettle: { ...given.kettle, cycleMin: Math.max(1_000, change.cycleMs) / MINUTE_MS } }
    case 'boards':
      return { ...given, boards: { ...given.boards, count: Math.max(0, given.boards.count + change.more) } }
    case 'opening':
      return openedEarlier(given, change.earlierMs / MINUTE_MS)
    case 'changeover':
      return emptiedLater(given, change.byMs / MINUTE_MS)
    case 'order': {
      const due = minuteOf(asked, change.dueAtMs)
      const lines = change.lines.map(({ varietyId, pieces }) => [varietyId, pieces] as const)
      return { ...given, orders: [...given.orders, { due, lines }] }
    }
    case 'people':
      return withFewer(given, change.fewer)
  }
}

export function oneMore(shelves: readonly ShelfGiven[]): ShelfGiven {
  const largest = shelves.reduce<ShelfGiven>((most, one) => (one.pieces > most.pieces ? one : most), {
    name: '',
    pieces: 0,
  })
  return { ...largest, name: `${largest.name}+` }
}

/** The oven is ready so much sooner too, and whoever is there first comes sooner; as many come in all, spread longer. */
function openedEarlier(given: BakeOff, earlierMin: number): BakeOff {
  const open = given.open - earlierMin
  const earlier = (profile: BakeOff['varieties'][number]['demand']['profile']) =>
    profile.map(([minute, part]) => [minute <= given.open ? minute - earlierMin : minute, part] as const)
  const { hands, oven } = given
  return {
    ...given,
    open,
    oven: { ...oven, readyMin: oven.readyMin - earlierMin },
    varieties: given.varieties.map((one) => ({
      ...one,
      demand: { ...one.demand, profile: earlier(one.demand.profile) },
    })),
    ...(hands === undefined
      ? {}
      : { hands: { ...hands, people: hands.people.map(([from, count]) => [from - earlierMin, count] as const) } }),
  }
}

/** The oven is empty so much later, and each shelf with it. */
export function emptiedLater(given: BakeOff, byMin: number): BakeOff {
  const { oven, close } = given
  const shelves = oven.shelves.map((shelf) =>
    shelf.emptyByMin === undefined ? shelf : { ...shelf, emptyByMin: Math.min(close, shelf.emptyByMin + byMin) },
  )
  return { ...given, oven: { ...oven, shelves, mustBeEmptyMin: Math.min(close, oven.mustBeEmptyMin + byMin) } }
}

function withFewer(given: BakeOff, fewer: number): BakeOff {
  const { hands } = given
  if (hands === undefined) return given
  const people = hands.people.map(([from, count]) => [from, Math.max(0, count - fewer)] as const)
  return { ...given, hands: { ...hands, people } }
}
