import type { CommandId, VarietyId } from '../ids.ts'
import { byVariety } from '../line/contents.ts'
import type { Shop } from '../shop/shop.ts'
import { assert, must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { closesDay, eventsOfDay, opensDay, reopensDay } from './day-record.ts'
import type { Entry, Event, EventOf } from './events.ts'
import type { DayFigures, Fate, Left, Missed, MissedOf, OnTime } from './figures.ts'
import type { Booking } from './figures-bookings.ts'
import { bookingOf, fateLine, isNothing } from './figures-bookings.ts'
import type { OpenSpan, SellOut } from './figures-sold-out.ts'
import { SoldOutOf } from './figures-sold-out.ts'
import { rulerOf } from './ruler.ts'
import type { Line, State } from './state.ts'

/** What is given away or thrown out from so long before closing time on was left over. Common practice, no source. */
const LEFT_BEFORE_CLOSE_MS = 30 * 60_000

type OneFate = Line & { readonly fate: 'given' | 'wasted'; readonly atMs: EpochMs }

/** What the close of a day says, kept from before it has changed the state. */
interface Close {
  readonly event: EventOf<'dayClosed'>
  readonly commandId: CommandId
  /** Boxes that nobody fetched: day-old with the rest. */
  readonly unfetched: readonly Line[]
  readonly unexplained: number
}

/**
 * The day's figures as they come about, entry by entry, so that a history that folds the journal anyway need not fold a
 * day twice. `before` and `after` are to be called around each `applyEntry`, from the entry that opens the day on.
 */
export class FiguresTally {
  readonly #minuteToMs: (minuteOfDay: number) => EpochMs
  readonly #rods = new Map<VarietyId, SoldOutOf>()
  readonly #bookings = new Map<CommandId, Booking>()
  readonly #fates = new Map<CommandId, readonly OneFate[]>()
  readonly #bakedIds = new Set<VarietyId>()
  readonly #plannedIds = new Set<VarietyId>()
  readonly #thereIds = new Set<VarietyId>()
  #shop: Shop | null = null
  #open: OpenSpan | null = null
  #openedAtMs: EpochMs | null = null
  #label: string | null = null
  #isPastOpening = false
  #ovenEmptyAtMs: EpochMs | null = null
  #changeoverFromMs: EpochMs | null = null
  #close: Close | null = null

  constructor(minuteToMs: (minuteOfDay: number) => EpochMs) {
    this.#minuteToMs = minuteToMs
  }

  /** @throws AssertionError when the first entry opens no day */
  before(state: State, entry: Entry): void {
    const isFirst = this.#openedAtMs === null
    const opened = opensDay(entry)
    assert(!isFirst || opened !== null, 'the first entry of a day opens it')
    if (isFirst && opened !== null) {
      this.#openedAtMs = opened.atMs
      this.#label = opened.label
    }
    const events = eventsOfDay(entry, isFirst)
    // Nothing but the opening of the next day.
    if (events.length === 0) return
    this.#reckonHours(state, entry)
    const firstMs = epochMs(Math.min(...events.map(({ atMs }) => atMs)))
    if (!this.#isPastOpening && this.#opensBy(firstMs)) this.#lookAtOpening(state)
    for (const event of events) this.#book(state, entry.commandId, event)
    const closed = isFirst ? null : closesDay(entry)
    if (closed !== null) this.#closing(state, closed, entry.commandId)
    if (reopensDay(entry)) this.#reopen()
  }

  after(state: State, entry: Entry): void {
    if (this.#close !== null) return
    this.#reckonHours(state, entry)
    const atMs = entry.events[entry.events.length - 1]?.atMs ?? entry.recordedAtMs
    const open = this.#hours()
    for (const { varietyId } of state.stock.values()) {
      if (!this.#rods.has(varietyId)) this.#rods.set(varietyId, new SoldOutOf(varietyId, atMs))
    }
    for (const rod of this.#rods.values()) {
      const stock = state.stock.get(rod.varietyId) ?? null
      if (rod.stock !== stock) rod.change(stock, atMs, open)
    }
    this.#followOven(state, entry)
    const { salesFrom } = state.shop?.counter ?? { salesFrom: 'taps' }
    if (salesFrom !== 'sweeps') return
    for (const event of entry.events) {
      if (event.type === 'counted') this.#rods.get(event.varietyId)?.foundGone(Math.max(0, event.unexplained))
    }
  }

  /** @param state as it is after the last entry of the day, or now */
  figures(state: State, nowMs: EpochMs): DayFigures {
    const shop = this.#shop
    assert(shop !== null, 'a day without a shop')
    const endMs = this.#close?.event.atMs ?? nowMs
    if (!this.#isPastOpening && this.#opensBy(endMs)) this.#lookAtOpening(state)
    const baked = this.#sum(({ baked: pieces }) => pieces)
    const crewMinutes = this.#close?.event.crewMinutes ?? null
    return {
      missed: this.#missed(shop, endMs),
      left: this.#left(shop),
      onTime: this.#onTime(),
      baked: { pieces: baked, crewMinutes, dozensPerCrewHour: dozensPerHour(baked, crewMinutes) },
      unexplained: {
        signed: this.#close?.unexplained ?? unexplainedOf(state),
        absolute: this.#sum(({ gaps }) => gaps),
        thrownDough: this.#sum(({ thrown }) => thrown),
      },
    }
  }

  /** Opening hours and the changeover, anew when the set-up or the day's slip may have changed. */
  #reckonHours(state: State, { events }: Entry): void {
    const isSlipNew = events.some(({ type }) => MOVES_SLIP.has(type))
    if (state.shop === null || (state.shop === this.#shop && !isSlipNew)) return
    this.#shop = state.shop
    const ruler = rulerOf(state, this.#openedAtMs ?? state.recordedAtMs, this.#minuteToMs, this.#label)
    this.#open = ruler === null ? null : { fromMs: ruler.openMs, toMs: ruler.closeMs }
    this.#changeoverFromMs = ruler?.changeover?.fromMs ?? null
  }

  #hours(): OpenSpan {
    const nothing = this.#openedAtMs ?? epochMs(0)
    return this.#open ?? { fromMs: nothing, toMs: nothing }
  }

  #opensBy(atMs: EpochMs): boolean {
    return this.#open !== null && atMs >= this.#open.fromMs
  }

  /** What is planned and for sale when the shop opens: looked at once, when the day has come to it. */
  #lookAtOpening({ planned }: State): void {
    this.#isPastOpening = true
    const { fromMs } = this.#hours()
    for (const rod of this.#rods.values()) if (rod.isForSaleAt(fromMs)) this.#thereIds.add(rod.varietyId)
    for (const { lines } of planned.values()) for (const { varietyId } of lines) this.#plannedIds.add(varietyId)
  }

  #book(state: State, commandId: CommandId, event: Event): void {
    if (event.type === 'takenBack') {
      this.#bookings.delete(event.commandId)
      this.#fates.delete(event.commandId)
    }
    const booking = bookingOf(state, event)
    if (!isNothing(booking)) this.#bookings.set(commandId, added(this.#bookings.get(commandId), booking))
    for (const fate of ['given', 'wasted'] as const) {
      const line = fateLine(event, fate)
      if (line === null) continue
      this.#fates.set(commandId, [...(this.#fates.get(commandId) ?? []), { ...line, fate, atMs: event.atMs }])
    }
    if (event.type === 'out') for (const { varietyId } of event.lots) this.#bakedIds.add(varietyId)
  }

  #closing(state: State, event: EventOf<'dayClosed'>, commandId: CommandId): void {
    const open = this.#hours()
    for (const rod of this.#rods.values()) rod.goOn(event.atMs, open)
    const unfetched = event.keepIds.flatMap((id) => state.keeps.get(id)?.lines ?? [])
    const strays = event.batchIds.reduce((sum, id) => sum + (state.batches.get(id)?.pieces ?? 0), 0)
    this.#close = { event, commandId, unfetched, unexplained: unexplainedOf(state) + strays }
  }

  /** What the close wrote off is back. */
  #reopen(): void {
    if (this.#close !== null) this.#bookings.delete(this.#close.commandId)
    this.#close = null
  }

  #followOven({ loads }: State, { events }: Entry): void {
    if (loads.size > 0) this.#ovenEmptyAtMs = null
    else this.#ovenEmptyAtMs = lastOvenEnd(events) ?? this.#ovenEmptyAtMs
  }

  #missed(shop: Shop, endMs: EpochMs): Missed | null {
    const rods = [...this.#rods.values()].sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
    if (rods.every(({ sold }) => sold <= 0)) return null
    const open = this.#hours()
    const byRod = rods
      .map((rod) => ({ rod, sellOuts: rod.sellOutsBy(endMs, open) }))
      .filter(({ sellOuts }) => sellOuts.length > 0)
    const byVarietyId = byRod.map(({ rod, sellOuts }) => missedOf(shop, rod.varietyId, sellOuts))
    const first = byRod
      .flatMap(({ rod, sellOuts }) => sellOuts.map((sellOut) => ({ varietyId: rod.varietyId, ...sellOut })))
      .reduce<(SellOut & { varietyId: VarietyId }) | null>(
        (so, one) => (so === null || one.fromMs < so.fromMs ? one : so),
        null,
      )
    return {
      pieces: byVarietyId.reduce((sum, { pieces }) => sum + pieces, 0),
      cents: byVarietyId.reduce((sum, { cents }) => sum + cents, 0),
      first: first && { varietyId: first.varietyId, fromMs: first.fromMs, forMs: first.toMs - first.fromMs },
      byVariety: byVarietyId,
    }
  }

  #left(shop: Shop): Left | null {
    if (this.#close === null) return null
    const { event, unfetched } = this.#close
    const fromMs = Math.min(this.#hours().toMs, event.atMs) - LEFT_BEFORE_CLOSE_MS
    const fates = [...this.#fates.values()].flat().filter(({ atMs }) => atMs >= fromMs)
    return {
      dayOld: worth(shop, [...event.left, ...unfetched]),
      given: worth(
        shop,
        fates.filter(({ fate }) => fate === 'given'),
      ),
      wasted: worth(
        shop,
        fates.filter(({ fate }) => fate === 'wasted'),
      ),
    }
  }

  #onTime(): OnTime {
    const there = this.#thereIds
    const offered = new Set([...there, ...this.#plannedIds, ...this.#bakedIds])
    const emptyMs = this.#ovenEmptyAtMs
    const changeoverMs = this.#changeoverFromMs
    return {
      atOpen: this.#isPastOpening ? { there: there.size, of: offered.size } : null,
      orders: null,
      ovenEmptyByMs: emptyMs === null || changeoverMs === null ? null : emptyMs - changeoverMs,
    }
  }

  #sum(of: (booking: Booking) => number): number {
    return [...this.#bookings.values()].reduce((sum, booking) => sum + of(booking), 0)
  }
}

/** A close clears the day's slip, and reopening brings it back. */
const MOVES_SLIP: ReadonlySet<Event['type']> = new Set<Event['type']>([
  'marked',
  'unmarked',
  'takenBack',
  'dayReopened',
])

const OVEN_ENDS: ReadonlySet<Event['type']> = new Set<Event['type']>(['out', 'loadUndone'])

function lastOvenEnd(events: Entry['events']): EpochMs | null {
  return events.reduce<EpochMs | null>((lastMs, { type, atMs }) => (OVEN_ENDS.has(type) ? atMs : lastMs), null)
}

function missedOf(shop: Shop, varietyId: VarietyId, sellOuts: readonly SellOut[]): MissedOf {
  const pieces = Math.round(sellOuts.reduce((sum, { missed }) => sum + missed, 0))
  const goneMs = sellOuts.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0)
  const { priceCents } = must(shop.varieties, varietyId)
  return { varietyId, pieces, cents: pieces * priceCents, times: sellOuts.length, goneMs }
}

function worth(shop: Shop, lines: readonly Line[]): Fate {
  return lines.reduce(
    (sum, { varietyId, pieces }) => {
      const { priceCents, costCents } = must(shop.varieties, varietyId)
      return {
        pieces: sum.pieces + pieces,
        cents: sum.cents + pieces * priceCents,
        costCents: sum.costCents + pieces * costCents,
      }
    },
    { pieces: 0, cents: 0, costCents: 0 },
  )
}

function unexplainedOf({ account }: State): number {
  return [...account.values()].reduce((sum, { unexplained }) => sum + unexplained, 0)
}

function added(one: Booking | undefined, { baked, thrown, gaps }: Booking): Booking {
  if (one === undefined) return { baked, thrown, gaps }
  return { baked: one.baked + baked, thrown: one.thrown + thrown, gaps: one.gaps + gaps }
}

/** dozens / hours = (pieces / 12) / (minutes / 60) = 5 · pieces / minutes, to a tenth. */
function dozensPerHour(pieces: number, crewMinutes: number | null): number | null {
  if (crewMinutes === null || crewMinutes === 0) return null
  return Math.round((50 * pieces) / crewMinutes) / 10
}
