import { UNSURE_MAX } from '../../shared-core/day/decision.ts'
import type { Load, PlannedLoad, State } from '../../shared-core/day/state.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Step } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { usualBusy } from './demo-demand.ts'
import type { DemoLoad } from './demo-load-list.ts'
import { demoLoadList } from './demo-load-list.ts'
import { drawFor } from './draw.ts'
import { seenOn } from './past-counter.ts'
import type { Errand, PastDay } from './past-days.ts'
import { pastErrands } from './past-dough.ts'
import { personFor } from './people.ts'

const OPENS_BEFORE_OVEN_MINUTES = 70
const FIRST_LOAD_AFTER_OVEN_MINUTES = 5
const CONFIRMS_EVERY_MINUTES = 70
const CARE_EVERY_MINUTES = 55
/** Five people, with their breaks. */
const CREW_MINUTES = [33 * 60, 38 * 60] as const
const CLOSES_AFTER_MINUTES = 6

/** Opening, lists, loads, the dough room's clock and kettle of a day. */
export function pastCrew(day: PastDay): readonly Errand[] {
  const list = listOf(day)
  return [
    ...opening(day, list),
    ...steps(day),
    ...loads(day, list),
    ...pastErrands(day),
    ...questions(day),
    ...care(day),
    ...thrown(day),
  ]
}

const at = ({ dayStartMs }: PastDay, minute: number) => dayStartMs + minute * 60_000

function listOf({ shop, date, dayStartMs }: PastDay): readonly DemoLoad[] {
  const firstMinute = shop.hours.ovenReadyMinute + FIRST_LOAD_AFTER_OVEN_MINUTES
  return demoLoadList(shop, { dayStartMs, waveAtMs: dayStartMs + firstMinute * 60_000, busy: usualBusy(date) })
}

function opening(day: PastDay, list: readonly DemoLoad[]): readonly Errand[] {
  const opensMs = at(day, day.shop.hours.ovenReadyMinute - OPENS_BEFORE_OVEN_MINUTES)
  return [
    { atMs: opensMs, key: 'open', who: 'desk', act: () => ({ type: 'openDay' }) },
    { atMs: opensMs + 60_000, key: 'list', who: 'desk', act: () => ({ type: 'setLoadList', loads: list }) },
    // The note from the evening before has been read.
    { atMs: opensMs + 90_000, key: 'note', who: 'desk', act: ({ notes }) => clearing(notes) },
  ]
}

function clearing(notes: State['notes']) {
  const [note] = notes.values()
  return note === undefined ? null : ({ type: 'clearNote', noteId: note.id } as const)
}

/** Each step some minutes around its time, by whoever does such things. */
function steps(day: PastDay): readonly Errand[] {
  const { shop, seed, date } = day
  const { ovenReadyMinute, changeoverFromMinute } = shop.hours
  const zeroOf = ({ list }: Step) =>
    list === 'opening' ? ovenReadyMinute + FIRST_LOAD_AFTER_OVEN_MINUTES : changeoverFromMinute
  return inUse(shop.steps).flatMap((step): readonly Errand[] => {
    const zero = zeroOf(step)
    if (zero === null) return []
    const draw = drawFor(seed, `step:${date}:${step.id}`)
    const atMs = at(day, zero) + step.offsetMs + draw.between(-4, 6) * 60_000
    const personId = personFor(shop, draw)
    const key = `step:${step.id}`
    if (step.kind === 'plain') {
      return [{ atMs, key, who: 'crew', act: () => ({ type: 'doStep', stepId: step.id, doughId: null, personId }) }]
    }
    return inUse(shop.doughs).map(({ id: doughId }, index) => ({
      atMs: atMs + index * 20_000,
      key: `${key}:${doughId}`,
      who: 'crew',
      act: () => ({ type: 'testFloat', doughId, passed: true, lookAgainMs: null, personId }),
    }))
  })
}

/** What is planned goes in a little later than planned; on most days a load or two is left out for want of customers. */
function loads(day: PastDay, list: readonly DemoLoad[]): readonly Errand[] {
  return list.map(({ shelfId, inAtMs, lines }, order): Errand => {
    const key = `load:${order}`
    const draw = drawFor(day.seed, `${key}:${day.date}`)
    const atMs = inAtMs + draw.between(0, draw.oneIn(9) ? 200 : 50) * 1_000
    const isLeftOut = draw.oneIn(40)
    return {
      atMs,
      key,
      who: 'crew',
      act: ({ planned }) => {
        const id = plannedAt(planned, order)
        if (id === null) return null
        return isLeftOut ? { type: 'skipPlanned', plannedId: id } : { type: 'load', shelfId, plannedId: id, lines }
      },
    }
  })
}

function plannedAt(planned: State['planned'], order: number): PlannedLoad['id'] | null {
  for (const one of planned.values()) if (one.order === order && !one.done) return one.id
  return null
}

