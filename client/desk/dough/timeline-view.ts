import type { MixTask, OrderCost, OrderPlace } from '../../../shared-core/dough/order.ts'
import type { ShopClock } from '../../../shared-core/live/protocol.ts'
import type { DurationMs, EpochMs } from '../../../shared-core/units.ts'
import { minuteOfDay } from '../../live/clock-text.ts'

/** A step of a mix as a bar, in percent of the timeline's width. */
export interface Bar {
  readonly part: 'wash' | 'mix' | 'wait' | 'bench' | 'proof'
  readonly left: number
  readonly width: number
}

export interface TimelineRow {
  readonly id: string
  readonly bars: readonly Bar[]
  /** Where it should be in the cooler; null: beyond what is shown. */
  readonly due: number
}

export interface Timeline {
  readonly rows: readonly TimelineRow[]
  /** Full hours of the shop's clock, as far apart as their texts need. */
  readonly hours: readonly { readonly left: number; readonly atMs: number }[]
}

const MINUTE_MS = 60_000
const HOUR_MINUTES = 60
const HOUR_MS = HOUR_MINUTES * MINUTE_MS
const HOURS_SHOWN_MAX = 12

/**
 * Mixer, rest, bench and proof of each mix from left to right on one scale of time.
 * @param offsetMs of the shop's full hours from those of UTC (`hourOffsetMs`)
 */
export function timelineOf(
  { places }: Pick<OrderCost, 'places'>,
  tasks: readonly MixTask[],
  washMs: DurationMs,
  offsetMs = 0,
): Timeline {
  const byId = new Map(tasks.map((task) => [task.id, task]))
  const dues = places.flatMap(({ id }) => byId.get(id)?.dueAtMs ?? [])
  const floor = (ms: number) => Math.floor((ms + offsetMs) / HOUR_MS) * HOUR_MS - offsetMs
  const ceil = (ms: number) => Math.ceil((ms + offsetMs) / HOUR_MS) * HOUR_MS - offsetMs
  const fromMs = floor(
    Math.min(...places.map(({ startAtMs, isWashedBefore }) => startAtMs - (isWashedBefore ? washMs : 0))),
  )
  const toMs = ceil(Math.max(...places.map(({ coolerAtMs }) => coolerAtMs), ...dues))
  const left = (ms: number) => percent((ms - fromMs) / (toMs - fromMs))
  const stepHours = Math.max(1, Math.ceil((toMs - fromMs) / HOUR_MS / HOURS_SHOWN_MAX))
  const hours = Array.from({ length: Math.floor((toMs - fromMs) / HOUR_MS / stepHours) + 1 }, (_, index) => {
    const atMs = fromMs + index * stepHours * HOUR_MS
    return { left: left(atMs), atMs }
  })
  return {
    hours,
    rows: places.map((place) => ({
      id: place.id,
      bars: barsOf(place, washMs).map(({ part, from, to }) => ({
        part,
        left: left(from),
        width: percent((to - from) / (toMs - fromMs)),
      })),
      due: left(byId.get(place.id)?.dueAtMs ?? toMs),
    })),
  }
}

/** By how much the shop's full hours lie after those of UTC: nothing, but in zones of half and quarter hours. */
export function hourOffsetMs(clock: ShopClock, atMs: EpochMs): number {
  const inUtc = Math.floor((atMs % HOUR_MS) / MINUTE_MS)
  return ((minuteOfDay(clock, atMs) - inUtc + HOUR_MINUTES) % HOUR_MINUTES) * MINUTE_MS
}

function barsOf(place: OrderPlace, washMs: DurationMs) {
  const { startAtMs, mixedAtMs, benchAtMs, shapedAtMs, coolerAtMs, isWashedBefore } = place
  const bars: { readonly part: Bar['part']; readonly from: number; readonly to: number }[] = [
    { part: 'wash', from: isWashedBefore ? startAtMs - washMs : startAtMs, to: startAtMs },
    { part: 'mix', from: startAtMs, to: mixedAtMs },
    { part: 'wait', from: mixedAtMs, to: benchAtMs },
    { part: 'bench', from: benchAtMs, to: shapedAtMs },
    { part: 'proof', from: shapedAtMs, to: coolerAtMs },
  ]
  return bars.filter(({ from, to }) => to > from)
}

function percent(share: number): number {
  return Math.round(share * 10_000) / 100
}
