import type { CommandId, DoughId, MixId, VarietyId } from '../ids.ts'
import { byVariety } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import type { Shop } from '../shop/shop.ts'
import { assert, must } from '../support.ts'
import { epochMs } from '../units.ts'
import { applyEntry } from './apply.ts'
import { closesDay, eventsOfDay, reopensDay } from './day-record.ts'
import type { FormulaAccount } from './dough-account.ts'
import { doughAccount } from './dough-account.ts'
import type { Entry, Event } from './events.ts'
import type { Account, State } from './state.ts'
import { forkState } from './state-json.ts'

/** A day's pieces, by dough as the account has them and by variety from the oven on; and its dough by formula. */
export interface DayAccount {
  readonly doughs: readonly DoughAccount[]
  readonly varieties: readonly VarietyAccount[]
  readonly formulas: readonly FormulaAccount[]
}

export interface DoughAccount {
  readonly doughId: DoughId
  readonly name: string
  readonly account: Account
  /** In a stage, for sale or kept at the end: shaped + carried in − all that is gone. */
  readonly stillThere: number
}

export interface VarietyAccount extends VarietyCounts {
  readonly varietyId: VarietyId
  readonly name: string
  readonly dough: string
  readonly priceCents: number
  /** What was sold fresh at the price, and what was sold day-old at its part of it, rounded to the cent. */
  readonly salesCents: number
}

export interface VarietyCounts {
  readonly baked: number
  /** Fresh; boxes that were fetched and unnamed sales' shares are in it. */
  readonly sold: number
  /** Of the sold ones, those of which nobody said the variety. */
  readonly soldUnnamed: number
  readonly dayOldSold: number
  readonly kitchen: number
  readonly wasted: number
  readonly given: number
  /** Left at the close. */
  readonly left: number
  /** Signed, as in the account. */
  readonly unexplained: number
}

interface Booked {
  readonly varietyId: VarietyId
  readonly column: keyof VarietyCounts
  readonly pieces: number
}

/**
 * The account of a day from its record; see `dayFigures` for what that is. By dough every piece is accounted for; by
 * variety from the oven on only, as before it dough has none.
 */
export function dayAccount(start: State, entries: Iterable<Entry>): DayAccount {
  const state = forkState(start)
  const booked = new Map<CommandId, readonly Booked[]>()
  let end: End | null = null
  let isFirst = true
  let isClosed = false
  for (const entry of entries) {
    const events = eventsOfDay(entry, isFirst)
    for (const event of events) if (event.type === 'takenBack') booked.delete(event.commandId)
    booked.set(entry.commandId, events.flatMap(bookedBy))
    if (reopensDay(entry)) {
      isClosed = false
      for (const [id, some] of booked) booked.set(id, some.filter(isNotLeft))
    }
    const close = isFirst ? null : closesDay(entry)
    const isClosing = close !== null
    const before = isClosing ? new Map(state.mixes) : state.mixes
    applyEntry(state, entry)
    const { shop, lastDay } = state
    const account = isClosing ? accountOf(lastDay) : state.account
    if (shop !== null && !isClosed) end = { shop, account, mixes: before, gone: new Set(close?.mixIds) }
    isClosed ||= isClosing
    isFirst = false
  }
  assert(end !== null, 'the account of a day without an entry')
  const since = { before: start.mixes, closedAtMs: start.lastDay?.closedAtMs ?? epochMs(0), gone: end.gone }
  return {
    doughs: doughRows(end),
    varieties: varietyRows(end.shop, [...booked.values()].flat()),
    formulas: doughAccount(end.mixes.values(), since),
  }
}

interface End {
  readonly shop: Shop
  readonly account: State['account']
  /** As they were before a close cleared some out. */
  readonly mixes: State['mixes']
  readonly gone: ReadonlySet<MixId>
}

function accountOf(lastDay: State['lastDay']): State['account'] {
  return new Map((lastDay?.account ?? []).map(({ doughId, account }) => [doughId, account]))
}

/** What was left at a close that was none. */
function isNotLeft({ column }: Booked): boolean {
  return column !== 'left'
}

function doughRows({ shop, account }: End): readonly DoughAccount[] {
  return [...account]
    .map(([doughId, one]) => ({ dough: must(shop.doughs, doughId), account: one }))
    .sort((one, other) => one.dough.order - other.dough.order || (one.dough.id < other.dough.id ? -1 : 1))
    .map(({ dough, account: one }) => {
      const gone = one.sold + one.kitchen + one.wasted + one.given + one.dayOld + one.unexplained
      return { doughId: dough.id, name: dough.name, account: one, stillThere: one.shaped + one.carriedIn - gone }
    })
}

function varietyRows(shop: Shop, booked: readonly Booked[]): readonly VarietyAccount[] {
  const counts = new Map<VarietyId, Record<keyof VarietyCounts, number>>()
  for (const { varietyId, column, pieces } of booked) {
    const so = counts.get(varietyId) ?? { ...NO_COUNTS }
    so[column] += pieces
    counts.set(varietyId, so)
  }
  return [...counts]
    .sort(([one], [other]) => byVariety(shop, one, other))
    .map(([varietyId, all]) => {
      const { name, doughId, priceCents } = must(shop.varieties, varietyId)
      const dayOldCents = Math.round((all.dayOldSold * priceCents * shop.counter.dayOldPercent) / 100)
      const salesCents = all.sold * priceCents + dayOldCents
      return { varietyId, name, dough: must(shop.doughs, doughId).name, priceCents, salesCents, ...all }
    })
}

const NO_COUNTS: VarietyCounts = {
  baked: 0,
  sold: 0,
  soldUnnamed: 0,
  dayOldSold: 0,
  kitchen: 0,
  wasted: 0,
  given: 0,
  left: 0,
  unexplained: 0,
}

function bookedBy(event: Event): readonly Booked[] {
  switch (event.type) {
    case 'out':
      return event.lots.map(({ varietyId, lot }) => ({ varietyId, column: 'baked', pieces: lot.pieces }))
    case 'stockTaken': {
      const { varietyId, fate, found, unnamed } = event
      const pieces = piecesOf(event.takes) + found
      const unnamedPieces = fate === 'sold' && unnamed ? pieces : 0
      return [
        { varietyId, column: fate, pieces },
        { varietyId, column: 'soldUnnamed', pieces: unnamedPieces },
        { varietyId, column: 'unexplained', pieces: -found },
      ]
    }
    case 'dayOldTaken': {
      const { varietyId, fate, pieces, found } = event
      const column = fate === 'sold' ? 'dayOldSold' : fate
      return [
        { varietyId, column, pieces },
        { varietyId, column: 'unexplained', pieces: -found },
      ]
    }
    case 'counted':
      return [{ varietyId: event.varietyId, column: 'unexplained', pieces: event.unexplained }]
    case 'kept':
      return event.parts.map(({ varietyId, found }) => ({ varietyId, column: 'unexplained', pieces: -found }))
    case 'handedOver':
      return event.parts.map(({ varietyId, pieces }) => ({ varietyId, column: 'sold', pieces }))
    case 'dayClosed':
      return event.left.map(({ varietyId, pieces }) => ({ varietyId, column: 'left', pieces }))
    default:
      return []
  }
}
