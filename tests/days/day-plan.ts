import { localInstant, shopClock } from '../../server/live/shop-clock.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import { DEFAULT_KETTLE_CARE, DEFAULT_ORDERS } from '../../shared-core/shop/default-rules.ts'
import type { Dough, DwellWindow, Shop } from '../../shared-core/shop/shop.ts'
import { epochMs, spanMs } from '../../shared-core/units.ts'
import { roomShop } from '../core/dough/acts-shop.ts'
import { minuteToMs } from '../core/support/make.ts'
import {
  ALL_STATIONS,
  dough,
  dwell,
  hours,
  PEOPLE,
  STEPS,
  shopWith,
  TRADE_WINDOWS,
  table,
} from '../core/support/shop.ts'
import { kitchenParts, run } from '../core/support/shop-kitchen.ts'
import type { Chance } from './chance.ts'
import { DAY_MINUTES } from './options.ts'

const A_DAY_MS = 86_400_000
const BEGIN_MINUTE = 4 * 60
/** The test day and this many days before and after: both nights on which clocks change are among them. */
const DAYS_BEFORE = 40
const DAYS_AFTER = 120

/** What a day is made of, in order, with the share of it at which each part begins. */
export const PARTS_OF_DAY = [
  ['opening', 0],
  ['first-loads', 0.14],
  ['morning', 0.22],
  ['changeover', 0.52],
  ['afternoon', 0.66],
  ['close', 0.84],
  ['evening', 0.91],
] as const
export type PartOfDay = (typeof PARTS_OF_DAY)[number][0]

/** When a simulated day begins and ends, in a shop whose hours and bakes fit into it. */
export interface DayPlan {
  readonly beginMs: number
  readonly endMs: number
  /** The next morning. */
  readonly nextMs: number
  /** The shop's offset from UTC, for telling times. */
  readonly offsetMs: number
  readonly shop: Shop
}

export function planDay(dayMinutes: number, chance: Chance): DayPlan {
  const testDayMs = minuteToMs(12 * 60) + chance.between(-DAYS_BEFORE, DAYS_AFTER) * A_DAY_MS
  const shop = shopOf(dayMinutes)
  const { zone } = shop.profile
  const beginOn = (ms: number) => localInstant(zone, new Date(ms).toISOString().slice(0, 10), BEGIN_MINUTE)
  const beginMs = beginOn(testDayMs)
  const offsetMs = offsetOn(zone, beginMs)
  return { beginMs, endMs: beginMs + dayMinutes * 60_000, nextMs: beginOn(testDayMs + A_DAY_MS), offsetMs, shop }
}

/** Which part of the day it is; the next morning begins with an opening, too. */
export function partOfDay({ beginMs, endMs, nextMs }: DayPlan, nowMs: number): PartOfDay {
  const share = (nowMs >= nextMs ? nowMs - nextMs : nowMs - beginMs) / (endMs - beginMs)
  const [part] = PARTS_OF_DAY.findLast(([, from]) => from <= share) ?? PARTS_OF_DAY[0]
  return part
}

const CLOCKS = new Map<string, ShopClock>()

/** A zone's offsets over all days that are drawn: reckoned once, as it takes a moment. */
export function clockOf(zone: string): ShopClock {
  const known = CLOCKS.get(zone)
  if (known !== undefined) return known
  const made = shopClock(zone, epochMs(minuteToMs(0) - (DAYS_BEFORE + 2) * A_DAY_MS))
  CLOCKS.set(zone, made)
  return made
}

/** The local date at an instant, YYYY-MM-DD. */
export function dateOn(zone: string, atMs: number): string {
  return new Date(atMs + offsetOn(zone, atMs)).toISOString().slice(0, 10)
}

function offsetOn(zone: string, atMs: number): number {
  const { offsets } = clockOf(zone)
  return (offsets.findLast(({ fromMs }) => fromMs <= atMs)?.offsetMinutes ?? 0) * 60_000
}

/** A small shop that bakes from four on and is swept when the day is over. */
function shopOf(dayMinutes: number): Shop {
  const minute = (share: number) => BEGIN_MINUTE + Math.round(share * dayMinutes)
  const { ingredients, preparations, formulas, doughRoom, mixer, doughs } = roomShop()
  const made = new Map<string, Pick<Dough, 'formulaId' | 'pieceWeight'>>(
    [...doughs.values()].map(({ id, formulaId, pieceWeight }) => [id, { formulaId, pieceWeight }]),
  )
  return shopWith({
    ...{ ingredients, preparations, formulas, doughRoom, mixer },
    ...kitchenParts(),
    runs: table([run({ id: 'van', leavesMinute: minute(0.4) })]),
    orders: { ...DEFAULT_ORDERS, dozenPieces: 13, noShowMs: spanMs(Math.max(5, Math.ceil(dayMinutes / 20)), 'min') },
    stations: table(ALL_STATIONS),
    steps: table(STEPS),
    people: table(PEOPLE),
    kettle: { pieces: 36, cycleMs: spanMs(90, 's'), ...DEFAULT_KETTLE_CARE },
    doughs: table([
      dough({ id: 'plain', order: 1, ...made.get('plain') }),
      dough({
        ...{ id: 'rye', order: 2, route: ['proof', 'chill', 'kettle', 'boards', 'oven'], contains: ['egg'] },
        ...made.get('rye'),
      }),
    ]),
    hours: hours({
      ovenReadyMinute: minute(0.12),
      openMinute: minute(0.21),
      changeoverFromMinute: minute(0.55),
      changeoverToMinute: minute(0.63),
      closeMinute: minute(0.85),
    }),
    windows: {
      ...TRADE_WINDOWS,
      ...shortened(dayMinutes),
    },
  })
}

/** Bakes and what comes around them, as short as the day. */
function shortened(dayMinutes: number): Partial<Shop['windows']> {
  const share = dayMinutes / DAY_MINUTES / 5
  const short = (earliest: number, target: number, latest: number): DwellWindow =>
    dwell(Math.ceil(earliest * share), Math.ceil(target * share), Math.ceil(latest * share), 's')
  return {
    rack: short(1_200, 2_400, 5_400),
    kettle: short(45, 60, 90),
    boards: short(0, 120, 480),
    firstSide: short(180, 210, 300),
    bake: short(840, 960, 1_080),
    cool: short(600, 900, 1_200),
  }
}
