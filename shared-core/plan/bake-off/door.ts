import type { BakeLoad, BakeOff, HandsGiven } from './bake-off.ts'
import { dipsOf } from './load-parts.ts'

/** Comparisons of times. */
const SAME_MIN = 1e-6

interface AtDoor {
  readonly shelf: string
  readonly from: number
  readonly until: number
}

/**
 * Whether a load's loading, flip and out find the one door free, its shelf there in a rotating oven, and hands: nobody
 * there does nothing, and one alone boils or stands at the oven, not both.
 */
export function doorIsFree(given: BakeOff, load: BakeLoad, others: readonly BakeLoad[]): boolean {
  const { hands, oven } = given
  if (hands === undefined && oven.turnMin === undefined) return true
  const own = atDoor(load, hands)
  const taken = others.flatMap((other) => atDoor(other, hands))
  const clash = own.some((one) => taken.some((other) => isInTheWay(given, one, other)))
  return !clash && (hands === undefined || hasHands(given, load, hands, others))
}

function atDoor({ shelf, in: into, flip, out }: BakeLoad, hands: HandsGiven | undefined): AtDoor[] {
  return [
    { shelf, from: into - (hands?.loadMin ?? 0), until: into },
    { shelf, from: flip, until: flip + (hands?.flipMin ?? 0) },
    { shelf, from: out, until: out + (hands?.outMin ?? 0) },
  ]
}

/** Between two acts on different shelves of a rotating oven it turns on to the other. */
function isInTheWay(given: BakeOff, one: AtDoor, other: AtDoor): boolean {
  const [first, second] = one.from <= other.from ? [one, other] : [other, one]
  return second.from < first.until + turnMin(given, first.shelf, second.shelf) - SAME_MIN
}

function turnMin({ oven: { turnMin: each = 0, shelves } }: BakeOff, from: string, to: string): number {
  const place = (shelf: string) => shelves.findIndex(({ name }) => name === shelf)
  const [one, other] = [place(from), place(to)]
  if (each === 0 || one < 0 || other < 0) return 0
  return each * ((other - one + shelves.length) % shelves.length)
}

function hasHands(given: BakeOff, load: BakeLoad, hands: HandsGiven, others: readonly BakeLoad[]): boolean {
  const dips = [load, ...others].map((one) => dipped(given, one))
  const [own] = dips
  const acts = atDoor(load, hands)
  const moments = [load.kettleStart, ...acts.map(({ from }) => from)]
  if (moments.some((at) => peopleAt(hands, at) === 0)) return false
  const overlaps = (dip: AtDoor, act: AtDoor) => dip.from < act.until - SAME_MIN && act.from < dip.until - SAME_MIN
  const alone = (at: number) => peopleAt(hands, at) === 1
  if (acts.some((act) => alone(act.from) && dips.some((dip) => overlaps(dip, act)))) return false
  if (own === undefined) return true
  const theirs = others.flatMap((other) => atDoor(other, hands))
  return !theirs.some((act) => alone(act.from) && overlaps(own, act))
}

function dipped(given: BakeOff, { shelf, kettleStart, lines }: BakeLoad): AtDoor {
  return { shelf, from: kettleStart, until: kettleStart + dipsOf(given, lines) * given.kettle.cycleMin }
}

/** Nobody has said: hands are no limit. */
function peopleAt({ people }: HandsGiven, minute: number): number {
  if (people.length === 0) return Number.POSITIVE_INFINITY
  return people.reduce((there, [from, count]) => (from <= minute + SAME_MIN ? count : there), 0)
}
