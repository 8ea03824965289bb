import type { Line } from '../day/state.ts'
import type { PlannedId } from '../ids.ts'
import type { Plan } from '../live/plan.ts'
import { loadWindow, windowOf } from '../shop/windows.ts'
import { must } from '../support.ts'
import type { BakeLine, BakeLoad } from './bake-off/bake-off.ts'
import type { BegunPieces, LineLoad } from './line-today.ts'
import { partName } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'
import { standingLoads } from './standing-loads.ts'

const MINUTE_MS = 60_000

/** A load that stands: it is not moved. */
export interface Standing {
  readonly id: PlannedId | null
  readonly isPinned: boolean
  readonly load: BakeLoad
}

/** What has started, and what people set. */
export interface Started {
  /** In the oven, and pieces that are out and still cool. */
  readonly inOven: readonly BakeLoad[]
  /** Not in the oven yet, but of these pieces are in the kettle or on boards. */
  readonly begun: readonly Standing[]
  readonly pinned: readonly Standing[]
  /** Pieces that begun and pinned loads still take of the dough, by variety. */
  readonly stillTaken: readonly BakeLine[]
}

/**
 * What stands on the line. Pieces in the kettle and on boards go into the soonest load that has them, as a load tap will
 * gather them: of what people set or of the plan before; this load is then under way, and nobody changes it any more.
 * Pieces of no load are a load of their own, on the shelf that is free soonest.
 */
export function startedOf(asked: PlanAsked, before: Plan | null): Started {
  const pool = asked.line.begun.map((one) => ({ ...one, left: one.pieces }))
  const inOven = [...asked.line.loads.map((load) => loadInOven(asked, load)), ...coolingLoads(asked)]
  const standing: { begun: Standing[]; pinned: Standing[] } = { begun: [], pinned: [] }
  const stillTaken: BakeLine[] = []
  let kettleFree = kettleFreeMin(asked)
  // Pieces that somebody dipped early wait twice as long as they should: they were not begun for a load that is later yet.
  const soonMin = minuteOf(asked, asked.line.nowMs) + (2 * asked.shop.baking.boardWaitMs) / MINUTE_MS
  for (const wished of soonestFirst(asked, before)) {
    const taken = wished.inMin <= soonMin ? takenFor(asked, wished.lines, pool) : NONE_TAKEN
    const missing = wished.lines.map(
      ({ varietyId, pieces }): BakeLine => [varietyId, pieces - (taken.get(varietyId) ?? 0)],
    )
    const isBegun = taken.size > 0
    if (!isBegun && !wished.isPinned) continue
    stillTaken.push(...missing.filter(([, pieces]) => pieces > 0))
    const dips = dipsFor(asked, missing)
    const load = isBegun ? begunLoad(asked, wished, kettleFree, dips) : pinnedLoad(asked, wished)
    if (isBegun) kettleFree += dips * cycleMin(asked)
    ;(isBegun ? standing.begun : standing.pinned).push({ id: wished.id, isPinned: wished.isPinned, load })
  }
  const others = restLoads(asked, pool, [...inOven, ...[...standing.begun, ...standing.pinned].map(({ load }) => load)])
  return { inOven, begun: [...standing.begun, ...others], pinned: standing.pinned, stillTaken }
}

interface WishedLoad {
  readonly id: PlannedId
  readonly isPinned: boolean
  readonly shelf: string
  readonly inMin: number
  readonly lines: readonly Line[]
}

function soonestFirst(asked: PlanAsked, before: Plan | null): readonly WishedLoad[] {
  const { line } = asked
  const inUse = new Set<string>(line.shelves.map(({ shelfId }) => shelfId))
  const advised = standingLoads(asked, before).filter(({ shelfId }) => inUse.has(shelfId))
  const wish = (
    one: { id: PlannedId; shelfId: string; inAtMs: number; lines: readonly Line[] },
    isPinned: boolean,
  ) => ({
    id: one.id,
    isPinned,
    shelf: nameOf(asked, one.shelfId),
    inMin: minuteOf(asked, one.inAtMs),
    lines: one.lines,
  })
  return [...line.pinned.map((one) => wish(one, true)), ...advised.map((one) => wish(one, false))].sort(
    (one, other) => one.inMin - other.inMin || (one.id < other.id ? -1 : 1),
  )
}

