import { dateAfter } from '../../shared-core/day/label.ts'
import { runId, varietyId } from '../../shared-core/ids.ts'
import type { AskedLine, OrderCommand } from '../../shared-core/orders/order-commands.ts'
import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { initialsOf } from '../orders/import-groups.ts'
import { likedOf } from './demo-demand.ts'
import type { Draw } from './draw.ts'
import { drawFor, pick } from './draw.ts'

type SetStanding = Extract<OrderCommand, { type: 'setStanding' }>
export type TakeOrder = Extract<OrderCommand, { type: 'takeOrder' }>

const BARE = { without: [], dozens: 0, pieces: 0, sliced: false, bagged: false }
const van = runId('morning-van')

const dozens = (id: string, count: number, how: Partial<AskedLine> = {}): AskedLine => {
  return { ...BARE, varietyId: varietyId(id), dozens: count, ...how }
}
const mixed = (count: number, without: readonly string[] = [], how: Partial<AskedLine> = {}): AskedLine => {
  return { ...BARE, varietyId: null, without: without.map(varietyId), dozens: count, ...how }
}

/**
 * Who orders the same again and again, all invented: the numbers are of those that are given to nobody (555-0100 to
 * 555-0199).
 * @param from YYYY-MM-DD, the day on which the board came
 */
export function demoStanding(shop: Shop, from: string): readonly SetStanding[] {
  const rule = (parts: Partial<Recurrence>): Recurrence => {
    const weekly = { freq: 'weekly', interval: 1, from, until: null, weekdays: [], nth: null } as const
    return { ...weekly, except: [], also: [], ...parts }
  }
  const one = { type: 'setStanding', standingId: null, runId: null, stop: 0, onHolidays: false } as const
  // Ready when the van leaves.
  const byVan = { way: 'delivery', runId: van, dueMinute: must(shop.runs, van).leavesMinute } as const
  return [
    {
      ...{ ...one, ...byVan, mark: 'LS', stop: 1, isPaid: false },
      lines: [mixed(1, ['raisin'], { sliced: true, bagged: true })],
      recurrence: rule({ freq: 'daily', weekdays: [1, 2, 3, 4, 5] }),
      details: { name: 'Larkmoor School', phone: '555 0112', note: 'Kitchen door, ring twice.' },
    },
    {
      ...{ ...one, ...byVan, mark: 'TK', stop: 2, isPaid: true, onHolidays: true },
      lines: [
        dozens('sesame', 0, { pieces: 8 }),
        dozens('everything', 0, { pieces: 8 }),
        dozens('rye', 0, { pieces: 6 }),
      ],
      recurrence: rule({ freq: 'daily' }),
      details: { name: 'Tidekettle Coffee', phone: '555 0148', note: '' },
    },
    {
      ...{ ...one, way: 'pickUp', mark: 'QD', dueMinute: 8 * 60 + 30, isPaid: false },
      lines: [mixed(1, [], { sliced: true })],
      recurrence: rule({ interval: 2, weekdays: [2, 5] }),
      details: { name: 'Quillby & Daughters', phone: '555 0131', note: 'No poppy on the top layer, please.' },
    },
    {
      ...{ ...one, way: 'pickUp', mark: 'FH', dueMinute: 9 * 60, isPaid: true },
      lines: [mixed(2, ['egg', 'cheddar'])],
      recurrence: rule({ freq: 'monthly', nth: 1, weekdays: [6] }),
      details: { name: 'Fennick Hill Rowers', phone: '555 0177', note: '' },
    },
  ]
}

const FIRST_NAMES = ['Imra', 'Tobin', 'Nessa', 'Oriel', 'Hale', 'Dovie', 'Kester', 'Maren', 'Pell', 'Sunniva']
const LAST_NAMES = ['Vell', 'Quarrow', 'Pockett', 'Thistlewood', 'Amberley', 'Crannock', 'Yarrowby', 'Dunmere']
const NOTES = ['', '', '', 'For a birthday: a candle is in the bag.', 'Rings before coming.', 'Two bags, please.']

