import type { Entry } from '../../../shared-core/day/events.ts'
import type { DayFigures } from '../../../shared-core/day/figures.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import type { StateJson } from '../../../shared-core/day/state-json.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import { noonOf } from '../../../shared-core/live/noon.ts'
import type { ShopClock } from '../../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { instantOfMinute } from '../../live/clock-text.ts'
import type { LaneLoad, RodGap } from './day-tracks.ts'
import { DayTracks } from './day-tracks.ts'
import { instantsOf, Replay } from './replay.ts'

/** A row of `GET /api/v1/days`. */
export interface DayListed {
  readonly label: string
  readonly openedAtMs: EpochMs
  readonly closedAtMs: EpochMs | null
  readonly figures: DayFigures | null
}

/** What `GET /api/v1/days/:label` answers. */
export interface DayRecordJson {
  readonly label: string
  readonly openedAtMs: EpochMs
  readonly closedAtMs: EpochMs | null
  readonly foldVersion: number
  readonly start: StateJson
  readonly entries: readonly Entry[]
  readonly clock: ShopClock
}

/** A past day, ready to be looked at. */
export interface PlayedDay {
  readonly label: string
  readonly openedAtMs: EpochMs
  readonly closedAtMs: EpochMs | null
  readonly clock: ShopClock
  /** The span of the ruler: from the first thing that happened to the last, and the opening hours between. */
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
  readonly open: { readonly fromMs: EpochMs; readonly toMs: EpochMs }
  readonly replay: Replay
  readonly loads: readonly LaneLoad[]
  readonly gaps: readonly RodGap[]
  /** The shop after the last entry. */
  readonly end: State
}

const HALF_HOUR_MS = 30 * 60_000
const HOUR_MS = 60 * 60_000

/** @returns null when this page folds in another way than the server that wrote it down */
export function playedDay(record: DayRecordJson): PlayedDay | null {
  const { label, openedAtMs, closedAtMs, foldVersion, entries, clock } = record
  if (foldVersion !== FOLD_VERSION) return null
  const start = fromJson(record.start)
  const open = openHours(start, entries, record)
  const tracks = new DayTracks(open, openedAtMs)
  const replay = new Replay(start, entries, (state, atMs) => tracks.follow(state, atMs))
  const lastMs = lastOf(instantsOf(entries)) ?? openedAtMs
  const end = replay.stateAt(lastMs)
  // Dough that was shaped the evening before opens a day that begins in the morning.
  const fromMs = Math.min(openedAtMs, open.fromMs)
  const toMs = Math.max(lastMs, closedAtMs === null ? lastMs : open.toMs, openedAtMs + HOUR_MS)
  return {
    label,
    openedAtMs,
    closedAtMs,
    clock,
    fromMs: epochMs(fromMs - (fromMs % HALF_HOUR_MS)),
    toMs: epochMs(Math.ceil(toMs / HALF_HOUR_MS) * HALF_HOUR_MS),
    open,
    replay,
    loads: tracks.loads(),
    gaps: tracks.gaps(closedAtMs),
    end,
  }
}

/** By the set-up that the day began with, or that it brought; the day itself where the shop was closed by it. */
function openHours(start: State, entries: readonly Entry[], { label, openedAtMs, closedAtMs, clock }: DayRecordJson) {
  const noonMs = noonOf(clock, label)
  const shop = start.shop ?? new Replay(start, entries, () => undefined).stateAt(epochMs(Number.MAX_SAFE_INTEGER)).shop
  const ruler = rulerOf({ ...start, shop }, noonMs, (minute) => instantOfMinute(clock, minute, noonMs), label)
  return ruler === null
    ? { fromMs: openedAtMs, toMs: closedAtMs ?? openedAtMs }
    : { fromMs: ruler.openMs, toMs: ruler.closeMs }
}

function lastOf<Value>(values: readonly Value[]): Value | undefined {
  return values[values.length - 1]
}
