import type { BakeOff, VarietyGiven } from './bake-off.ts'
import { DemandCurve } from './demand-curve.ts'
import { coolMinOf, dueOf } from './load-parts.ts'

/** What may happen on a shelf, in the order in which it happens at one and the same minute. */
export const READY = 0
export const HOLD = 1
export const DUE = 2
const HELD_BEFORE_DUE_MIN = 120

export interface FixedEvent {
  readonly kind: number
  readonly minute: number
  readonly pieces: number
  readonly part: number
  readonly area: number
}

/** What is the same in every plan: the shelf as it stands, running loads, orders, and the close. */
export function fixedEvents(given: BakeOff, whole: VarietyGiven): FixedEvent[] {
  const { name, demand, onShelf } = whole
  const curve = new DemandCurve(given, demand)
  const events: FixedEvent[] = []
  const add = (kind: number, minute: number, pieces: number) => {
    const corner = curve.cornerBy(minute)
    events.push({ kind, minute, pieces, part: curve.partAt(minute, corner), area: curve.areaAt(minute, corner) })
  }
  add(READY, given.now ?? given.open, onShelf)
  // Before the opening nobody comes: pieces that wait for it stand all that time.
  if (given.now !== undefined && given.now < given.open) add(READY, given.open, 0)
  add(READY, given.close, 0)
  for (const { out, lines } of given.running ?? []) {
    for (const [variety, pieces] of lines) if (variety === name) add(READY, out + coolMinOf(given, whole), pieces)
  }
  for (const order of given.orders) {
    const due = dueOf(given, order)
    for (const [variety, pieces] of order.lines) {
      if (variety !== name) continue
      add(HOLD, due - HELD_BEFORE_DUE_MIN, pieces)
      add(DUE, due, pieces)
    }
  }
  return events.sort((a, b) => a.minute - b.minute || a.kind - b.kind)
}
