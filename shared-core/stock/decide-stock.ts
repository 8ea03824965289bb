import type { StockCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { KeptPart, Take } from '../day/events.ts'
import type { Keep, Line, Lot, SaleSource } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { batchId, keepId } from '../ids.ts'
import { lineRefusal, piecesOf, wantOf } from '../line/lines.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

type Of<Type extends StockCommand['type']> = Case<Extract<StockCommand, { type: Type }>>

/** A sale is never blocked: what is in the customer's hand was there, whatever the board knew. */
export function decideSell(oneCase: Of<'sell'>): Decision {
  const { command, shop } = oneCase
  const refusal = lineRefusal(shop, command.lines)
  if (refusal !== null) return refusal
  const atMs = happenedAt(oneCase)
  const { lines, from = 'tap' } = command
  if (counts(shop, from)) for (const line of lines) takeOff(oneCase, line, 'sold', { atMs, from })
  else happen(oneCase, atMs, { type: 'saleNoted', lines, unnamed: 0, from })
  return take(oneCase, { lines })
}

/** Whether a source's sales change what is left: one source does, so that no piece is counted off twice. */
export function counts(shop: Shop, from: SaleSource): boolean {
  return shop.counter.salesFrom === (from === 'tap' ? 'taps' : 'till')
}

export function decideDayOldIn(oneCase: Of<'dayOldIn'>): Decision {
  const { command, shop } = oneCase
  const refusal = lineRefusal(shop, command.lines)
  if (refusal !== null) return refusal
  const lines = command.lines.map((line) => ({ ...line, doughId: wantOf(shop, line).doughId }))
  happen(oneCase, happenedAt(oneCase), { type: 'dayOldPut', lines })
  return take(oneCase, { lines: command.lines })
}

export function decideDayOldOut(oneCase: Of<'dayOldOut'>): Decision {
  const { command, shop, state } = oneCase
  const { varietyId, pieces, fate } = command
  const line = { varietyId, pieces }
  const refusal = lineRefusal(shop, [line])
  if (refusal !== null) return refusal
  const found = Math.max(0, pieces - (state.stock.get(varietyId)?.dayOld ?? 0))
  const { doughId } = wantOf(shop, line)
  happen(oneCase, happenedAt(oneCase), { type: 'dayOldTaken', varietyId, doughId, fate, pieces, found })
  return take(oneCase, { lines: [line] })
}

export function decideRemove(oneCase: Of<'remove'>): Decision {
  const { command, shop } = oneCase
  const line = { varietyId: command.varietyId, pieces: command.pieces }
  const refusal = lineRefusal(shop, [line])
  if (refusal !== null) return refusal
  takeOff(oneCase, line, command.fate, { atMs: happenedAt(oneCase), from: 'tap' })
  return take(oneCase, { lines: [line] })
}

/** Set aside for somebody: out of what is for sale, not yet sold. */
export function decideKeep(oneCase: Of<'keep'>): Decision {
  const { command, shop } = oneCase
  const refusal = lineRefusal(shop, command.lines)
  if (refusal !== null) return refusal
  const { orderId } = command
  const order = orderId === undefined ? undefined : oneCase.state.orders.get(orderId)
  if (orderId !== undefined && order === undefined) return refuse('unknown-order')
  const atMs = happenedAt(oneCase)
  const parts = command.lines.map((line): KeptPart => {
    const takes = oldestOf(lotsOf(oneCase, line.varietyId), line.pieces)
    return {
      varietyId: line.varietyId,
      doughId: wantOf(shop, line).doughId,
      takes,
      found: line.pieces - piecesOf(takes),
    }
  })
  const taken = new Set(parts.flatMap(({ takes }) => takes.map((one) => one.batchId)))
  const lots = command.lines.flatMap((line) => lotsOf(oneCase, line.varietyId)).filter((lot) => taken.has(lot.id))
  const keep: Keep = {
    id: keepId(oneCase.newId()),
    lines: command.lines,
    keptAtMs: atMs,
    outAtMs: latest(lots.map((lot) => lot.outAtMs)) ?? atMs,
    readyAtMs: latest(lots.map((lot) => lot.readyAtMs)) ?? atMs,
    ...(orderId === undefined ? {} : { orderId }),
  }
  happen(oneCase, atMs, { type: 'kept', keep, parts })
  return take(oneCase, { lines: command.lines, ...(order === undefined ? {} : { mark: order.mark }) })
}

export function decideRelease(oneCase: Of<'release'>): Decision {
  const { command, shop, state } = oneCase
  const keep = state.keeps.get(command.keepId)
  if (keep === undefined) return refuse('unknown-keep')
  const atMs = happenedAt(oneCase, keep.keptAtMs)
  const lots = keep.lines.map((line) => ({
    varietyId: line.varietyId,
    doughId: wantOf(shop, line).doughId,
    lot: { id: batchId(oneCase.newId()), pieces: line.pieces, outAtMs: keep.outAtMs, readyAtMs: keep.readyAtMs },
  }))
  happen(oneCase, atMs, { type: 'released', keepId: keep.id, lots })
  return take(oneCase, { lines: keep.lines })
}

export function decideHandOver(oneCase: Of<'handOver'>): Decision {
  const { command, shop, state } = oneCase
  const keep = state.keeps.get(command.keepId)
  if (keep === undefined) return refuse('unknown-keep')
  const parts = keep.lines.map((line) => ({ ...line, doughId: wantOf(shop, line).doughId }))
  happen(oneCase, happenedAt(oneCase, keep.keptAtMs), { type: 'handedOver', keepId: keep.id, parts })
  return take(oneCase, { lines: keep.lines })
}

interface TakingOff {
  readonly atMs: EpochMs
  readonly from: SaleSource
  readonly unnamed?: boolean
  /** What is there after what the same command took before; left out: as the state has it. */
  readonly lots?: readonly Lot[]
}

export function takeOff(
  oneCase: Case,
  line: Line,
  fate: 'sold' | 'kitchen' | 'wasted' | 'given',
  { atMs, from, unnamed = false, lots }: TakingOff,
): void {
  const takes = oldestOf(lots ?? lotsOf(oneCase, line.varietyId), line.pieces)
  const { doughId } = wantOf(oneCase.shop, line)
  const found = line.pieces - piecesOf(takes)
  happen(oneCase, atMs, {
    type: 'stockTaken',
    varietyId: line.varietyId,
    doughId,
    fate,
    takes,
    found,
    unnamed,
    from,
  })
}

export function lotsOf({ state }: Case, id: VarietyId): readonly Lot[] {
  return state.stock.get(id)?.lots ?? []
}

/** At most `pieces` out of lots, oldest first; hot ones too, as customers like them so. */
export function oldestOf(lots: readonly Lot[], pieces: number): readonly Take[] {
  const takes: Take[] = []
  let short = pieces
  for (const lot of lots) {
    const got = Math.min(lot.pieces, short)
    if (got > 0) takes.push({ batchId: lot.id, pieces: got })
    short -= got
  }
  return takes
}

function latest(instants: readonly EpochMs[]): EpochMs | null {
  return instants.reduce<EpochMs | null>((last, atMs) => (last === null || atMs > last ? atMs : last), null)
}
