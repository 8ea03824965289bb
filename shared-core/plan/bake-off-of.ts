import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { Plan } from '../live/plan.ts'
import { closesAtMinute } from '../shop/hours.ts'
import type { BakeLoad, BakeOff, DoughGiven, Forbidden, HandsGiven } from './bake-off/bake-off.ts'
import { doughKey } from './dough-key.ts'
import { namedOrders, ordersGiven } from './orders-given.ts'
import { hoursFor, ovenGiven } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'
import type { Started } from './running-of.ts'
import { startedOf } from './running-of.ts'
import { valuedVarieties } from './variety-given.ts'

const MINUTE_MS = 60_000

/** The shop as a planning problem, and what is needed to tell its answer. */
export interface Problem {
  readonly given: BakeOff
  readonly started: Started
  /** Cents that the figures people see have beside the planner's profit (`variety-given.ts`). */
  readonly besideCents: number
}

/** The planning problem of a shop. @see problemOf for one that knows which loads have begun */
export function bakeOffOf(asked: PlanAsked): BakeOff {
  return problemOf(asked, null).given
}

/**
 * @param before the plan that people work by: pieces in the kettle and on boards are of its next loads
 */
export function problemOf(asked: PlanAsked, before: Plan | null): Problem {
  const { shop, line } = asked
  const hours = hoursFor(asked)
  const started = startedOf(asked, before)
  const valued = valuedVarieties(asked, thereToday(asked, started))
  const { baking, boards, kettle } = shop
  const pinned = started.pinned.map(({ load }) => load)
  const running = [...started.inOven, ...started.begun.map(({ load }) => load)]
  const hands = handsOf(asked)
  const kettleFrom = line.kettleFromMs === null ? null : minuteOf(asked, line.kettleFromMs)
  const given: BakeOff = {
    unit: baking.unitPieces,
    kettle: {
      pieces: kettle.pieces,
      cycleMin: kettle.cycleMs / MINUTE_MS,
      ...(kettleFrom === null ? {} : { readyMin: kettleFrom }),
    },
    boards: {
      count: line.boards,
      pieces: boards.pieces,
      maxWaitMin: baking.boardWaitMs / MINUTE_MS,
      rewetMin: boards.rewetMs / MINUTE_MS,
    },
    oven: ovenGiven(asked),
    coolMin: (shop.windows.cool?.targetMs ?? 0) / MINUTE_MS,
    bakeToleranceMin: baking.toleranceMs / MINUTE_MS,
    open: hours.openMinute,
    close: closesAtMinute(hours),
    doughs: doughsOf(asked, started),
    varieties: valued.map((one) => one.given),
    orders: ordersGiven(asked),
    ...(line.isOpen ? { now: minuteOf(asked, line.nowMs) } : {}),
    ...(running.length > 0 ? { running } : {}),
    ...(hands === null ? {} : { hands }),
    ...(pinned.length > 0 ? { pinned } : {}),
    ...(line.forbids.length > 0 ? { forbidden: forbiddenOf(asked) } : {}),
    contactNow: [...new Set(line.contacts.flatMap(({ allergens }) => allergens))].sort(),
    contactCost: baking.contactCents,
  }
  const besideCents = valued.reduce((sum, { given: of, besideCents: cents }) => sum + cents * of.demand.mean, 0)
  return { given, started, besideCents }
}

/** Varieties that are there, or will be, or are ordered, whether or not anything is known of who asks for them. */
function thereToday(asked: PlanAsked, { inOven, begun, pinned }: Started): ReadonlySet<VarietyId> {
  const loads: readonly BakeLoad[] = [...inOven, ...[...begun, ...pinned].map(({ load }) => load)]
  return new Set([
    ...[...asked.line.stock, ...namedOrders(asked).flatMap(({ lines }) => lines)].map((one) => one.varietyId),
    ...loads.flatMap(({ lines }) => lines.map(([name]) => varietyId(name))),
  ])
}

/**
 * Dough by what it becomes. All pieces of a dough are taken to be ready with the first lot that makes half of them: the
 * planner knows one time for a dough. What is left over keeps its value where it may stand until tomorrow.
 */
