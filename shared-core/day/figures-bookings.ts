import { piecesOf } from '../line/lines.ts'
import type { Event } from './events.ts'
import type { Line, State } from './state.ts'

/** What one command adds to the day's figures; a take-back takes all of it away. */
export interface Booking {
  /** Pieces out of the oven. */
  readonly baked: number
  /** Dough wasted before the oven. */
  readonly thrown: number
  /** Gaps that counts and surprises showed, without their signs. */
  readonly gaps: number
}

/** @param state as it is before the event */
export function bookingOf(state: State, event: Event): Booking {
  switch (event.type) {
    case 'out':
      return { ...NOTHING, baked: piecesOf(event.lots.map(({ lot }) => lot)) }
    case 'batchWasted':
      return { ...NOTHING, thrown: state.batches.get(event.take.batchId)?.loadId == null ? event.take.pieces : 0 }
    case 'piecesFound':
      return { ...NOTHING, gaps: event.batch.pieces }
    case 'counted':
      return { ...NOTHING, gaps: Math.abs(event.unexplained) }
    case 'stockTaken':
    case 'dayOldTaken':
      return { ...NOTHING, gaps: event.found }
    case 'kept':
      return { ...NOTHING, gaps: event.parts.reduce((sum, { found }) => sum + found, 0) }
    case 'dayClosed':
      return { ...NOTHING, gaps: piecesOf(event.batchIds.flatMap((id) => state.batches.get(id) ?? [])) }
    default:
      return NOTHING
  }
}

const NOTHING: Booking = { baked: 0, thrown: 0, gaps: 0 }

export function isNothing({ baked, thrown, gaps }: Booking): boolean {
  return baked === 0 && thrown === 0 && gaps === 0
}

/** Pieces that left a rod with a fate, by variety. */
export function fateLine(event: Event, fate: 'given' | 'wasted'): Line | null {
  if (event.type === 'stockTaken' && event.fate === fate) {
    return { varietyId: event.varietyId, pieces: piecesOf(event.takes) + event.found }
  }
  if (event.type === 'dayOldTaken' && event.fate === fate) return { varietyId: event.varietyId, pieces: event.pieces }
  return null
}
