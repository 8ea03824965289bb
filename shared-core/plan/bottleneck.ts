import type { Bottleneck, PlanFigures } from '../live/plan.ts'
import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { expectedOf } from './bake-off/expected.ts'
import { bestOf } from './best-of.ts'
import { scarceIn } from './scarce.ts'
import { oneMore } from './what-if.ts'

/** Less is not worth naming: in cents, and as a part of what the day brings. */
const GAIN_CENTS = 150
const GAIN_PART = 0.005
/** A kettle half as large again boils so much faster; so much more dough, or so many units at least. */
const FASTER = 1 / 1.5
const MORE_DOUGH = 0.1
const DOUGH_UNITS = 2

/**
 * What more of would gain most. With less than the usual work a plan falls short by more than anything could gain, so that
 * nothing would ever be named.
 * @param effort times the usual work
 * @returns null where nothing gains more than a little
 */
export function bottleneckOf(given: BakeOff, loads: readonly BakeLoad[], effort = 1): PlanFigures['bottleneck'] {
  const best = bestOf(given, [loads], effort)
  const base = expectedOf(given, best).profit
  const scarce = scarceIn(given, best)
  const gains = moreOf(given)
    .filter(([of]) => scarce.has(of))
    .map(([of, more]) => {
      return { of, gainCents: Math.round(expectedOf(more, bestOf(more, [best], effort)).profit - base) }
    })
  const [most] = gains.sort((one, other) => other.gainCents - one.gainCents)
  const least = Math.max(GAIN_CENTS, GAIN_PART * Math.max(0, base))
  return most === undefined || most.gainCents < least ? null : most
}

/** One of each more than there is. */
function moreOf(given: BakeOff): readonly (readonly [Bottleneck, BakeOff])[] {
  const { kettle, boards, oven, hands, doughs } = given
  const boardsOfDip = Math.ceil(kettle.pieces / boards.pieces)
  const more = Object.entries(doughs).map(([key, dough]) => {
    const pieces = dough.pieces + Math.max(given.unit * DOUGH_UNITS, Math.round(dough.pieces * MORE_DOUGH))
    return [key, { ...dough, pieces }]
  })
  const all: [Bottleneck, BakeOff][] = [
    ['kettle', { ...given, kettle: { ...kettle, cycleMin: kettle.cycleMin * FASTER } }],
    ['boards', { ...given, boards: { ...boards, count: boards.count + boardsOfDip } }],
    ['shelves', { ...given, oven: { ...oven, shelves: [...oven.shelves, oneMore(oven.shelves)] } }],
    ['dough', { ...given, doughs: Object.fromEntries(more) }],
  ]
  if (hands !== undefined && hands.people.length > 0) {
    const people = hands.people.map(([from, count]) => [from, count + 1] as const)
    all.push(['people', { ...given, hands: { ...hands, people } }])
  }
  return oven.shelves.length === 0 ? [] : all
}
