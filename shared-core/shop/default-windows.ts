import type { TimeUnit } from '../units.ts'
import { spanMs } from '../units.ts'
import type { DwellWindow, Windows } from './shop.ts'

/**
 * Windows of a shop that has said nothing yet. Common practice, no source: proof about three hours in a warm room; a
 * chill overnight, a day more at most; 30 to 45 s in the kettle; 3 to 4 min on boards, then the flip; 15 to 25 min in
 * the oven in all, first side included; for sale once they are no longer too hot to bag.
 */
export const DEFAULT_WINDOWS: Required<Windows> = {
  proof: dwell('min', 120, 180, 240),
  chill: dwell('h', 8, 14, 48),
  rack: dwell('min', 0, 20, 60),
  kettle: dwell('s', 30, 40, 45),
  boards: dwell('min', 0, 2, 10),
  firstSide: dwell('min', 3, 3.5, 4),
  bake: dwell('min', 15, 18, 25),
  cool: dwell('min', 10, 15, 60),
}

/** A window in the unit that people think in. @example dwell('min', 3, 3.5, 4) // 180 000 / 210 000 / 240 000 ms */
export function dwell(unit: TimeUnit, earliest: number, target: number, latest: number): DwellWindow {
  return { earliestMs: spanMs(earliest, unit), targetMs: spanMs(target, unit), latestMs: spanMs(latest, unit), unit }
}
