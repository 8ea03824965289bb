import { MaxFlow } from './max-flow.ts'

/** Mixed pieces that are taken in a piece of time, of any of some varieties. */
export interface MixedWanted {
  /** Index of the piece of time. */
  readonly at: number
  /** By index of the variety. */
  readonly fits: readonly boolean[]
  readonly pieces: number
}

/** More pieces than any day has. */
const SURELY = 1_000_000_000

/**
 * How many of some mixed pieces can be had, each line out of what its varieties have room for when it is taken: what is
 * taken of a variety by a time is never more than its room then. Lines are served in their order: an earlier one may be
 * moved to other varieties for a later one, and never gets less for it.
 *
 * A flow from each variety's room through time to the lines; all pieces are had where they can be at all.
 * @param room by variety, by piece of time: never falling over time
 * @returns by line, how many of its pieces it gets
 */
export function mixedFlow(room: readonly Int32Array[], wanted: readonly MixedWanted[]): readonly number[] {
  return mixedTakes(room, wanted).map((takes) => takes.reduce((sum, pieces) => sum + pieces, 0))
}

/** The same, by line and by variety. */
export function mixedTakes(
  room: readonly Int32Array[],
  wanted: readonly MixedWanted[],
): readonly (readonly number[])[] {
  const times = [...new Set(wanted.map(({ at }) => at))].sort((a, b) => a - b)
  const timeAt = new Map(times.map((at, time) => [at, time]))
  const placeOf = (variety: number, time: number) => 1 + variety * times.length + time
  const firstLine = 1 + room.length * times.length
  const edges = 2 * firstLine + wanted.length * room.length
  const flow = new MaxFlow(firstLine + wanted.length, edges)
  room.forEach((row, variety) => {
    let before = 0
    times.forEach((at, time) => {
      const by = row[at] ?? 0
      if (time > 0) flow.addEdge(placeOf(variety, time - 1), placeOf(variety, time), SURELY)
      if (by > before) flow.addEdge(0, placeOf(variety, time), by - before)
      before = Math.max(before, by)
    })
  })
  const edgesTo = wanted.map(({ at, fits, pieces }, line) => {
    const time = timeAt.get(at) ?? 0
    const its = fits.map((isFit, variety) =>
      isFit ? flow.addEdge(placeOf(variety, time), firstLine + line, SURELY) : null,
    )
    flow.bring(firstLine + line, pieces)
    return its
  })
  return edgesTo.map((its) => its.map((edge) => (edge === null ? 0 : flow.along(edge))))
}
