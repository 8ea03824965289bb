import fc from 'fast-check'
import type { BakeLoad, BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'

/** What a shop may add to the scored core, as long as the planner keeps to it itself. */
export interface Limits {
  readonly kettleReadyMin: number
  readonly recoveryMin: number
  readonly rewetMin: number
  readonly shelfReadyMin: number
  readonly shelfEmptyMin: number
  readonly doughMin: number
}

/** Minutes; those of readiness count from when the oven is ready, those of emptiness back from when it must be empty. */
export const anyLimits: fc.Arbitrary<Limits> = fc.record({
  kettleReadyMin: fc.integer({ min: -30, max: 90 }),
  recoveryMin: fc.integer({ min: 1, max: 8 }).map((n) => n / 2),
  rewetMin: fc.integer({ min: 1, max: 20 }),
  shelfReadyMin: fc.integer({ min: 5, max: 150 }),
  shelfEmptyMin: fc.integer({ min: 5, max: 150 }),
  doughMin: fc.integer({ min: 5, max: 150 }),
})

/** A shop under limits: its first shelf and its first dough come late, its last shelf goes early. */
export function limited(given: BakeOff, limits: Limits): BakeOff {
  const { oven, kettle, boards, doughs } = given
  const last = oven.shelves.length - 1
  const [first] = Object.keys(doughs)
  return {
    ...given,
    kettle: { ...kettle, readyMin: oven.readyMin + limits.kettleReadyMin, recoveryMin: limits.recoveryMin },
    boards: { ...boards, rewetMin: limits.rewetMin },
    oven: {
      ...oven,
      shelves: oven.shelves.map((shelf, at) => ({
        ...shelf,
        ...(at === 0 ? { readyMin: oven.readyMin + limits.shelfReadyMin } : {}),
        ...(at === last ? { emptyByMin: oven.mustBeEmptyMin - limits.shelfEmptyMin } : {}),
      })),
    },
    doughs: Object.fromEntries(
      Object.entries(doughs).map(([name, dough]) => [
        name,
        name === first ? { ...dough, notBeforeMin: oven.readyMin + limits.doughMin } : dough,
      ]),
    ),
  }
}

const SAME_MIN = 1e-6

/** Limits that planned loads break, each as a sentence; written apart from the planner. */
export function brokenBy(given: BakeOff, planned: readonly BakeLoad[]): string[] {
  const { kettle, boards, oven } = given
  const gap = kettle.cycleMin + (kettle.recoveryMin ?? 0)
  const dips = (load: BakeLoad) => Math.ceil(load.lines.reduce((sum, [, n]) => sum + n, 0) / kettle.pieces - 1e-9)
  const own = planned.flatMap((load) => {
    const shelf = oven.shelves.find(({ name }) => name === load.shelf)
    const doughFrom = load.lines.map(([name]) => {
      const dough = given.varieties.find((one) => one.name === name)?.dough ?? ''
      return given.doughs[dough]?.notBeforeMin ?? Number.NEGATIVE_INFINITY
    })
    const waited = load.in - load.kettleStart - kettle.cycleMin
    const checks: [string, boolean][] = [
      ['a dip before the kettle boils', load.kettleStart < (kettle.readyMin ?? -Infinity) - SAME_MIN],
      ['in before its last dip', load.in < load.kettleStart + dips(load) * gap - (gap - kettle.cycleMin) - SAME_MIN],
      ['on boards for too long', waited > boards.maxWaitMin + SAME_MIN],
      ['on a shelf that is not there yet', load.in < (shelf?.readyMin ?? -Infinity) - SAME_MIN],
      ['on a shelf that must be empty', load.out > (shelf?.emptyByMin ?? Infinity) + SAME_MIN],
      ['of a dough that is not there yet', load.kettleStart < Math.max(...doughFrom) - SAME_MIN],
    ]
    return checks.flatMap(([what, isBroken]) => (isBroken ? [what] : []))
  })
  return [...own, ...dippedTooSoon(given, planned, dips, gap), ...dryBoards(given, planned)]
}

function dippedTooSoon(
  { running = [] }: BakeOff,
  planned: readonly BakeLoad[],
  dips: (load: BakeLoad) => number,
  gap: number,
): string[] {
  return planned.flatMap((load) =>
    [...running, ...planned].some(
      (before) =>
        before !== load &&
        before.kettleStart <= load.kettleStart &&
        load.kettleStart < before.kettleStart + dips(before) * gap - SAME_MIN,
    )
      ? ['a dip before the water is back at the boil']
      : [],
  )
}

/** Boards are most in use where a first dip ends. */
function dryBoards({ boards, kettle, running = [] }: BakeOff, planned: readonly BakeLoad[]): string[] {
  const held = [...running, ...planned].map((load) => ({
    from: load.kettleStart + kettle.cycleMin,
    to: load.flip + (boards.rewetMin ?? 0),
    count: load.lines.reduce((sum, [, pieces]) => sum + Math.ceil(pieces / boards.pieces - 1e-9), 0),
  }))
  return held.slice(running.length).flatMap(({ from }) => {
    const then = held.filter((one) => one.from <= from + SAME_MIN && one.to > from + SAME_MIN)
    return then.reduce((sum, { count }) => sum + count, 0) > boards.count ? ['a board that is not wet yet'] : []
  })
}
