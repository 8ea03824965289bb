import type { StockCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { askFor, happen, happenedAt, take } from '../day/decision.ts'
import type { Counted, Lot, Stock } from '../day/state.ts'
import { batchId } from '../ids.ts'
import { lineRefusal, piecesOf, wantOf } from '../line/lines.ts'
import type { EpochMs } from '../units.ts'
import { NO_STOCK } from './apply-stock.ts'
import { lotsOf, oldestOf } from './decide-stock.ts'
import type { Estimate } from './estimate.ts'
import { estimateOf } from './estimate.ts'
import { keptWithin } from './kept-within.ts'
import type { Leaks } from './leak.ts'
import { leaksOf } from './leak.ts'
import { habitAfter } from './learn.ts'

type Of<Type extends StockCommand['type']> = Case<Extract<StockCommand, { type: Type }>>

/**
 * A count further off than this from all that was likely is asked back: more likely a slip of the finger than a rack
 * gone missing.
 */
const FAR_COUNT_PIECES = 24

/** What people see on the rod is right. */
export function decideCount(oneCase: Of<'count'>): Decision {
  const { command, shop, state } = oneCase
  const { varietyId, pieces } = command
  const count = { varietyId, pieces, within: 0 }
  const refusal = lineRefusal(shop, [count])
  if (refusal !== null) return refusal
  const look: Look = { atMs: happenedAt(oneCase), leaks: leaksOf(state), isJustGone: false }
  const { likely, within } = whatIsThere(oneCase, count, look).estimate
  const ask = Math.abs(likely - pieces) - within > FAR_COUNT_PIECES
  const asked = askFor(command, ask ? [{ code: 'far-count', params: { varietyId, known: likely, pieces } }] : [])
  if (asked !== null) return asked
  happenCounted(oneCase, count, look)
  return take(oneCase, { lines: [{ varietyId, pieces }] })
}

/** The rods in doubt, counted in one go. It asks nothing back: whoever sweeps has just looked. */
export function decideSweep(oneCase: Of<'sweep'>): Decision {
  const { command, shop, state } = oneCase
  const refusal = lineRefusal(shop, command.counts)
  if (refusal !== null) return refusal
  const look: Look = { atMs: happenedAt(oneCase), leaks: leaksOf(state), isJustGone: false }
  for (const count of command.counts) happenCounted(oneCase, count, look)
  return take(oneCase, { lines: command.counts.map(({ varietyId, pieces }) => ({ varietyId, pieces })) })
}

/** Nothing of it is for sale now; what still cools is left to cool. */
export function decideLastOneGone(oneCase: Of<'lastOneGone'>): Decision {
  const { command, shop, state } = oneCase
  const count = { varietyId: command.varietyId, pieces: 0, within: 0 }
  const refusal = lineRefusal(shop, [count])
  if (refusal !== null) return refusal
  happenCounted(oneCase, count, { atMs: happenedAt(oneCase), leaks: leaksOf(state), isJustGone: true })
  return take(oneCase, { lines: [{ varietyId: command.varietyId, pieces: 0 }] })
}

/** A look at rods. */
interface Look {
  readonly atMs: EpochMs
  readonly leaks: Leaks | null
  /** Somebody saw the last one go. */
  readonly isJustGone: boolean
}

interface There {
  readonly stock: Stock
  /** Ready, or shown by the count to be ready, though they should still be cooling. */
  readonly lots: readonly Lot[]
  readonly matured: readonly Lot[]
  readonly known: number
  readonly estimate: Estimate
}

/**
 * What should be on a rod. Lots that should still be cooling are taken for ready, oldest first, as long as that brings
 * the known number nearer to the counted one.
 */
function whatIsThere(oneCase: Case, { varietyId, pieces }: Counted, { atMs, leaks }: Look): There {
  const { shop, state } = oneCase
  const { doughId } = wantOf(shop, { varietyId, pieces })
  const stock = state.stock.get(varietyId) ?? { ...NO_STOCK, varietyId, doughId }
  const all = lotsOf(oneCase, varietyId)
  const ready = all.filter((lot) => lot.readyAtMs <= atMs)
  const matured = maturedBy(all, piecesOf(ready), pieces, atMs)
  const lots = [...ready, ...matured]
  const estimate = estimateOf(leaks, { stock, lots, nowMs: atMs, salesFrom: shop.counter.salesFrom })
  return { stock, lots, matured, known: piecesOf(lots), estimate }
}

/** Books a count; the gap between the books and what is there is unexplained, signed. */
function happenCounted(oneCase: Case, count: Counted, look: Look): void {
  const { varietyId, pieces, within } = count
  const { atMs, leaks, isJustGone } = look
  const { stock, lots, matured, known, estimate } = whatIsThere(oneCase, count, look)
  const left = keptWithin(estimate, count)
  const unexplained = known - left
  const foundLot: Lot | null =
    unexplained < 0 ? { id: batchId(oneCase.newId()), pieces: -unexplained, outAtMs: atMs, readyAtMs: atMs } : null
  const before = oneCase.state.habits.get(varietyId) ?? null
  const books = { stock, lots, nowMs: atMs, salesFrom: oneCase.shop.counter.salesFrom }
  happen(oneCase, atMs, {
    type: 'counted',
    varietyId,
    doughId: stock.doughId,
    pieces,
    within,
    habit: leaks === null ? null : habitAfter(before, leaks, books, { known, left, within, isJustGone }),
    matured: matured.map((lot) => lot.id),
    takes: unexplained > 0 ? oldestOf(lots, unexplained) : [],
    unexplained,
    foundLot,
  })
}

function maturedBy(lots: readonly Lot[], readyPieces: number, counted: number, atMs: EpochMs): readonly Lot[] {
  const matured: Lot[] = []
  let known = readyPieces
  for (const lot of lots) {
    if (lot.readyAtMs <= atMs) continue
    if (Math.abs(known + lot.pieces - counted) >= Math.abs(known - counted)) break
    matured.push(lot)
    known += lot.pieces
  }
  return matured
}
