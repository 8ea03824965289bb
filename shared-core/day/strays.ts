import type { EpochMs } from '../units.ts'
import type { Strays } from './events.ts'
import type { Batch, Day, State } from './state.ts'

/** Dough past its window is still used by people who know better; a day later it is gone, whatever was tapped. */
const STRAY_AFTER_LATEST_MS = 24 * 3_600_000
/** Dough without a window: no bagel dough is kept longer (common practice, no source). */
const STRAY_WITHOUT_WINDOW_MS = 7 * 24 * 3_600_000

/**
 * What a close writes off, as nobody has touched it since before the day opened: pieces on the line or long past their
 * window (unexplained: nobody tapped what became of them), loads whose out was never tapped, keeps that nobody fetched
 * (day-old). Without this a forgotten tap a day would grow the running state for ever.
 * In id order: the tables' own differs between a screen that folded all and one that began with a snapshot.
 */
export function straysOf(state: State, day: Day, closedAtMs: EpochMs): Strays {
  const old = (sinceMs: EpochMs) => sinceMs < day.openedAtMs
  return {
    batchIds: [...state.batches.values()]
      .filter((one) => old(one.sinceMs) && isGone(one, closedAtMs))
      .map(({ id }) => id)
      .sort(),
    loadIds: [...state.loads.values()]
      .filter((one) => old(one.loadedAtMs))
      .map(({ id }) => id)
      .sort(),
    keepIds: [...state.keeps.values()]
      // What is kept for an order that is still to come waits for it.
      .filter((one) => old(one.keptAtMs) && !(one.orderId !== undefined && state.orders.has(one.orderId)))
      .map(({ id }) => id)
      .sort(),
  }
}

function isGone({ stage, until, sinceMs }: Batch, closedAtMs: EpochMs): boolean {
  if (stage !== 'proof' && stage !== 'chill') return true
  if (until === null) return closedAtMs - sinceMs > STRAY_WITHOUT_WINDOW_MS
  return closedAtMs - until.latestAtMs > STRAY_AFTER_LATEST_MS
}
