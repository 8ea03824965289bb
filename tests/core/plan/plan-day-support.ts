import type { Line } from '../../../shared-core/day/state.ts'
import type { Demand } from '../../../shared-core/demand/demand.ts'
import { partBy, profileFrom } from '../../../shared-core/demand/exposure.ts'
import { loadId, varietyId } from '../../../shared-core/ids.ts'
import type { Plan, PlanLoad } from '../../../shared-core/live/plan.ts'
import type { BakeLoad } from '../../../shared-core/plan/bake-off/bake-off.ts'
import type { BegunPieces, LineToday } from '../../../shared-core/plan/line-today.ts'
import type { PlanAsked } from '../../../shared-core/plan/plan-asked.ts'
import { instantOf, minuteOf } from '../../../shared-core/plan/plan-asked.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { at } from '../support/make.ts'
import { shelf, shopWith, table, variety } from '../support/shop.ts'

export const DATE = '2026-11-24'
export const NOON_MS = at('12:00')
const DAY = { noonMs: NOON_MS }

/** Three shelves of 72, sesame, poppy and plain of one dough, rye boiled cold of its own. */
export const SHOP = shopWith({
  shelves: table([1, 2, 3].map((n) => shelf({ id: `s${n}`, order: n, pieces: 72 }))),
  varieties: table([
    variety({ id: 'sesame', order: 1 }),
    variety({ id: 'poppy', order: 2 }),
    variety({ id: 'plain', order: 3, topping: 'none' }),
    variety({ id: 'rye', order: 4, doughId: shopWith().varieties.get(varietyId('rye'))?.doughId ?? raise() }),
  ]),
})

function raise(): never {
  throw new Error('the test shop has rye')
}

const PROFILE: Demand['profile'] = [
  [360, 0],
  [480, 0.34],
  [600, 0.66],
  [720, 0.82],
  [900, 1],
]

export const DEMAND: ReadonlyMap<string, Demand> = new Map([
  ['sesame', { mean: 90, dispersion: 9, profile: PROFILE }],
  ['poppy', { mean: 40, dispersion: 9, profile: PROFILE }],
  ['plain', { mean: 120, dispersion: 14, profile: PROFILE }],
  ['rye', { mean: 24, dispersion: 6, profile: PROFILE }],
])

/** The evening before: an empty line, and dough enough of each kind. */
export function eveningLine(parts: Partial<LineToday> = {}, shop: Shop = SHOP): LineToday {
  return {
    nowMs: at('20:00', -1),
    noonMs: NOON_MS,
    date: DATE,
    isOpen: false,
    isOver: false,
    slipMs: 0,
    kettleFromMs: null,
    boards: shop.boards.count,
    shelves: [...shop.shelves.keys()].map((shelfId) => ({ shelfId, isReopened: false, freeFromMs: null })),
    loads: [],
    begun: [],
    doughs: [chilled('plain', 420), chilled('rye', 60)],
    doughIsOpen: false,
    stock: [],
    cooling: [],
    ordered: [],
    pinned: [],
    forbids: [],
    contacts: [],
    ...parts,
  }
}

/** Ordered by name for a clock time of the test day. */
export function orderedAt(clock: string, lines: readonly Line[]): LineToday['ordered'] {
  const some = lines.map((line) => ({ ...line, without: [] }))
  return some.length === 0 ? [] : [{ dueAtMs: at(clock), takenAtMs: null, leadMs: 0, coolMs: 0, lines: some }]
}

export function chilled(dough: 'plain' | 'rye', pieces: number): LineToday['doughs'][number] {
  const id = [...SHOP.doughs.keys()].find((one) => one === dough) ?? raise()
  return { doughId: id, varietyId: null, pieces, stage: 'chill', boilFromMs: at('0:00'), latestAtMs: at('23:00') }
}

/** With a tenth of the usual work: what is tested holds of any plan. */
export function asking(parts: Partial<PlanAsked> = {}): PlanAsked {
  return {
    shop: SHOP,
    line: eveningLine(),
    demand: DEMAND,
    kitchen: new Map(),
    date: DATE,
    noonMs: NOON_MS,
    effort: 0.1,
    ...parts,
  }
}

/**
 * The same day at a minute, with the plan followed to the second: what has begun, what is in the oven, what cools and what
 * has sold as expected, times `busy`.
 */
