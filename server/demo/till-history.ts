import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { NamedMeaning } from '../../shared-core/live/sales-import.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import type { Crowd, Customer } from './crowd.ts'
import { basketOf, crowdOn, customersIn } from './crowd.ts'
import { bakeAndCoolMinutes, usualBusy } from './demo-demand.ts'
import { demoLoadList } from './demo-load-list.ts'
import type { Draw } from './draw.ts'
import { drawFor } from './draw.ts'

/**
 * What the demo's till kept of the weeks before the board came, as the till writes it out: names of its own in capitals,
 * boxes and sandwiches that do not say which bagel, coffee, voids and returns, and two lines that nobody can read. The
 * same crowd buys of what that day's list of loads brought.
 */
export interface TillHistory {
  readonly fileName: string
  /** The file's text, header first, day by day, as it takes a while to make. */
  readonly text: Generator<string>
  /** What each of the till's names is, as somebody at the desk would say it. */
  readonly meanings: readonly NamedMeaning[]
}

const HEADER = 'Date,Time,Receipt,Item,Qty,Amount,Status'
const FIRST_RECEIPT = 10_000
const FIRST_LOAD_AFTER_OVEN_MINUTES = 5
/** One in so many customers is rung up as a box, or as bagels, without saying of what. */
const UNNAMED_ONCE_IN = 9
const COFFEE_ONCE_IN = 3
const SANDWICH_ONCE_IN = 6
const BOX_EVERY_MINUTES = 45
const BOX_MINUTE = 22
const BOX_PIECES = 6
const VOID_ONCE_IN = 400
const RETURN_ONCE_IN = 500
const COFFEE_CENTS = 275
const SANDWICH_CENTS = 695
const BAGEL_CENTS = 160
/** By pieces, what the till calls a box that does not say of what. */
const BOXES: ReadonlyMap<number, string> = new Map([
  [6, 'HALF DOZEN'],
  [12, 'DOZEN BAGELS'],
  [13, 'BAKERS DOZEN'],
])
const COFFEE = 'COFFEE'
const SANDWICH = 'EGG SANDWICH'
const ANY_BAGEL = 'BAGEL'
/** A till has no room for long names. */
const NAME_LETTERS = 14

/** @param dates YYYY-MM-DD in order, each a day on which the shop was open */
export function tillHistory(shop: Shop, { seed, dates }: TillDays): TillHistory {
  return {
    fileName: `till ${dates[0] ?? ''} to ${dates.at(-1) ?? ''}.csv`,
    text: tillText(shop, { seed, dates }),
    meanings: [
      ...inUse(shop.varieties).map(
        ({ id, name }): NamedMeaning => ({
          name: tillName(name),
          meaning: { kind: 'variety', varietyId: id, pieces: 1 },
        }),
      ),
      ...[...BOXES, [1, ANY_BAGEL] as const].map(
        ([pieces, name]): NamedMeaning => ({ name, meaning: { kind: 'unnamed', pieces, among: null } }),
      ),
      { name: SANDWICH, meaning: { kind: 'kitchen', varietyId: null, pieces: 1 } },
      { name: COFFEE, meaning: { kind: 'nothing' } },
    ],
  }
}

export interface TillDays {
  readonly seed: number
  readonly dates: readonly string[]
}

function* tillText(shop: Shop, { seed, dates }: TillDays): Generator<string> {
  yield `${HEADER}\n`
  const lists = new Map<number, readonly Ready[]>()
  const receipts = { last: FIRST_RECEIPT }
  for (const [index, date] of dates.entries()) {
    const busy = usualBusy(date)
    const ready = lists.get(busy) ?? readyOn(shop, busy)
    lists.set(busy, ready)
    const rows = dayAtTheTill(crowdOn(shop, seed, date), ready, receipts)
    const more = index === dates.length - UNREADABLE_DAYS_AGO ? UNREADABLE : []
    yield [...rows, ...more].map((row) => `${row}\n`).join('')
  }
}

const UNREADABLE_DAYS_AGO = 5
/** What a till's printer and a tired hand make of a row. */
const UNREADABLE = ['??/??/????,9:14:07 AM,,SESAME,2,3.20,', ',,,POPPY,one,1.60,']

/** Before the board they baked for the best of days, so that little ran out unseen: a till does not say what did. */
const BAKED_THEN = 1.3

/** Pieces that come for sale at a minute of the day. */
interface Ready {
  readonly minute: number
  readonly lines: readonly Line[]
}

function readyOn(shop: Shop, busy: number): readonly Ready[] {
  const firstMinute = shop.hours.ovenReadyMinute + FIRST_LOAD_AFTER_OVEN_MINUTES
  return demoLoadList(shop, { dayStartMs: 0, waveAtMs: firstMinute * 60_000, busy })
    .map(({ inAtMs, lines }) => {
      const bakes = lines.map(({ varietyId }) => bakeAndCoolMinutes(shop, must(shop.varieties, varietyId)))
      const baked = lines.map(({ varietyId, pieces }) => ({ varietyId, pieces: Math.round(pieces * BAKED_THEN) }))
      return { minute: inAtMs / 60_000 + Math.max(...bakes), lines: baked }
    })
    .sort((one, other) => one.minute - other.minute)
}

