import { closesDay, eventsOfDay, opensDay, reopensDay } from '../day/day-record.ts'
import type { Entry, Event, EventOf } from '../day/events.ts'
import type { State } from '../day/state.ts'
import type { CommandId, VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import { assert } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { JournalDay, WantedThen } from './journal-day.ts'
import type { Column, Move } from './journal-item.ts'
import { itemOf } from './journal-item.ts'
import type { Span } from './sales-day.ts'
import { TimesGone } from './times-gone.ts'
import { unseenNow } from './unseen-now.ts'

/** What was left at the close, and what by then had probably left unseen. */
interface Close {
  readonly atMs: EpochMs
  readonly left: ReadonlyMap<VarietyId, number>
  readonly estimated: ReadonlyMap<VarietyId, number>
  /** Was to be baked, or kept for somebody. */
  readonly meant: ReadonlySet<VarietyId>
}

/**
 * A business day as demand sees it, as it comes about, entry by entry. `before` and `after` are to be called around each
 * `applyEntry`, from the entry that opens the day on, as with the day's figures. What a take-back undoes goes by the
 * command that did it; a reopening takes back what the close said was left.
 */
export class JournalTally {
  readonly #noonMs: EpochMs
  readonly #gone = new Map<VarietyId, TimesGone>()
  readonly #moves = new Map<VarietyId, Move[]>()
  readonly #wasThere = new Set<VarietyId>()
  #date: string | null = null
  #openedAtMs = epochMs(0)
  #wanted: readonly WantedThen[] = []
  #close: Close | null = null

  /** @param noonMs noon of the day's date, from which its minutes are counted: zone tables live outside */
  constructor(noonMs: EpochMs) {
    this.#noonMs = noonMs
  }

  get noonMs(): EpochMs {
    return this.#noonMs
  }

  get date(): string {
    return this.#date ?? ''
  }

  /** Null while the day is open. */
  get closedAtMs(): EpochMs | null {
    return this.#close?.atMs ?? null
  }

  minuteAt(atMs: number): number {
    // To a hundredth: nobody buys by the millisecond, and years of days are kept.
    return Math.round(((atMs - this.#noonMs) / MINUTE_MS + NOON_MINUTE) * 100) / 100
  }

  movesOf(varietyId: VarietyId): readonly Move[] {
    return this.#moves.get(varietyId) ?? []
  }

  /** There was some today, or some was sold. */
  wasThere(varietyId: VarietyId): boolean {
    return this.#wasThere.has(varietyId) || this.#moves.has(varietyId)
  }

  /** While customers could buy there was none of it, until an instant. */
  goneBy(varietyId: VarietyId, shop: Shop, endMs: EpochMs): readonly Span[] {
    const { openMinute, closeMinute } = hoursOf(shop, this.date)
    const times = this.#gone.get(varietyId) ?? new TimesGone(this.#openedAtMs)
    return times.goneBy(endMs).flatMap(({ fromMs, toMs }) => {
      const fromMinute = Math.max(openMinute, this.minuteAt(fromMs))
      const toMinute = Math.min(closeMinute, this.minuteAt(toMs))
      return fromMinute < toMinute ? [{ fromMinute, toMinute }] : []
    })
  }

  /** @throws AssertionError when the first entry opens no day */
  before(state: State, entry: Entry): void {
    const isFirst = this.#date === null
    if (isFirst) this.#begin(state, entry)
    const closed = isFirst ? null : closesDay(entry)
    if (closed !== null) this.#closing(state, entry, closed)
    if (reopensDay(entry)) this.#close = null
    const isAhead = wasOrderedAhead(state, entry)
    for (const event of eventsOfDay(entry, isFirst)) this.#book(state, { commandId: entry.commandId, isAhead }, event)
  }

  after(state: State, entry: Entry): void {
    if (this.#close !== null) return
    const atMs = entry.events[entry.events.length - 1]?.atMs ?? entry.recordedAtMs
    const isBack = entry.events.some(({ type }) => type === 'takenBack')
    for (const { varietyId, lots, kept } of state.stock.values()) {
      if (lots.length > 0 || kept > 0) this.#wasThere.add(varietyId)
      if (!this.#gone.has(varietyId)) this.#gone.set(varietyId, new TimesGone(this.#openedAtMs))
    }
    for (const [varietyId, times] of this.#gone) {
      const stock = state.stock.get(varietyId) ?? null
      if (times.stock !== stock) times.change(stock, atMs, isBack)
    }
  }

  /** @param state as it is after the last entry of the day, or now */
  day(state: State, nowMs: EpochMs): JournalDay {
    const { shop } = state
    assert(shop !== null, 'a day without a shop')
    const { openMinute, closeMinute } = hoursOf(shop, this.date)
    const close = this.#close
    const estimated = close?.estimated ?? unseenNow(state, nowMs)
    const ids = new Set([...this.#wasThere, ...this.#moves.keys(), ...(close?.meant ?? meantIn(state, this.date))])
    // A shop that closed has none to sell, however much there was.
    const gone = (id: VarietyId) =>
      close === null
        ? this.goneBy(id, shop, nowMs)
        : lasting(this.goneBy(id, shop, close.atMs), this.minuteAt(close.atMs), closeMinute)
    const items = [...ids].sort().map((id) =>
      itemOf(this.movesOf(id), Math.round(estimated.get(id) ?? 0), {
        id,
        gone: gone(id),
        left: Math.max(0, (close?.left.get(id) ?? 0) - Math.round(estimated.get(id) ?? 0)),
      }),
    )
    return { date: this.date, openMinute, closeMinute, isClosed: close !== null, items, wanted: this.#wanted }
  }

  #begin(state: State, entry: Entry): void {
    const opened = opensDay(entry)
    assert(opened !== null, 'the first entry of a day opens it')
    this.#date = opened.label
    this.#openedAtMs = opened.atMs
    this.#wanted = (state.wanted.get(opened.label)?.lines ?? []).map(({ advised = null, ...line }) => ({
      ...line,
      advised,
    }))
  }

  #book(state: State, { commandId, isAhead }: Done, event: Event): void {
    if (event.type === 'takenBack') this.#forget(event.commandId)
    const salesFrom = state.shop?.counter.salesFrom ?? 'taps'
    for (const { varietyId, column: booked, pieces } of bookedBy(event, salesFrom)) {
      if (pieces === 0) continue
      const column = isAhead && booked === 'sold' ? 'ordered' : booked
      const move = { commandId, column, minute: this.minuteAt(event.atMs), pieces }
      const moves = this.#moves.get(varietyId)
      if (moves === undefined) this.#moves.set(varietyId, [move])
      else moves.push(move)
    }
  }

  #forget(taken: CommandId): void {
    for (const [varietyId, moves] of this.#moves) {
      const left = moves.filter(({ commandId }) => commandId !== taken)
      if (left.length === 0) this.#moves.delete(varietyId)
      else if (left.length < moves.length) this.#moves.set(varietyId, left)
    }
  }

  /** @param state as it is before the close */
  #closing(state: State, { events }: Entry, { atMs, left }: EventOf<'dayClosed'>): void {
    const counted = new Set(events.flatMap((event) => (event.type === 'counted' ? [event.varietyId] : [])))
    const fresh = new Map<VarietyId, number>()
    for (const { varietyId, pieces } of left) {
      const dayOld = state.stock.get(varietyId)?.dayOld ?? 0
      fresh.set(varietyId, (fresh.get(varietyId) ?? 0) + Math.max(0, pieces - dayOld))
    }
    const estimated = new Map([...unseenNow(state, atMs)].filter(([varietyId]) => !counted.has(varietyId)))
    this.#close = { atMs, left: fresh, estimated, meant: new Set(meantIn(state, this.date)) }
  }
}

const MINUTE_MS = 60_000
const NOON_MINUTE = 720

interface Done {
  readonly commandId: CommandId
  readonly isAhead: boolean
}

/** What goes with an order that was placed ahead is known beforehand: it says nothing of who else will come. */
function wasOrderedAhead({ orders, keeps }: State, { events }: Entry): boolean {
  return events.some((event) => {
    if (event.type === 'orderEnded') return event.how === 'handedOver' && orders.get(event.orderId)?.way !== 'here'
    return event.type === 'handedOver' && keeps.get(event.keepId)?.orderId !== undefined
  })
}

interface Booked {
  readonly varietyId: VarietyId
  readonly column: Column
  readonly pieces: number
}

function bookedBy(event: Event, salesFrom: Shop['counter']['salesFrom']): readonly Booked[] {
  switch (event.type) {
    case 'out':
      return event.lots.map(({ varietyId, lot }) => ({ varietyId, column: 'baked', pieces: lot.pieces }))
    case 'stockTaken': {
      const { varietyId, fate, found, unnamed } = event
      const column = fate === 'sold' && unnamed ? 'allotted' : fate
      return [
        { varietyId, column, pieces: piecesOf(event.takes) + found },
        { varietyId, column: 'found', pieces: found },
      ]
    }
    case 'counted':
      return [{ varietyId: event.varietyId, column: 'unexplained', pieces: event.unexplained }]
    case 'kept':
      return event.parts.map(({ varietyId, found }) => ({ varietyId, column: 'found', pieces: found }))
    case 'handedOver':
      return event.parts.map(({ varietyId, pieces }) => ({ varietyId, column: 'sold', pieces }))
    // Where counts alone keep the numbers, what a till tells is the only word of when. Elsewhere it is the same sale again.
    case 'saleNoted':
      if (salesFrom !== 'sweeps') return []
      return event.lines.map(({ varietyId, pieces }) => ({ varietyId, column: 'noted', pieces }))
    default:
      return []
  }
}

/** Who works on a day on which the shop is shut keeps the usual hours. */
export function hoursOf(shop: Shop, date: string): { readonly openMinute: number; readonly closeMinute: number } {
  const hours = hoursOn(shop, date) ?? shop.hours
  return { openMinute: hours.openMinute, closeMinute: closesAtMinute(hours) }
}

/** Varieties that the day was to have: planned loads' until the close, and those wanted by name. */
export function* meantIn({ planned, wanted, shop, day }: State, date: string): Iterable<VarietyId> {
  const noonMs = day?.noonMs ?? null
  const closeMs =
    shop === null || noonMs === null
      ? Number.POSITIVE_INFINITY
      : noonMs + (hoursOf(shop, date).closeMinute - NOON_MINUTE) * MINUTE_MS
  for (const { inAtMs, lines } of planned.values())
    if (inAtMs === null || inAtMs <= closeMs) for (const { varietyId } of lines) yield varietyId
  for (const { varietyId, pieces } of wanted.get(date)?.lines ?? [])
    if (varietyId !== null && pieces > 0) yield varietyId
}

/** The same, and gone from a minute on. */
function lasting(gone: readonly Span[], fromMinute: number, closeMinute: number): readonly Span[] {
  if (fromMinute >= closeMinute) return gone
  const last = gone[gone.length - 1]
  if (last?.toMinute === fromMinute)
    return [...gone.slice(0, -1), { fromMinute: last.fromMinute, toMinute: closeMinute }]
  return [...gone, { fromMinute, toMinute: closeMinute }]
}
