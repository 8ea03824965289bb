import type { BakeOff } from './bake-off.ts'
import type { Slot } from './first-plan.ts'
import type { Shop } from './shop.ts'

/** Of the pieces that may go together into a slot, those that are likely to be the wanted ones. */
const WELL_MIXED = 0.8

/** What walk-ins and orders are expected to take of all varieties together. */
export interface Demand {
  readonly startMin: number
  /** Pieces that have been wanted by the start and each minute after it. */
  readonly pieces: Float64Array
  /** Pieces that are there already or come without the plan. */
  readonly onHand: number
  /** Of a slot's pieces, those that are likely to be made use of. */
  readonly used: number
}

export function demandByMinute({ given, values }: Shop): Demand {
  const startMin = Math.max(given.open, given.now ?? given.open)
  const pieces = new Float64Array(Math.max(1, Math.ceil(given.close - startMin) + 1))
  for (let minute = 0; minute < pieces.length; minute++) {
    for (const { curve, rateMean } of values) {
      const at = startMin + minute
      pieces[minute] =
        (pieces[minute] as number) + rateMean * (curve.partAt(at, curve.cornerBy(at)) - (curve.parts[0] as number))
    }
    for (const { due, lines } of given.orders) {
      if (due <= startMin + minute)
        for (const [, ordered] of lines) pieces[minute] = (pieces[minute] as number) + ordered
    }
  }
  const running = (given.running ?? []).flatMap(({ lines }) => lines)
  const coming = running.reduce((sum, [, count]) => sum + count, 0)
  const used = WELL_MIXED * goTogether(given)
  return { startMin, pieces, used, onHand: given.varieties.reduce((sum, { onShelf }) => sum + onShelf, coming) }
}

/** Pieces lost if demand came evenly and every slot were used, one piece being as good as another. */
export function fluidLoss({ startMin, pieces, onHand, used }: Demand, slots: readonly Slot[], coolMin: number): number {
  let stock = onHand
  let lost = 0
  let next = 0
  const ordered = [...slots].sort((a, b) => a.out - b.out)
  for (let minute = 0; minute < pieces.length; minute++) {
    for (
      let slot = ordered[next];
      slot !== undefined && slot.out + coolMin <= startMin + minute;
      slot = ordered[next]
    ) {
      stock += slot.piecesMax * used
      next++
    }
    stock -= (pieces[minute] as number) - (minute > 0 ? (pieces[minute - 1] as number) : 0)
    if (stock < 0) {
      lost -= stock
      stock = 0
    }
  }
  return lost
}

/** The part of a day's demand that may share a load with a piece drawn from it. */
function goTogether({ varieties, bakeToleranceMin }: BakeOff): number {
  const total = varieties.reduce((sum, { demand }) => sum + demand.mean, 0)
  const withEach = varieties.map(({ bakeMin, demand }) => {
    const near = varieties.filter((other) => Math.abs(other.bakeMin - bakeMin) <= bakeToleranceMin)
    return demand.mean * near.reduce((sum, other) => sum + other.demand.mean, 0)
  })
  return total > 0 ? withEach.reduce((sum, one) => sum + one, 0) / total ** 2 : 1
}
