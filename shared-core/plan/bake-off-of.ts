import type { Demand } from '../demand/demand.ts'
import { allergensOfVariety, namesOf } from '../dough/allergens.ts'
import type { DoughId, ShelfId, VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop, Variety } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import type { BakeLoad, BakeOff, DoughGiven, HandsGiven, ShelfGiven, VarietyGiven } from './bake-off/bake-off.ts'
import { placeName, placesOf } from './floor-places.ts'
import type { LineToday, LoadOnLine } from './line-today.ts'
import type { Worth } from './worth.ts'
import { moneyOf, worthOf } from './worth.ts'

/** What a plan is made of: the shop, its line as it stands, and what will be asked for. */
export interface PlanAsked {
  readonly shop: Shop
  readonly line: LineToday
  /** By variety: of the rest of the day where `line.nowMinute` is one, else of all of it. */
  readonly demand: ReadonlyMap<string, Demand>
  /** Of a variety's demand, what the kitchen uses: 0 to 1. */
  readonly kitchen: ReadonlyMap<VarietyId, number>
  /** The shop's noon of the date. */
  readonly noonMs: EpochMs
}

const MINUTE_MS = 60_000
/** Nobody knows how long it bakes: it cannot be planned. */
const NO_BAKE = 0
/** Of what is baked about so much is left at the close in a shop that aims right; common practice, no source. */
const LEFT_PART = 0.08

/**
 * The shop's morning as the planner's problem. Money is in cents. What a piece is worth (`worth.ts`) is split into its
 * price and what asking in vain costs beside it; where people take another variety instead, it is worth less than its
 * price, and that lower worth is its price here. A left piece fetches the day-old price as far as day-old pieces sell.
 * @param fixed loads that are not to be changed: in the oven, begun, or set by people
 */
export function bakeOffOf(asked: PlanAsked, fixed: readonly LoadOnLine[]): BakeOff {
  const { shop, line } = asked
  const varieties = plannedVarieties(asked)
  const places = placesOf(shop, line)
  const { kettle, boards, oven, baking } = shop
  const begin = line.nowMinute ?? Number.NEGATIVE_INFINITY
  const firstSides = varieties.flatMap(({ flip, doughId, id }) =>
    flip ? [targetMin(shop, 'firstSide', doughId, id)] : [],
  )
  return {
    unit: baking.unitPieces,
    kettle: {
      pieces: kettle.pieces,
      cycleMin: kettle.cycleMs / MINUTE_MS,
      ...(line.kettleReadyMinute === null ? {} : { readyMin: line.kettleReadyMinute }),
    },
    boards: {
      count: line.boards,
      pieces: boards.pieces,
      maxWaitMin: baking.boardWaitMs / MINUTE_MS,
      rewetMin: boards.rewetMs / MINUTE_MS,
    },
    oven: {
      readyMin: line.ovenReadyMinute,
      mustBeEmptyMin: line.emptyMinute,
      firstSideMin: Math.max(0, ...firstSides),
      handlingMin: oven.handlingMs / MINUTE_MS,
      shelves: places.map((place) => shelfGiven(shop, place)),
      ...(oven.kind === 'rotating' && baking.turnMs > 0 ? { turnMin: baking.turnMs / MINUTE_MS } : {}),
    },
    coolMin: (shop.windows.cool?.targetMs ?? 0) / MINUTE_MS,
    bakeToleranceMin: baking.toleranceMs / MINUTE_MS,
    open: line.openMinute,
    close: line.closeMinute,
    doughs: doughsOf(asked, varieties, fixed),
    varieties: varieties.map((variety) => varietyGiven(asked, variety)),
    orders:
      line.ordered.length === 0 || begin >= line.openMinute
        ? []
        : [{ due: line.openMinute, lines: line.ordered.map((one) => [one.varietyId, one.pieces] as const) }],
    ...(line.nowMinute === null ? {} : { now: line.nowMinute }),
    running: fixed.map((load) => runningLoad(load, places, varieties)),
    ...handsOf(shop),
    forbidden: line.forbids.map(({ shelfId, varietyId: id, fromMinute, toMinute }) => ({
      ...(shelfId === null ? {} : { shelf: shelfId }),
      ...(id === null ? {} : { variety: id }),
      fromMin: fromMinute,
      toMin: toMinute,
    })),
    contactNow: line.contactNow,
    contactCost: baking.contactCents,
  }
}

/** On the menu, with a forecast, a bake that somebody knows, and dough of its kind or a load with it. */
function plannedVarieties({ shop, demand }: PlanAsked): readonly Variety[] {
  return inUse(shop.varieties).filter(
    ({ id, doughId }) => demand.has(id) && targetMin(shop, 'bake', doughId, id) > NO_BAKE,
  )
}

function targetMin(shop: Shop, stage: 'bake' | 'firstSide' | 'cool', doughId: DoughId, id: VarietyId): number {
  return (windowOf(shop, stage, doughId, id)?.targetMs ?? 0) / MINUTE_MS
}

function shelfGiven(
  { shelves }: Shop,
  place: { readonly shelfId: ShelfId; readonly name: string; readonly pieces: number },
): ShelfGiven {
  const emptyBy = shelves.get(place.shelfId)?.emptyByMinute ?? null
  return { name: place.name, pieces: place.pieces, ...(emptyBy === null ? {} : { emptyByMin: emptyBy }) }
}

/** Plain dough by its id; what became a variety at the mixer by both. */
export function doughName(doughId: DoughId, id: VarietyId | null): string {
  return id === null ? doughId : `${doughId} ${id}`
}