/** A load of a hearth lies somewhere on its floor: the first part stands for it. */
function nameOf({ shop }: PlanAsked, id: string): string {
  const shelf = [...shop.shelves.values()].find((one) => one.id === id)
  return shop.oven.kind === 'hearth' && shelf !== undefined ? partName(shelf.id, 0) : id
}

type Pooled = BegunPieces & { left: number }

const NONE_TAKEN: ReadonlyMap<string, number> = new Map()

/** Pieces of a variety first, then plain dough that may become it. */
function takenFor({ shop }: PlanAsked, lines: readonly Line[], pool: Pooled[]): ReadonlyMap<string, number> {
  const taken = new Map<string, number>()
  for (const isSaid of [true, false]) {
    for (const { varietyId, pieces } of lines) {
      const dough = shop.varieties.get(varietyId)?.doughId
      let short = pieces - (taken.get(varietyId) ?? 0)
      for (const one of pool) {
        const fits = isSaid ? one.varietyId === varietyId : one.varietyId === null && one.doughId === dough
        const got = fits ? Math.min(short, one.left) : 0
        if (got <= 0) continue
        one.left -= got
        short -= got
        taken.set(varietyId, (taken.get(varietyId) ?? 0) + got)
      }
    }
  }
  return taken
}

function cycleMin({ shop }: PlanAsked): number {
  return shop.kettle.cycleMs / MINUTE_MS
}

/** When the kettle is done with what is in it, and boils. */
function kettleFreeMin(asked: PlanAsked): number {
  const { line } = asked
  const inKettle = line.begun.filter(({ stage }) => stage === 'kettle')
  const ends = inKettle.map(({ sinceMs }) => minuteOf(asked, sinceMs) + cycleMin(asked))
  const boils = line.kettleFromMs === null ? [] : [minuteOf(asked, line.kettleFromMs)]
  return Math.max(minuteOf(asked, line.nowMs), ...ends, ...boils)
}

function dipsFor({ shop }: PlanAsked, lines: readonly BakeLine[]): number {
  const pieces = lines.reduce((sum, [, some]) => sum + some, 0)
  return Math.ceil(pieces / shop.kettle.pieces)
}

/** What is still to be dipped goes in at once, and the load when it should, or as soon as it can. */
function begunLoad(asked: PlanAsked, wished: WishedLoad, kettleFree: number, dipsLeft: number): BakeLoad {
  const end = kettleFree + dipsLeft * cycleMin(asked)
  const into = Math.max(wished.inMin, end, shelfFreeMin(asked, wished.shelf))
  const all = dipsFor(asked, bakeLines(wished.lines))
  return timed(asked, {
    shelf: wished.shelf,
    into,
    kettleStart: end - all * cycleMin(asked),
    lines: bakeLines(wished.lines),
  })
}

/** As people set it; its dips just before it. */
function pinnedLoad(asked: PlanAsked, { shelf, inMin, lines }: WishedLoad): BakeLoad {
  const dips = dipsFor(asked, bakeLines(lines))
  return timed(asked, { shelf, into: inMin, kettleStart: inMin - dips * cycleMin(asked), lines: bakeLines(lines) })
}

function shelfFreeMin(asked: PlanAsked, shelf: string): number {
  const handling = asked.shop.oven.handlingMs / MINUTE_MS
  const outs = asked.line.loads
    .filter(({ shelfId }) => nameOf(asked, shelfId) === shelf)
    .map(({ outAtMs }) => minuteOf(asked, outAtMs) + handling)
  return Math.max(minuteOf(asked, asked.line.nowMs), ...(asked.shop.oven.kind === 'hearth' ? [] : outs))
}

function bakeLines(lines: readonly Line[]): BakeLine[] {
  return lines.map(({ varietyId, pieces }) => [varietyId, pieces])
}

interface ToTime {
  readonly shelf: string
  readonly kettleStart: number
  readonly into: number
  readonly lines: readonly BakeLine[]
}

