import { slipOf } from '../day/ruler.ts'
import type { PlannedLoad, State } from '../day/state.ts'
import { doughOrdered } from '../orders/mixed-spread.ts'
import { orderedOn, piecesOn } from '../orders/ordered-on.ts'
import { hoursOn } from '../shop/hours.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { assert } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { contactsNow } from './line-contacts.ts'
import type { DoughLot } from './line-dough.ts'
import type { LineAt, LineToday, PinnedLoad } from './line-today.ts'
import { typedFor } from './line-today.ts'

/**
 * The line on a day that is not open yet: empty, with all that the shop has, and the dough that is wanted for that day;
 * where nobody has said how much, as much as is worth baking.
 * @param at `date` is the day to come, `noonMs` its noon
 * @throws AssertionError without a set-up
 */
export function dayAheadLine(state: State, at: LineAt): LineToday {
  const { shop } = state
  assert(shop !== null, 'a line is planned only for a shop that is set up')
  const typed = wantedOf(state, shop, at)
  return {
    ...at,
    isOpen: false,
    isOver: hoursOn(shop, at.date) === null,
    slipMs: state.day === null ? 0 : slipOf(state, at.date),
    kettleFromMs: null,
    boards: shop.boards.count,
    shelves: inUse(shop.shelves).map(({ id }) => ({ shelfId: id, isReopened: false, freeFromMs: null })),
    loads: [],
    begun: [],
    doughs: [...typed, ...orderedDough(state, shop, at)],
    doughIsOpen: typed.length === 0,
    stock: [],
    cooling: [],
    ordered: [...typedFor(state, shop, at), ...orderedOn(state, at)],
    pinned: pinnedOf(state, shop, at),
    forbids: state.forbids,
    contacts: contactsNow(state),
  }
}

/** What is typed for the day, by what is decided at the mixer. */
function wantedOf(state: State, shop: Shop, { date, noonMs }: LineAt): readonly DoughLot[] {
  const fromMs = dayFrom(noonMs)
  return (state.wanted.get(date)?.lines ?? []).flatMap(({ doughId, varietyId, pieces, ordered }) => {
    const isOwn = varietyId !== null && shop.varieties.get(varietyId)?.decidedAt === 'mixer'
    if (pieces + ordered === 0) return []
    const lot = { doughId, varietyId: isOwn ? varietyId : null, pieces: pieces + ordered }
    return [{ ...lot, stage: 'chill', boilFromMs: fromMs, latestAtMs: null }]
  })
}

/** What is ordered for the day besides is dough besides. */
function orderedDough(state: State, shop: Shop, at: LineAt): readonly DoughLot[] {
  const fromMs = dayFrom(at.noonMs)
  return doughOrdered(shop, piecesOn(state, at)).map(({ doughId, varietyId, pieces }) => {
    const isOwn = varietyId !== null && shop.varieties.get(varietyId)?.decidedAt === 'mixer'
    return {
      doughId,
      varietyId: isOwn ? varietyId : null,
      pieces,
      stage: 'chill',
      boilFromMs: fromMs,
      latestAtMs: null,
    }
  })
}

/** Loads that people have listed for that day already, each with its time; those without one wait for the day. */
function pinnedOf(state: State, shop: Shop, { noonMs }: LineAt): readonly PinnedLoad[] {
  const [fromMs, toMs] = [dayFrom(noonMs), noonMs + HALF_DAY_MS]
  const first = inUse(shop.shelves)[0]
  return [...state.planned.values()].flatMap(({ id, done, shelfId, inAtMs, lines }: PlannedLoad) => {
    const shelf = shelfId ?? first?.id
    if (done || inAtMs === null || inAtMs < fromMs || inAtMs >= toMs || shelf === undefined) return []
    return [{ id, shelfId: shelf, inAtMs, lines }]
  })
}

const HALF_DAY_MS = 12 * 60 * 60_000

function dayFrom(noonMs: EpochMs): EpochMs {
  return epochMs(Math.max(0, noonMs - HALF_DAY_MS))
}