/** Orders of a day are placed so many days before, most of them the day before. */
const AHEAD_DAYS = [1, 1, 1, 2, 2, 3, 4] as const
/** Of a weekday and of the weekend. */
const A_DAY = [2, 4] as const
const MORE_AT_WEEKENDS = 2
/** Rung up for between these minutes of the day, before the cut-off. */
const PLACED_MINUTES = [8 * 60 + 40, 14 * 60] as const
/** Fetched between these. */
const DUE_MINUTES = [7 * 60 + 30, 13 * 60] as const
const DUE_STEP = 15

export interface PlacedOrder {
  readonly key: string
  /** Minutes of the day on which it is placed. */
  readonly minute: number
  /** Without its instant, which is said when it is placed. */
  readonly order: TakeOrder
  readonly dueDate: string
  readonly dueMinute: number
}

/** What people ring up for on a date, for days to come; the same whoever looks. */
export function placedOn(shop: Shop, seed: number, date: string): readonly PlacedOrder[] {
  const ahead = [...new Set(AHEAD_DAYS)]
  return ahead
    .flatMap((days) => dueBooked(shop, seed, dateAfter(date, days)).filter((one) => one.aheadDays === days))
    .map(({ aheadDays: _, ...placed }) => placed)
    .sort((one, other) => one.minute - other.minute)
}

function dueBooked(shop: Shop, seed: number, dueDate: string): readonly (PlacedOrder & { aheadDays: number })[] {
  const isWeekend = isoWeekday(dueDate) > 5
  const count = drawFor(seed, `orders:${dueDate}`).whole(...A_DAY) + (isWeekend ? MORE_AT_WEEKENDS : 0)
  return Array.from({ length: count }, (_, n) => {
    const key = `order:${dueDate}:${n}`
    const draw = drawFor(seed, key)
    const aheadDays = AHEAD_DAYS[draw.whole(0, AHEAD_DAYS.length - 1)] ?? 1
    const minute = draw.between(...PLACED_MINUTES)
    const steps = (DUE_MINUTES[1] - DUE_MINUTES[0]) / DUE_STEP
    const dueMinute = DUE_MINUTES[0] + draw.whole(0, steps) * DUE_STEP
    return { key, minute, order: orderDrawn(shop, draw), dueDate, dueMinute, aheadDays }
  })
}

function orderDrawn(shop: Shop, draw: Draw): TakeOrder {
  const choose = (names: readonly string[]) => names[draw.whole(0, names.length - 1)] ?? ''
  const name = `${choose(FIRST_NAMES)} ${choose(LAST_NAMES)}`
  const phone = `555 01${String(draw.whole(0, 99)).padStart(2, '0')}`
  const note = choose(NOTES)
  return {
    ...{
      type: 'takeOrder',
      mark: initialsOf(name),
      dueAtMs: epochMs(0),
      way: 'pickUp',
      runId: null,
      stop: 0,
      items: [],
    },
    lines: linesDrawn(shop, draw),
    isPaid: draw.oneIn(2),
    details: { name, phone, note },
  }
}

/** A mixed dozen, or some of two kinds. */
function linesDrawn(shop: Shop, draw: Draw): readonly AskedLine[] {
  const how = { sliced: draw.oneIn(3), bagged: draw.oneIn(3) }
  if (draw.oneIn(2)) return [mixed(1, draw.oneIn(2) ? ['raisin', 'egg'] : [], how)]
  const ids = new Set<string>()
  while (ids.size < 2) {
    const one = pick(draw, inUse(shop.varieties), ({ id }) => likedOf(id))
    if (one === null) break
    ids.add(one.id)
  }
  return [...ids].map((id) => dozens(id, 0, { ...how, pieces: draw.whole(3, 6) }))
}