function timed({ shop }: PlanAsked, { shelf, kettleStart, into, lines }: ToTime): BakeLoad {
  const ids = [...shop.varieties.keys()].filter((id) => lines.some(([name]) => name === id))
  const first = (loadWindow(shop, 'firstSide', ids)?.targetMs ?? 0) / MINUTE_MS
  const bake = (loadWindow(shop, 'bake', ids)?.targetMs ?? 0) / MINUTE_MS
  return { shelf, kettleStart, in: into, flip: into + Math.min(first, bake), out: into + bake, lines }
}

function loadInOven(asked: PlanAsked, { shelfId, inAtMs, flipAtMs, isFlipped, outAtMs, lines }: LineLoad): BakeLoad {
  const into = minuteOf(asked, inAtMs)
  const flip = flipAtMs === null ? into : minuteOf(asked, flipAtMs)
  const all = dipsFor(asked, bakeLines(lines)) * cycleMin(asked)
  return {
    shelf: nameOf(asked, shelfId),
    kettleStart: into - all,
    in: into,
    flip: isFlipped ? Math.min(flip, minuteOf(asked, asked.line.nowMs)) : flip,
    out: minuteOf(asked, outAtMs),
    lines: bakeLines(lines),
  }
}

/** Pieces that are out and cool hold nothing any more: a load that came out so long before they are ready. */
function coolingLoads(asked: PlanAsked): BakeLoad[] {
  const { shop, line } = asked
  const shelf = line.shelves[0]?.shelfId ?? 'out'
  return line.cooling.map(({ varietyId, pieces, readyAtMs }) => {
    const { doughId } = must(shop.varieties, varietyId)
    const cool = (windowOf(shop, 'cool', doughId, varietyId)?.targetMs ?? 0) / MINUTE_MS
    const out = minuteOf(asked, readyAtMs) - cool
    const early = out - shop.oven.handlingMs / MINUTE_MS - 60
    return {
      shelf: nameOf(asked, shelf),
      kettleStart: early,
      in: early,
      flip: early,
      out,
      lines: [[varietyId, pieces]],
    }
  })
}

/** Pieces of no load: of those that nobody named, the variety of their dough that is asked for most. */
function restLoads(asked: PlanAsked, pool: readonly Pooled[], standing: readonly BakeLoad[]): Standing[] {
  const sums = new Map<string, number>()
  for (const { doughId, varietyId, left } of pool) {
    const name = varietyId ?? likeliest(asked, doughId)
    if (left > 0 && name !== null) sums.set(name, (sums.get(name) ?? 0) + left)
  }
  const lines = [...sums].map(([name, pieces]): BakeLine => [name, pieces])
  const dippedBy = kettleFreeMin(asked)
  const back = dipsFor(asked, lines) * cycleMin(asked)
  const loads = asked.line.shelves.map(({ shelfId }): BakeLoad => {
    const shelf = nameOf(asked, shelfId)
    const soonest = timed(asked, { shelf, kettleStart: dippedBy - back, into: dippedBy, lines })
    return intoGap(asked, soonest, standing)
  })
  const [first] = loads.sort((one, other) => one.in - other.in)
  return sums.size === 0 || first === undefined ? [] : [{ id: null, isPinned: false, load: first }]
}

/** As soon as its shelf has room for it, also before a load that people set for later. */
function intoGap({ shop }: PlanAsked, load: BakeLoad, standing: readonly BakeLoad[]): BakeLoad {
  const handling = shop.oven.handlingMs / MINUTE_MS
  const inTurn = standing.filter(({ shelf }) => shelf === load.shelf).sort((one, other) => one.in - other.in)
  let by = 0
  for (const other of inTurn) {
    const isClear = load.out + by + handling <= other.in || other.out + handling <= load.in + by
    if (!isClear) by = other.out + handling - load.in
  }
  return { ...load, in: load.in + by, flip: load.flip + by, out: load.out + by }
}

function likeliest({ shop, demand }: PlanAsked, dough: string): string | null {
  const of = [...shop.varieties.values()].filter(({ doughId, decidedAt }) => doughId === dough && decidedAt === 'line')
  const mean = (id: string) => demand.get(id)?.mean ?? 0
  return of.sort((one, other) => mean(other.id) - mean(one.id) || one.order - other.order)[0]?.id ?? null
}