function dayAtTheTill(crowd: Crowd, ready: readonly Ready[], receipts: { last: number }): readonly string[] {
  const { openMinute, closeMinute } = crowd.shop.hours
  const there = new Map<VarietyId, number>()
  let out = 0
  const rows: string[] = []
  for (let minute = openMinute; minute < closeMinute; minute += 1) {
    for (let load = ready[out]; load !== undefined && load.minute <= minute; load = ready[out]) {
      for (const { varietyId, pieces } of load.lines) there.set(varietyId, (there.get(varietyId) ?? 0) + pieces)
      out += 1
    }
    receipts.last += 1
    rows.push(...box(crowd, minute, there, receipts.last))
    for (const customer of customersIn(crowd, minute)) {
      receipts.last += 1
      rows.push(...receipt(crowd, customer, there, receipts.last))
    }
  }
  return rows
}

/** What one customer takes off the shelf, as the till has it. */
function receipt(
  crowd: Crowd,
  { key, minute }: Customer,
  there: Map<VarietyId, number>,
  number: number,
): readonly string[] {
  const draw = drawFor(crowd.seed, key)
  const lines = basketOf(crowd, draw, there)
  for (const { varietyId, pieces } of lines) there.set(varietyId, (there.get(varietyId) ?? 0) - pieces)
  const head = `${usDate(crowd.date)},${usTime(minute)},${number}`
  const sold = rung(crowd.shop, lines, draw)
  const extras = [
    ...(lines.length > 0 && draw.oneIn(COFFEE_ONCE_IN) ? [{ name: COFFEE, pieces: 1, cents: COFFEE_CENTS }] : []),
    ...sandwich(there, draw),
  ]
  const rows = [...sold, ...extras].map((row) => rowOf(head, row, ''))
  const [first] = sold
  if (first === undefined) return rows
  if (draw.oneIn(VOID_ONCE_IN)) return [...rows, rowOf(head, first, 'VOID')]
  if (draw.oneIn(RETURN_ONCE_IN)) return [...rows, rowOf(head, { ...first, pieces: -1 }, 'RETURN')]
  return rows
}

interface Rung {
  readonly name: string
  readonly pieces: number
  /** Of one. */
  readonly cents: number
}

function rung(shop: Shop, lines: readonly Line[], draw: Draw): readonly Rung[] {
  const pieces = piecesOf(lines)
  if (pieces > 0 && draw.oneIn(UNNAMED_ONCE_IN)) {
    const box = BOXES.get(pieces)
    if (box !== undefined) return [{ name: box, pieces: 1, cents: pieces * BAGEL_CENTS }]
    return [{ name: ANY_BAGEL, pieces, cents: BAGEL_CENTS }]
  }
  return lines.map((line) => {
    const { name, priceCents } = must(shop.varieties, line.varietyId)
    return { name: tillName(name), pieces: line.pieces, cents: priceCents }
  })
}

function sandwich(there: Map<VarietyId, number>, draw: Draw): readonly Rung[] {
  const isOne = draw.oneIn(SANDWICH_ONCE_IN) && ofMost(there, 1) !== null
  return isOne ? [{ name: SANDWICH, pieces: 1, cents: SANDWICH_CENTS }] : []
}

/** The kitchen, and whoever fills a box that was rung up for, take what there is most of. */
function ofMost(there: Map<VarietyId, number>, pieces: number): VarietyId | null {
  const [most] = [...there].sort(([a, left], [b, others]) => others - left || (a < b ? -1 : 1))
  if (most === undefined || most[1] < pieces) return null
  there.set(most[0], most[1] - pieces)
  return most[0]
}

/** A box that somebody rang up for, every so often. */
function box({ shop, date }: Crowd, minute: number, there: Map<VarietyId, number>, number: number): readonly string[] {
  const id = (minute - shop.hours.openMinute) % BOX_EVERY_MINUTES === BOX_MINUTE ? ofMost(there, BOX_PIECES) : null
  if (id === null) return []
  const { name, priceCents } = must(shop.varieties, id)
  const head = `${usDate(date)},${usTime(minute)},${number}`
  return [rowOf(head, { name: tillName(name), pieces: BOX_PIECES, cents: priceCents }, '')]
}

function rowOf(head: string, { name, pieces, cents }: Rung, status: string): string {
  return `${head},${name},${pieces},${((pieces * cents) / 100).toFixed(2)},${status}`
}

function tillName(name: string): string {
  return name.toUpperCase().slice(0, NAME_LETTERS).trim()
}

/** @example usDate('2026-11-03') // '11/3/2026' */
function usDate(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  return `${month}/${day}/${year}`
}

/** @example usTime(545.5) // '9:05:30 AM' */
function usTime(minute: number): string {
  const seconds = Math.floor(minute * 60)
  const hour = Math.floor(seconds / 3_600)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${hour % 12 === 0 ? 12 : hour % 12}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)} ${hour < 12 ? 'AM' : 'PM'}`
}
