/** A ring on the rod stands for half a dozen: few enough to count, and how the trade counts. */
export const PIECES_PER_RING = 6

/** Two places for each of three stacks: a ring and the break that stands for the others. */
export const MAX_RINGS_MIN = 6

type StackKind = 'kept' | 'for-sale' | 'coming'

/** What stands at one place of the rod. `pieces`: 6 for a whole ring, 1–5 for a part of one, all that a break hides. */
export interface RodPlace {
  readonly kind: StackKind
  readonly pieces: number
  readonly hidden: boolean
}

export interface RodStock {
  /** For sale. */
  readonly pieces: number
  readonly onTheWay: number
  /** Put by for orders: at the bottom, since they do not move. 0 when left out. */
  readonly kept?: number | undefined
  /** Places on the rod, at least 6. */
  readonly maxRings: number
}

/**
 * What to draw on a rod, bottom up: kept, for sale, on the way; of each, a ring that is not full lies on top. Where not
 * all fit, the tallest stacks are broken, as a column in a drawing is: one break each, in which `pieces` are hidden.
 * The number beside the rod always tells the truth.
 * @throws RangeError when a count is negative or not whole, or maxRings is under 6
 */
export function rodPlaces({ pieces, onTheWay, kept = 0, maxRings }: RodStock): readonly RodPlace[] {
  for (const count of [pieces, onTheWay, kept, maxRings]) {
    if (!Number.isInteger(count) || count < 0) throw new RangeError(`A rod counts whole pieces, 0 or more: ${count}.`)
  }
  if (maxRings < MAX_RINGS_MIN) throw new RangeError(`A rod needs at least ${MAX_RINGS_MIN} places: ${maxRings}.`)
  const stacks = [rings('kept', kept), rings('for-sale', pieces), rings('coming', onTheWay)]
  const rooms = share(
    stacks.map((stack) => stack.length),
    maxRings,
  )
  return stacks.flatMap((stack, index) => broken(stack, rooms[index] ?? 0))
}

function rings(kind: StackKind, pieces: number): RodPlace[] {
  const whole = Math.floor(pieces / PIECES_PER_RING)
  const rest = pieces % PIECES_PER_RING
  const places = Array.from({ length: whole }, () => ({ kind, pieces: PIECES_PER_RING, hidden: false }))
  return rest === 0 ? places : [...places, { kind, pieces: rest, hidden: false }]
}

/** Places for each stack: the tallest gives first; of equals what is on the way, then what is kept. */
function share(heights: readonly number[], places: number): readonly number[] {
  const rooms = [...heights]
  const givesFirst = [2, 0, 1]
  const height = (index: number) => rooms[index] ?? 0
  while (rooms.reduce((sum, room) => sum + room, 0) > places) {
    const tallest = givesFirst.reduce((best, index) => (height(index) > height(best) ? index : best))
    rooms[tallest] = height(tallest) - 1
  }
  return rooms
}

function broken(stack: readonly RodPlace[], room: number): readonly RodPlace[] {
  const top = stack[stack.length - 1]
  if (top === undefined || stack.length <= room) return stack
  const below = Math.max(0, Math.min(2, room - 2))
  const above = room - 1 - below
  const dropped = stack.slice(below, stack.length - above)
  const pieces = dropped.reduce((sum, place) => sum + place.pieces, 0)
  return [...stack.slice(0, below), { kind: top.kind, pieces, hidden: true }, ...stack.slice(stack.length - above)]
}
