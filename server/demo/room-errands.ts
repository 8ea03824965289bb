import type { Act } from '../../shared-core/day/commands.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { State } from '../../shared-core/day/state.ts'
import { buildsLeft } from '../../shared-core/dough/builds-left.ts'
import type { NoonOf } from '../../shared-core/dough/dates.ts'
import { dayPlan } from '../../shared-core/dough/day-plan.ts'
import { mixesToOrder, mixTasks } from '../../shared-core/dough/mix-tasks.ts'
import { mixingOrder } from '../../shared-core/dough/order.ts'
import { preparationsDue } from '../../shared-core/dough/preparations-due.ts'
import { untilOf } from '../../shared-core/ferment/until-of.ts'
import { epochMs } from '../../shared-core/units.ts'
import { usualBusy } from './demo-demand.ts'
import type { Who } from './demo-shop.ts'
import { doughForDay, SPARE_TRAYS } from './dough-for-day.ts'
import { drawFor } from './draw.ts'
import { stockErrands } from './room-stock.ts'
import type { Scene } from './scene.ts'
import { atMinute } from './scene.ts'

/** Something in the dough room that stands on the clock, on each day at the same minute. */
export interface RoomErrand {
  readonly key: string
  readonly minute: number
  readonly who: Who
  readonly act: (state: State) => Act | null
}

export type RoomDay = Pick<Scene, 'shop' | 'seed' | 'date' | 'dayStartMs'>

const PLAN_MINUTE = 3 * 60 + 24
const FIRST_MIX_MINUTE = 5 * 60 + 10
/** From one mix to the next: it is weighed, mixed and shaped by few hands. */
const MIX_EVERY_MINUTES = 23
/** Days of which somebody has said what is wanted: cultures and pre-ferments must know. */
const WANTED_DAYS = 3
const RIPEN_MINUTE = 13 * 60
const RIPEN_EVERY_MINUTES = 8
const RIPEN_MAX = 8
/** More than today's plan asks for: what is left over moves tomorrow's need by a tray. */
const SPARE = 1.3
const THROW_MINUTE = 14 * 60 + 15
const THROWN_MAX = 12
const READ_FROM_MINUTE = 4 * 60 + 40
const READ_EVERY_MINUTES = 60
const READINGS = 10

export function roomErrands(day: RoomDay): readonly RoomErrand[] {
  return [...wanting(day), planning(day), ...ripening(day), ...readings(day), ...throwing(day), ...stockErrands(day)]
}

/** What is wanted for the days ahead, more at the weekend, a box for the school now and then. */
function wanting({ shop, seed, date }: RoomDay): readonly RoomErrand[] {
  return Array.from({ length: WANTED_DAYS }, (_, after) => {
    const wantedFor = dateAfter(date, after)
    const lines = doughForDay(shop, usualBusy(wantedFor)).map(({ doughId, varietyId, pieces, trayPieces }) => {
      const draw = drawFor(seed, `wanted:${wantedFor}:${doughId}`)
      const ordered = draw.oneIn(4) ? trayPieces / 2 : 0
      // Spare trays come of themselves, from what is rounded up to whole ones.
      const wanted = Math.round((pieces - SPARE_TRAYS * trayPieces) * draw.between(1, 1.04))
      return { doughId, varietyId, pieces: wanted - ordered, ordered }
    })
    return {
      key: `wanted:${after}`,
      minute: PLAN_MINUTE - 1 + after * 0.2,
      who: 'desk',
      act: (state) => (state.wanted.has(wantedFor) ? null : { type: 'setWanted', date: wantedFor, lines }),
    }
  })
}