function doughsOf(asked: PlanAsked, started: Started): Record<string, DoughGiven> {
  const { shop, line, demand } = asked
  const lots = new Map<string, { pieces: number; boilMin: number; keeps: boolean }[]>()
  const tomorrowMs = asked.noonMs + KEEPS_UNTIL_MS
  const { mustBeEmptyMin } = ovenGiven(asked)
  for (const { doughId, varietyId: of, pieces, boilFromMs, latestAtMs } of line.doughs) {
    // What still proofs for tomorrow is no dough of today.
    if (minuteOf(asked, boilFromMs) >= mustBeEmptyMin) continue
    const key = doughKey(shop, doughId, of)
    const keeps = latestAtMs === null || latestAtMs >= tomorrowMs
    lots.set(key, [...(lots.get(key) ?? []), { pieces, boilMin: minuteOf(asked, boilFromMs), keeps }])
  }
  const doughs: Record<string, DoughGiven> = {}
  for (const variety of shop.varieties.values()) {
    const key = doughKey(shop, variety.doughId, variety.id)
    const its = lots.get(key) ?? []
    const all = its.reduce((sum, { pieces }) => sum + pieces, 0)
    const taken = started.stillTaken
      .filter(([name]) => keyOfName(asked, name) === key)
      .reduce((sum, [, pieces]) => sum + pieces, 0)
    const known = demand.get(variety.id)
    const open = line.doughIsOpen && known !== undefined ? openPieces(known.mean, known.dispersion) : 0
    const so = doughs[key]
    if (so !== undefined) {
      doughs[key] = { ...so, pieces: so.pieces + open }
      continue
    }
    const carry = carryCents(asked, key) * (all === 0 ? 0 : sumOf(its.filter(({ keeps }) => keeps)) / all)
    const ready = readyMin(its)
    doughs[key] = {
      pieces: Math.max(0, all - taken) + open,
      ...(ready !== null && ready > minuteOf(asked, line.nowMs) ? { notBeforeMin: ready } : {}),
      ...(carry > 0 ? { carryValue: carry } : {}),
    }
  }
  return doughs
}

/** Noon of the next day is well into its baking. */
const KEEPS_UNTIL_MS = 24 * 60 * 60_000

function sumOf(lots: readonly { readonly pieces: number }[]): number {
  return lots.reduce((sum, { pieces }) => sum + pieces, 0)
}

function readyMin(lots: readonly { readonly pieces: number; readonly boilMin: number }[]): number | null {
  const half = sumOf(lots) / 2
  let ready = 0
  for (const { pieces, boilMin } of [...lots].sort((one, other) => one.boilMin - other.boilMin)) {
    ready += pieces
    if (ready >= half) return boilMin
  }
  return null
}

function keyOfName({ shop }: PlanAsked, name: string): string | null {
  const variety = shop.varieties.get(varietyId(name))
  return variety === undefined ? null : doughKey(shop, variety.doughId, variety.id)
}

/** More than anybody would bake: four deviations over the mean. */
function openPieces(mean: number, dispersion: number): number {
  return Math.ceil(mean + 4 * Math.sqrt(mean + (mean * mean) / dispersion))
}

/** What a chilled piece is worth tomorrow: a part of what its varieties cost to make, by what is asked for. */
function carryCents({ shop, demand }: PlanAsked, key: string): number {
  let [weight, cost] = [0, 0]
  for (const { id, doughId, costCents } of shop.varieties.values()) {
    const mean = demand.get(id)?.mean ?? 0
    if (doughKey(shop, doughId, id) !== key || mean <= 0) continue
    weight += mean
    cost += mean * costCents
  }
  return weight === 0 ? 0 : ((cost / weight) * shop.baking.carryPercent) / 100
}

function forbiddenOf(asked: PlanAsked): Forbidden[] {
  return asked.line.forbids.flatMap(({ shelfId, varietyId: id, fromMs, toMs }) => {
    const of = {
      fromMin: minuteOf(asked, fromMs),
      toMin: minuteOf(asked, toMs),
      ...(id === null ? {} : { variety: id }),
    }
    if (shelfId === null) return [of]
    const names = ovenGiven(asked).shelves.map(({ name }) => name)
    return names.filter((name) => name === shelfId || name.startsWith(`${shelfId}#`)).map((shelf) => ({ ...of, shelf }))
  })
}

/** Null: nobody has said who is there, nor what the door takes. */
function handsOf({ shop }: PlanAsked): HandsGiven | null {
  const { door, people } = shop.baking
  if (people.length === 0 && door.loadMs + door.flipMs + door.outMs === 0) return null
  return {
    loadMin: door.loadMs / MINUTE_MS,
    flipMin: door.flipMs / MINUTE_MS,
    outMin: door.outMs / MINUTE_MS,
    people: people.map(({ fromMinute, people: count }) => [fromMinute, count]),
  }
}