/** Where a variety's pieces come from: those mixed as it, where there are such, else plain dough. */
function doughNameOf({ line }: PlanAsked, { id, doughId }: Variety): string {
  const isMixed = [...line.dough, ...line.begun].some((one) => one.varietyId === id)
  return doughName(doughId, isMixed ? id : null)
}

function doughsOf(
  asked: PlanAsked,
  varieties: readonly Variety[],
  fixed: readonly LoadOnLine[],
): Readonly<Record<string, DoughGiven>> {
  const { shop, line } = asked
  const names = new Map(varieties.map((variety) => [doughNameOf(asked, variety), variety]))
  const taken = new Map<string, number>()
  const inOven = new Set(line.baking)
  for (const load of fixed) {
    if (inOven.has(load)) continue
    for (const { varietyId: id, pieces } of load.lines) {
      const variety = shop.varieties.get(id)
      if (variety === undefined) continue
      const name = doughNameOf(asked, variety)
      taken.set(name, (taken.get(name) ?? 0) + pieces)
    }
  }
  return Object.fromEntries(
    [...names].map(([name, variety]) => {
      const here = [...line.dough, ...line.begun].filter((one) => doughName(one.doughId, one.varietyId) === name)
      const pieces = here.reduce((sum, one) => sum + one.pieces, 0) - (taken.get(name) ?? 0)
      const from = here.map(({ fromMinute }) => fromMinute ?? Number.NEGATIVE_INFINITY)
      const notBefore = from.length === 0 ? Number.NEGATIVE_INFINITY : Math.min(...from)
      const keeps = here.every(({ untilMinute }) => untilMinute === null || untilMinute >= 1_440 + line.openMinute)
      const { costCents } = moneyOf(shop, variety)
      return [
        name,
        {
          pieces: Math.max(0, pieces),
          ...(Number.isFinite(notBefore) ? { notBeforeMin: notBefore } : {}),
          ...(keeps ? { carryValue: (costCents * shop.baking.carryPercent) / 100 } : {}),
        },
      ]
    }),
  )
}

function varietyGiven(asked: PlanAsked, variety: Variety): VarietyGiven {
  const { shop, line, demand } = asked
  const { id, doughId } = variety
  const forecast = demand.get(id) ?? {
    mean: 0,
    dispersion: 1,
    profile: [[line.openMinute, 0] as const, [line.closeMinute, 1] as const],
  }
  const worth = worthOf(shop, variety, { means: meansOf(demand), kitchen: asked.kitchen })
  const price = moneyOf(shop, variety).priceCents
  const whole = worthOfUse(worth)
  return {
    name: id,
    dough: doughNameOf(asked, variety),
    bakeMin: targetMin(shop, 'bake', doughId, id),
    coolMin: targetMin(shop, 'cool', doughId, id),
    onShelf: line.forSale.find((one) => one.varietyId === id)?.pieces ?? 0,
    price: Math.min(price, whole),
    lostSale: Math.max(0, whole - price),
    cost: worth.costCents,
    salvage: Math.min(worth.costCents, worth.dayOldCents * dayOldShare(asked)),
    stalePerHour: (price * shop.baking.stalePercentPerHour) / 100,
    demand: forecast,
    ...(variety.showLeast > 0
      ? {
          show: {
            atOpen: variety.showLeast,
            least: variety.showLeast,
            untilMin: shop.baking.showUntilMinute ?? line.openMinute,
          },
        }
      : {}),
    ...(variety.avoids.length > 0 ? { avoids: variety.avoids } : {}),
    brings: namesOf(allergensOfVariety(shop, id)),
  }
}

/** What one piece is worth to whoever asks for it, in the mean of its uses. */
function worthOfUse({ uses }: Worth): number {
  return uses.reduce((sum, { part, worthCents }) => sum + part * worthCents, 0)
}

export function meansOf(demand: PlanAsked['demand']): ReadonlyMap<VarietyId, number> {
  return new Map([...demand].map(([id, { mean }]) => [varietyId(id), mean]))
}

/** The shop sells so many day-old pieces a day and not more. */
function dayOldShare({ shop, demand }: PlanAsked): number {
  const left = LEFT_PART * [...demand.values()].reduce((sum, { mean }) => sum + mean, 0)
  return left <= 0 ? 1 : Math.min(1, shop.demand.dayOldSells / left)
}

function runningLoad(load: LoadOnLine, places: ReturnType<typeof placesOf>, varieties: readonly Variety[]): BakeLoad {
  const known = new Set<VarietyId>(varieties.map(({ id }) => id))
  return {
    shelf: placeName(places, load),
    kettleStart: load.kettleMinute,
    in: load.inMinute,
    flip: load.flipMinute,
    out: load.outMinute,
    lines: load.lines.filter((one) => known.has(one.varietyId)).map((one) => [one.varietyId, one.pieces] as const),
  }
}

function handsOf({ baking }: Shop): { readonly hands?: HandsGiven } {
  const { door, people } = baking
  const isLimit = door.loadMs > 0 || door.flipMs > 0 || door.outMs > 0 || people.length > 0
  if (!isLimit) return {}
  return {
    hands: {
      loadMin: door.loadMs / MINUTE_MS,
      flipMin: door.flipMs / MINUTE_MS,
      outMin: door.outMs / MINUTE_MS,
      people: people.map((one) => [one.fromMinute, one.people] as const),
    },
  }
}