/** Tomorrow's mixes, in the order that washes least, each when hands are free for it. */
function planning(day: RoomDay): RoomErrand {
  const { shop, date } = day
  const bakeDate = dateAfter(date, 1)
  const act = (state: State): Act | null => {
    if ([...state.mixes.values()].some((mix) => mix.bakeDate === bakeDate)) return null
    const asked = dayPlan(state, shop, bakeDate, noonsOf(day)).mixes
    if (asked.length === 0) return null
    const toOrder = mixesToOrder(shop, bakeDate, asked)
    const [first] = mixTasks(state, shop, toOrder, noonsOf(day))
    const order = first === undefined ? [] : mixingOrder(first.tasks, first.rules).order
    const placeOf = (index: number) => order.indexOf(toOrder[index]?.id ?? '')
    const mixes = asked
      .map((mix, index) => ({ mix, place: placeOf(index) }))
      .sort((one, other) => one.place - other.place)
      .map(({ mix: { formulaId, flourMilligrams, gives } }, place) => {
        const startAtMs = atMinute(day, FIRST_MIX_MINUTE + place * MIX_EVERY_MINUTES)
        return { formulaId, flourMilligrams, gives, startAtMs }
      })
    return { type: 'planMixes', date: bakeDate, mixes }
  }
  return { key: 'plan', minute: PLAN_MINUTE, who: 'desk', act }
}

/** Pre-ferments, soakers and the culture, one after the other, when the last trays are in the cooler. */
function ripening(day: RoomDay): readonly RoomErrand[] {
  return Array.from({ length: RIPEN_MAX }, (_, n) => {
    const minute = RIPEN_MINUTE + n * RIPEN_EVERY_MINUTES
    const act = (state: State): Act | null => {
      const nowMs = atMinute(day, minute)
      // Nobody comes back in the evening for it: what may be begun by now is.
      const all = preparationsDue(state, day.shop, nowMs, day.date, noonsOf(day))
      const due = all.find(({ begin }) => begin.earliestAtMs <= nowMs)
      if (due === undefined) return null
      const { preparationId, forDate } = due
      return { type: 'makePreparation', preparationId, milligrams: Math.round(due.milligrams * SPARE), forDate }
    }
    return { key: `ripen:${n}`, minute, who: 'crew', act }
  })
}

/** Trays that are past their window, the oldest first, then what is left of pre-ferments past theirs. */
function throwing(day: RoomDay): readonly RoomErrand[] {
  return Array.from({ length: THROWN_MAX }, (_, n) => {
    const minute = THROW_MINUTE + n
    const act = (state: State): Act | null => {
      const nowMs = atMinute(day, minute)
      const over = [...state.batches.values()].find(
        (batch) => batch.stage === 'chill' && (untilOf(state, batch)?.latestAtMs ?? nowMs) < nowMs,
      )
      if (over !== undefined) return { type: 'wasteBatch', batchId: over.id, from: 'chill', pieces: over.pieces }
      const left = buildsLeft(state)
      const stale = [...state.builds.values()].find(
        ({ id, ready, dropped }) => !dropped && ready.latestAtMs < nowMs && (left.get(id) ?? 0) > 0,
      )
      return stale === undefined ? null : { type: 'dropBuild', buildId: stale.id }
    }
    return { key: `throw:${n}`, minute, who: 'crew', act }
  })
}

/** The room warms through the morning as the oven does its work; the cooler's door is opened often. */
function readings({ seed, date }: RoomDay): readonly RoomErrand[] {
  return Array.from({ length: READINGS }, (_, n) => n).flatMap((n): readonly RoomErrand[] => {
    const draw = drawFor(seed, `readings:${date}:${n}`)
    const room = 71 + Math.min(6, n * 0.9) + draw.between(-0.6, 0.8)
    const cooler = 37.5 + draw.between(-1, 2)
    const at = (place: 'room' | 'cooler', fahrenheit: number, minute: number): RoomErrand => ({
      key: `read:${place}:${n}`,
      minute,
      who: 'crew',
      act: () => ({ type: 'readPlace', place, read: { thousandths: Math.round(fahrenheit * 2) * 500, unit: 'F' } }),
    })
    const minute = READ_FROM_MINUTE + n * READ_EVERY_MINUTES + draw.between(0, 6)
    return [at('room', room, minute), ...(n % 2 === 0 ? [at('cooler', cooler, minute + 1)] : [])]
  })
}

/** The demo's own zones never change their clocks. */
function noonsOf({ date, dayStartMs }: Pick<RoomDay, 'date' | 'dayStartMs'>): NoonOf {
  const midnightMs = Date.parse(`${date}T00:00:00Z`)
  return (isoDate) => epochMs(dayStartMs + Date.parse(`${isoDate}T12:00:00Z`) - midnightMs)
}
