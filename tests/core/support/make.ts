import type { Habit } from '../../../shared-core/day/habit.ts'
import type { Care, Mark, Note } from '../../../shared-core/day/said.ts'
import type {
  Account,
  Batch,
  Day,
  Forbid,
  Keep,
  Line,
  Load,
  Lot,
  PlannedLoad,
  ShelfUse,
  State,
  Stock,
  Unsure,
  Until,
} from '../../../shared-core/day/state.ts'
import type { Build, Mix } from '../../../shared-core/dough/mix.ts'
import type { DoughId } from '../../../shared-core/ids.ts'
import { batchId, doughId, loadId, plannedId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { MakeTimes, Order, PortionsLeft, StandingOrder } from '../../../shared-core/orders/order.ts'
import type { BatchStage, Shop } from '../../../shared-core/shop/shop.ts'
import { NO_STOCK } from '../../../shared-core/stock/apply-stock.ts'
import { must } from '../../../shared-core/support.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { shopWith } from './shop.ts'

/**
 * Small named makers: each gives a valid thing of which a test says only what matters to it.
 * `at('6:47')` is a wall-clock time of the test day in the test shop's zone (America/Chicago, UTC−6 on that day).
 */
const MIDNIGHT_MS = Date.UTC(2026, 10, 24, 6)

/** An instant of the test day, or of a day after or before. @example at('6:47:30'), at('18:00', -1) */
export function at(clock: string, dayOffset = 0): EpochMs {
  const [hours = 0, minutes = 0, seconds = 0] = clock.split(':').map(Number)
  return epochMs(MIDNIGHT_MS + dayOffset * 86_400_000 + ((hours * 60 + minutes) * 60 + seconds) * 1_000)
}

/** The instant of a minute after local midnight of the test day, as the edge passes it to views. */
export function minuteToMs(minuteOfDay: number): EpochMs {
  return epochMs(MIDNIGHT_MS + minuteOfDay * 60_000)
}

/** Earliest, target and latest as clock times. @example until('6:30', '6:40', '7:00') */
export function until(earliest: string, target: string, latest: string): Until {
  return { earliestAtMs: at(earliest), targetAtMs: at(target), latestAtMs: at(latest) }
}

/** @example lines('sesame', 24, 'poppy', 12) */
export function lines(...namesAndPieces: readonly (string | number)[]): Line[] {
  const made: Line[] = []
  for (let i = 0; i < namesAndPieces.length; i += 2)
    made.push({ varietyId: varietyId(String(namesAndPieces[i])), pieces: Number(namesAndPieces[i + 1]) })
  return made
}

export interface BatchParts {
  readonly id?: string
  readonly dough?: string
  readonly variety?: string | null
  readonly pieces?: number
  readonly stage?: BatchStage
  readonly load?: string | null
  readonly since?: EpochMs
  readonly until?: Until | null
  readonly presumed?: boolean
}

/** 36 pieces of plain dough on the rack since 6:00, unless said otherwise. */
export function batch(parts: BatchParts = {}): Batch {
  return {
    id: batchId(parts.id ?? 'b1'),
    doughId: doughId(parts.dough ?? 'plain'),
    varietyId: parts.variety == null ? null : varietyId(parts.variety),
    pieces: parts.pieces ?? 36,
    stage: parts.stage ?? 'rack',
    loadId: parts.load == null ? null : loadId(parts.load),
    sinceMs: parts.since ?? at('6:00'),
    until: parts.until ?? null,
    presumed: parts.presumed ?? false,
  }
}

export interface LoadParts {
  readonly id?: string
  readonly shelf?: string
  readonly phase?: Load['phase']
  readonly loadedAt?: EpochMs
  readonly boards?: number
  readonly flippedAt?: EpochMs | null
  readonly boardsWetAt?: EpochMs | null
  readonly flip?: Until | null
  readonly out?: Until | null
  readonly planned?: string | null
}

/** A load on shelf 1 since 6:40 in its first side: flip at 6:43:30, out at 6:56. */
export function load(parts: LoadParts = {}): Load {
  return {
    id: loadId(parts.id ?? 'l1'),
    shelfId: shelfId(parts.shelf ?? 's1'),
    phase: parts.phase ?? 'first-side',
    loadedAtMs: parts.loadedAt ?? at('6:40'),
    boards: parts.boards ?? 8,
    flippedAtMs: parts.flippedAt ?? null,
    boardsWetAtMs: parts.boardsWetAt ?? null,
    flip: parts.flip === undefined ? until('6:43', '6:43:30', '6:45') : parts.flip,
    out: parts.out === undefined ? until('6:54', '6:56', '6:58') : parts.out,
    plannedId: parts.planned == null ? null : plannedId(parts.planned),
  }
}

/** A load with what is in it: one batch in the oven for each line. */
export function loadOf(
  parts: LoadParts,
  contents: readonly Line[],
  shop: Shop = shopWith(),
): { readonly load: Load; readonly batches: readonly Batch[] } {
  const made = load(parts)
  return {
    load: made,
    batches: contents.map((line, n) => ({
      ...batch({ id: `${made.id}.${n}`, pieces: line.pieces, stage: 'oven', since: made.loadedAtMs }),
      doughId: must(shop.varieties, line.varietyId).doughId,
      varietyId: line.varietyId,
      loadId: made.id,
    })),
  }
}

/** A dozen that came out at 6:30 and is for sale from 6:45. */
export function lot(parts: { id?: string; pieces?: number; outAt?: EpochMs; readyAt?: EpochMs } = {}): Lot {
  return {
    id: batchId(parts.id ?? 'lot1'),
    pieces: parts.pieces ?? 12,
    outAtMs: parts.outAt ?? at('6:30'),
    readyAtMs: parts.readyAt ?? at('6:45'),
  }
}

/** What is known of one variety's stock; the dough follows from the shop. */
export function stock(variety: string, parts: Partial<Stock> = {}, shop: Shop = shopWith()): Stock {
  const id = varietyId(variety)
  return {
    varietyId: id,
    doughId: must(shop.varieties, id).doughId,
    ...NO_STOCK,
    ...parts,
  }
}

/** A planned load of 48 sesame for any shelf, as soon as one is free. */
export function planned(
  parts: {
    id?: string
    order?: number
    shelf?: string | null
    inAt?: EpochMs | null
    lines?: readonly Line[]
    done?: boolean
  } = {},
): PlannedLoad {
  return {
    id: plannedId(parts.id ?? 'p1'),
    order: parts.order ?? 1,
    shelfId: parts.shelf == null ? null : shelfId(parts.shelf),
    inAtMs: parts.inAt ?? null,
    lines: parts.lines ?? lines('sesame', 48),
    done: parts.done ?? false,
  }
}

export interface StateParts {
  readonly shop?: Shop | null
  readonly day?: Day | null
  readonly batches?: readonly Batch[]
  readonly loads?: readonly Load[]
  /** Loads together with what is in them. */
  readonly loaded?: readonly { readonly load: Load; readonly batches: readonly Batch[] }[]
  readonly shelves?: { readonly [shelf: string]: ShelfUse }
  readonly stock?: readonly Stock[]
  readonly keeps?: readonly Keep[]
  readonly orders?: readonly Order[]
  readonly standing?: readonly StandingOrder[]
  readonly portions?: readonly PortionsLeft[]
  readonly makeTimes?: readonly MakeTimes[]
  readonly planned?: readonly PlannedLoad[]
  readonly forbids?: readonly Forbid[]
  readonly unsure?: readonly Unsure[]
  readonly marks?: readonly Mark[]
  readonly notes?: readonly Note[]
  readonly cares?: readonly Care[]
  readonly habits?: readonly Habit[]
  readonly mixes?: readonly Mix[]
  readonly builds?: readonly Build[]
  readonly touches?: { readonly [key: string]: number }
  readonly recordedAt?: EpochMs
}

const TEST_DAY: Day = { label: '2026-11-24', openedAtMs: at('4:00'), noonMs: at('12:00') }

/** A running shop around the parts: the day open since 4:00, every piece accounted for as carried in. */
export function stateWith(parts: StateParts = {}): State {
  const shop = parts.shop === undefined ? shopWith() : parts.shop
  const batches = [...(parts.batches ?? []), ...(parts.loaded ?? []).flatMap((one) => one.batches)]
  const loads = [...(parts.loads ?? []), ...(parts.loaded ?? []).map((one) => one.load)]
  const stocks = parts.stock ?? []
  return {
    seq: 1,
    recordedAtMs: parts.recordedAt ?? at('4:00'),
    lastActAtMs: parts.recordedAt ?? at('4:00'),
    shop,
    day: parts.day === undefined ? TEST_DAY : parts.day,
    lastDay: null,
    batches: byId(batches),
    loads: byId(loads),
    shelves: new Map(Object.entries(parts.shelves ?? {}).map(([id, use]) => [shelfId(id), use])),
    stock: new Map(stocks.map((one) => [one.varietyId, one])),
    keeps: byId(parts.keeps ?? []),
    orders: byId(parts.orders ?? []),
    standing: byId(parts.standing ?? []),
    portions: new Map((parts.portions ?? []).map((one) => [one.portionId, one])),
    makeTimes: new Map((parts.makeTimes ?? []).map((one) => [one.key, one])),
    planned: byId(parts.planned ?? []),
    forbids: parts.forbids ?? [],
    unsure: byId(parts.unsure ?? []),
    marks: byId(parts.marks ?? []),
    notes: byId(parts.notes ?? []),
    cares: new Map((parts.cares ?? []).map((care) => [care.kind, care])),
    setUps: new Map(),
    habits: new Map((parts.habits ?? []).map((habit) => [habit.varietyId, habit])),
    wanted: new Map(),
    mixes: byId(parts.mixes ?? []),
    builds: byId(parts.builds ?? []),
    readings: new Map(),
    frictions: new Map(),
    teachings: new Map(),
    onHand: new Map(),
    checks: new Map(),
    touches: new Map(Object.entries(parts.touches ?? {})),
    account: accountOf(batches, stocks),
    traces: [],
  }
}

function byId<Thing extends { readonly id: string }>(things: readonly Thing[]): Map<Thing['id'], Thing> {
  return new Map(things.map((thing) => [thing.id, thing]))
}

function accountOf(batches: readonly Batch[], stocks: readonly Stock[]): Map<DoughId, Account> {
  const accounts = new Map<DoughId, Account>()
  const carryIn = (dough: DoughId, pieces: number, sold = 0) => {
    const so = accounts.get(dough) ?? EMPTY_ACCOUNT
    accounts.set(dough, { ...so, carriedIn: so.carriedIn + pieces + sold, sold: so.sold + sold })
  }
  for (const one of batches) carryIn(one.doughId, one.pieces)
  for (const one of stocks)
    carryIn(one.doughId, one.kept + one.lots.reduce((sum, its) => sum + its.pieces, 0), one.soldToday)
  return accounts
}

const EMPTY_ACCOUNT: Account = {
  shaped: 0,
  carriedIn: 0,
  sold: 0,
  kitchen: 0,
  wasted: 0,
  given: 0,
  dayOld: 0,
  unexplained: 0,
}