export function followedTo(asked: PlanAsked, plan: Plan, minute: number, busy = 1): PlanAsked {
  const begun = plan.loads.filter((load) => minuteOf(DAY, load.kettleAtMs ?? load.inAtMs) < minute)
  const is = (load: PlanLoad) => ({ in: minuteOf(DAY, load.inAtMs), out: minuteOf(DAY, load.outAtMs) })
  const inOven = begun.filter((load) => is(load).in <= minute && is(load).out > minute)
  const waiting = begun.filter((load) => is(load).in > minute)
  const out = begun.filter((load) => is(load).out <= minute)
  const nowMs = instantOf(DAY, minute)
  const line: LineToday = {
    ...asked.line,
    nowMs,
    isOpen: true,
    loads: inOven.map(inOvenOf(nowMs)),
    begun: waiting.flatMap((load) => begunOf(asked, load, minute)),
    doughs: lessTaken(asked, begun, waiting, minute),
    stock: stockOf(asked, out, minute, busy),
    cooling: out
      .filter(({ readyAtMs }) => readyAtMs > nowMs)
      .flatMap(({ lines, readyAtMs }) => lines.map((one) => ({ ...one, readyAtMs }))),
    pinned: asked.line.pinned.filter(({ id }) => !begun.some((one) => one.id === id)),
  }
  const demand = new Map(
    [...asked.demand].map(([id, { mean, dispersion, profile }]) => {
      const rest = mean * (1 - partBy(profile, minute)) * busy
      return [id, { mean: rest, dispersion, profile: profileFrom(profile, minute) }] as const
    }),
  )
  return { ...asked, line, demand }
}

function inOvenOf(nowMs: number) {
  return ({ id, shelfId, inAtMs, flipAtMs, outAtMs, lines }: PlanLoad): LineToday['loads'][number] => ({
    id: loadId(`of ${id}`),
    shelfId,
    plannedId: id,
    inAtMs,
    flipAtMs,
    isFlipped: flipAtMs !== null && flipAtMs <= nowMs,
    outAtMs,
    boards: 0,
    lines,
  })
}

/** Kettle-fulls that have gone in by then, as plain dough: nobody has said what they become. */
function begunOf({ shop }: PlanAsked, load: PlanLoad, minute: number): BegunPieces[] {
  const cycle = shop.kettle.cycleMs / 60_000
  const start = minuteOf(DAY, load.kettleAtMs ?? load.inAtMs)
  const fulls = Math.min(load.dips, Math.floor((minute - start) / cycle) + 1)
  const [first] = load.lines
  const doughId = first === undefined ? undefined : shop.varieties.get(first.varietyId)?.doughId
  if (doughId === undefined) return []
  let rest = Math.min(
    fulls * shop.kettle.pieces,
    load.lines.reduce((sum, one) => sum + (shop.varieties.get(one.varietyId)?.doughId === doughId ? one.pieces : 0), 0),
  )
  return Array.from({ length: fulls }, (_, n): BegunPieces => {
    const pieces = Math.min(rest, shop.kettle.pieces)
    rest -= pieces
    const sinceMs = instantOf(DAY, start + n * cycle)
    return { doughId, varietyId: null, pieces, stage: start + (n + 1) * cycle <= minute ? 'boards' : 'kettle', sinceMs }
  }).filter(({ pieces }) => pieces > 0)
}

function lessTaken(
  asked: PlanAsked,
  begun: readonly PlanLoad[],
  waiting: readonly PlanLoad[],
  minute: number,
): LineToday['doughs'] {
  return asked.line.doughs.map((lot) => {
    const of = (lines: readonly Line[]) =>
      lines.reduce((sum, one) => {
        return asked.shop.varieties.get(one.varietyId)?.doughId === lot.doughId ? sum + one.pieces : sum
      }, 0)
    const gone = begun.filter((load) => !waiting.includes(load)).reduce((sum, { lines }) => sum + of(lines), 0)
    const dipped = waiting
      .flatMap((load) => begunOf(asked, load, minute))
      .reduce((sum, one) => (one.doughId === lot.doughId ? sum + one.pieces : sum), 0)
    return { ...lot, pieces: lot.pieces - gone - dipped }
  })
}

function stockOf({ demand }: PlanAsked, out: readonly PlanLoad[], minute: number, busy: number): readonly Line[] {
  const sums = new Map<string, number>()
  for (const { lines, readyAtMs } of out)
    for (const { varietyId: id, pieces } of lines)
      if (minuteOf(DAY, readyAtMs) <= minute) sums.set(id, (sums.get(id) ?? 0) + pieces)
  return [...sums].flatMap(([id, ready]) => {
    const known = demand.get(id)
    const sold = known === undefined ? 0 : known.mean * partBy(known.profile, minute) * busy
    const pieces = Math.max(0, Math.round(ready - sold))
    return pieces === 0 ? [] : [{ varietyId: varietyId(id), pieces }]
  })
}

/** A plan's loads as the planner's own, for its checker. */
export function asBakeLoads(plan: Plan, without: ReadonlySet<string> = new Set()): BakeLoad[] {
  return plan.loads
    .filter(({ id }) => !without.has(id))
    .map(({ shelfId, kettleAtMs, inAtMs, flipAtMs, outAtMs, lines }) => ({
      shelf: shelfId,
      kettleStart: minuteOf(DAY, kettleAtMs ?? inAtMs),
      in: minuteOf(DAY, inAtMs),
      flip: minuteOf(DAY, flipAtMs ?? inAtMs),
      out: minuteOf(DAY, outAtMs),
      lines: lines.map((one) => [one.varietyId, one.pieces] as const),
    }))
}