/** The flip and the out of a load that has just gone in. */
export function pastBake({ seed, date }: PastDay, load: Load): readonly Errand[] {
  const draw = drawFor(seed, `bake:${date}:${load.id}`)
  const flipMs = load.flip === null ? null : load.flip.targetAtMs + draw.between(-6, 20) * 1_000
  const outMs = (load.out?.targetAtMs ?? load.loadedAtMs + 16 * 60_000) + draw.between(-10, 70) * 1_000
  const out: Errand = {
    atMs: outMs,
    key: `out:${load.id}`,
    who: 'crew',
    act: (state) => {
      const phase = state.loads.get(load.id)?.phase
      return phase === undefined ? null : { type: 'out', loadId: load.id, from: phase, lines: null }
    },
  }
  if (flipMs === null || draw.oneIn(18)) return [out]
  return [{ atMs: flipMs, key: `flip:${load.id}`, who: 'crew', act: () => ({ type: 'flip', loadId: load.id }) }, out]
}

/** Dry hands settle what the board took for granted. */
function questions(day: PastDay): readonly Errand[] {
  const { openMinute, closeMinute } = day.shop.hours
  const count = Math.floor((closeMinute - openMinute) / CONFIRMS_EVERY_MINUTES) + 1
  return Array.from({ length: count }, (_, n): Errand => {
    const atMs = at(day, openMinute + n * CONFIRMS_EVERY_MINUTES)
    const act = ({ unsure }: State) => {
      const unsureIds = [...unsure.keys()].slice(0, UNSURE_MAX)
      return unsureIds.length === 0 ? null : ({ type: 'confirmPresumed', unsureIds } as const)
    }
    return { atMs, key: `confirm:${n}`, who: 'desk', act }
  })
}

const CARES = ['topUp', 'malt', 'skim', 'topUp', 'change', 'topUp', 'malt'] as const

function care(day: PastDay): readonly Errand[] {
  const firstMinute = day.shop.hours.ovenReadyMinute + 40
  return CARES.map((kind, n) => {
    const atMs = at(day, firstMinute + n * CARE_EVERY_MINUTES)
    return { atMs, key: `care:${n}`, who: 'crew', act: () => ({ type: 'care', care: kind }) }
  })
}

/** A tray that fell, on some days. */
function thrown(day: PastDay): readonly Errand[] {
  const draw = drawFor(day.seed, `thrown:${day.date}`)
  if (draw.oneIn(2)) return []
  const pieces = draw.whole(2, 9)
  const act = ({ batches }: State) => {
    const batch = [...batches.values()].find((one) => one.stage === 'chill' && one.pieces > pieces)
    return batch === undefined ? null : ({ type: 'wasteBatch', batchId: batch.id, from: 'chill', pieces } as const)
  }
  return [{ atMs: at(day, 8 * 60 + draw.between(0, 90)), key: 'thrown', who: 'crew', act }]
}

const NOTES = ['Rye proofed slowly', 'School box at 7:30 tomorrow', 'Shelf 2 bakes a little dark', 'Order more poppy']

/** What customers took untapped since a rod was last counted comes to light when the shop closes. */
function countedAtClose(state: State, day: PastDay, nowMs: number) {
  const counts = [...state.stock].flatMap(([varietyId, { lots }]) => {
    return piecesOf(lots) === 0 ? [] : [{ varietyId, pieces: seenOn(day, state, varietyId, nowMs), within: 0 }]
  })
  return counts.length === 0 ? null : ({ type: 'sweep', counts } as const)
}

/** What is left is given away or thrown out in part; then the day's account. */
export function pastClose(day: PastDay): readonly Errand[] {
  const { shop, seed, date } = day
  const draw = drawFor(seed, `close:${date}`)
  const closeMs = at(day, shop.hours.closeMinute)
  const crewMinutes = draw.whole(...CREW_MINUTES)
  const text = NOTES[draw.whole(0, NOTES.length - 1)] ?? ''
  const fates = inUse(shop.varieties).flatMap(({ id: varietyId }, index): readonly Errand[] => {
    const fate = draw.oneIn(3) ? (draw.oneIn(4) ? 'wasted' : 'given') : null
    if (fate === null) return []
    const act = ({ stock }: State) => {
      const pieces = Math.floor(piecesOf(stock.get(varietyId)?.lots ?? []) / 2)
      return pieces === 0 ? null : ({ type: 'remove', varietyId, pieces, fate } as const)
    }
    return [{ atMs: closeMs + 20_000 + index * 2_000, key: `left:${varietyId}`, who: 'counter', act }]
  })
  return [
    { atMs: closeMs + 5_000, key: 'counted', who: 'counter', act: (state, nowMs) => countedAtClose(state, day, nowMs) },
    ...fates,
    {
      atMs: closeMs + 180_000,
      key: 'for-tomorrow',
      who: 'desk',
      act: () => (draw.oneIn(2) ? { type: 'writeNote', text } : null),
    },
    {
      atMs: epochMs(closeMs + CLOSES_AFTER_MINUTES * 60_000),
      key: 'close',
      who: 'desk',
      act: () => ({ type: 'closeDay', crewMinutes }),
      confirmed: ['line-not-empty', 'orders-open'],
    },
  ]
}
