import type { VarietyId } from '../ids.ts'
import { wholePieces } from './headroom.ts'
import type { Supply } from './supply.ts'

/** A line by name on its way through the day. */
export interface CourseLine {
  /** When it leaves the rods, as it is due. */
  readonly takenAtMs: number
  readonly dueAtMs: number
  readonly pieces: number
}

export interface CourseGiven {
  /** Of this variety. */
  readonly supply: readonly Supply[]
  /** Soonest due first. */
  readonly lines: readonly CourseLine[]
  /** Pieces that walk-ins will have asked for by an instant, parts of them too; none before now. */
  readonly walkIns: (atMs: number) => number
  /** Whether pieces that are ready at an instant are kept for a line at once, as they come out. */
  readonly isKept: (line: CourseLine, readyAtMs: number) => boolean
}

export interface CourseEnd {
  /** Pieces that are not there when it is taken. */
  readonly missing: number
  /** When the last of them is; null: not today. */
  readonly wholeAtMs: number | null
}

/**
 * One variety's day as it will probably go: pieces come, those for orders are kept, walk-ins take of the rest what they ask
 * for, and each order takes its own when it is due. What is late then is served by the next that comes.
 * @returns by line, in their order
 */
export function courseOf({ supply, lines, walkIns, isKept }: CourseGiven): readonly CourseEnd[] {
  const coming = [...supply].sort((one, other) => one.readyAtMs - other.readyAtMs)
  const times = [
    ...new Set(
      [...coming, ...lines.map(({ takenAtMs }) => ({ readyAtMs: takenAtMs }))].map(({ readyAtMs }) => readyAtMs),
    ),
  ]
  const needs = lines.map(({ pieces }) => ({ open: pieces, missing: 0, wholeAtMs: null as number | null }))
  let [rod, asked, went, next] = [0, 0, 0, 0]
  for (const atMs of times.sort((a, b) => a - b)) {
    const by = walkIns(atMs)
    went += Math.max(0, Math.min(rod - went, by - asked))
    asked = Math.max(asked, by)
    for (let one = coming[next]; one !== undefined && one.readyAtMs <= atMs; next += 1, one = coming[next]) {
      let pieces = one.pieces
      // What lies there already is kept for nobody.
      if (one.from === 'oven' || one.from === 'load')
        lines.forEach((line, at) => {
          if (isKept(line, atMs)) pieces -= give(needs[at], pieces, atMs)
        })
      rod += pieces
    }
    lines.forEach((line, at) => {
      if (line.takenAtMs > atMs) return
      rod -= give(needs[at], Math.max(0, rod - wholePieces(went, 'likely')), atMs)
      const need = needs[at]
      if (need !== undefined && line.takenAtMs === atMs) need.missing = need.open
    })
  }
  return needs.map(({ missing, wholeAtMs }) => ({ missing, wholeAtMs }))
}

interface Need {
  open: number
  missing: number
  wholeAtMs: number | null
}

/** @returns how many it took */
function give(need: Need | undefined, pieces: number, atMs: number): number {
  if (need === undefined) return 0
  const takes = Math.min(need.open, pieces)
  need.open -= takes
  if (takes > 0 && need.open === 0) need.wholeAtMs = atMs
  return takes
}

/** By variety, in no order. */
export function byName<One extends { readonly varietyId: VarietyId | null }>(
  all: readonly One[],
): ReadonlyMap<VarietyId, readonly One[]> {
  const some = new Map<VarietyId, One[]>()
  for (const one of all) {
    if (one.varietyId === null) continue
    const its = some.get(one.varietyId)
    if (its === undefined) some.set(one.varietyId, [one])
    else its.push(one)
  }
  return some
}
