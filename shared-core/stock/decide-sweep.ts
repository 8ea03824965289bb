import type { StockCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, take } from '../day/decision.ts'
import type { Line } from '../day/state.ts'
import { lineRefusal, piecesOf } from '../line/lines.ts'
import { inUse } from '../shop/in-order.ts'
import { counts, happenCounted, takeOff } from './decide-stock.ts'

type Of<Type extends StockCommand['type']> = Case<Extract<StockCommand, { type: Type }>>

/** The rods in doubt, counted in one go. It asks nothing back: whoever sweeps has just looked. */
export function decideSweep(oneCase: Of<'sweep'>): Decision {
  const { command, shop } = oneCase
  const refusal = lineRefusal(shop, command.counts)
  if (refusal !== null) return refusal
  const atMs = happenedAt(oneCase)
  for (const count of command.counts) happenCounted(oneCase, count, atMs)
  return take(oneCase, { lines: command.counts.map(({ varietyId, pieces }) => ({ varietyId, pieces })) })
}

export function decideLastOneGone(oneCase: Of<'lastOneGone'>): Decision {
  const { command, shop } = oneCase
  const count = { varietyId: command.varietyId, pieces: 0, within: 0 }
  const refusal = lineRefusal(shop, [count])
  if (refusal !== null) return refusal
  happenCounted(oneCase, count, happenedAt(oneCase))
  return take(oneCase, { lines: [{ varietyId: command.varietyId, pieces: 0 }] })
}

/** Pieces of which nobody said the variety: spread over what is there. */
export function decideSellUnnamed(oneCase: Of<'sellUnnamed'>): Decision {
  const { command, shop } = oneCase
  const { pieces, from = 'tap' } = command
  const atMs = happenedAt(oneCase)
  if (!counts(shop, from)) happen(oneCase, atMs, { type: 'saleNoted', lines: [], unnamed: pieces, from })
  else for (const line of spread(oneCase, pieces)) takeOff(oneCase, line, 'sold', { atMs, from, unnamed: true })
  return take(oneCase, { pieces })
}

/** In proportion to what is there, largest remainders first; ties in the set-up's order. */
function spread({ state, shop }: Case, pieces: number): readonly Line[] {
  const there = inUse(shop.varieties).map(({ id }) => ({
    varietyId: id,
    weight: piecesOf(state.stock.get(id)?.lots ?? []),
  }))
  const total = there.reduce((sum, { weight }) => sum + weight, 0)
  const weighed = total > 0 ? there : there.map((one) => ({ ...one, weight: 1 }))
  const whole = total > 0 ? total : there.length
  const shares = weighed.map(({ varietyId, weight }) => ({
    varietyId,
    pieces: Math.floor((pieces * weight) / whole),
    rest: (pieces * weight) % whole,
  }))
  let short = pieces - shares.reduce((sum, share) => sum + share.pieces, 0)
  const more = new Set<string>()
  for (const { varietyId } of [...shares].sort((one, other) => other.rest - one.rest)) {
    if (short === 0) break
    more.add(varietyId)
    short -= 1
  }
  return shares
    .map(({ varietyId, pieces: some }) => ({ varietyId, pieces: some + (more.has(varietyId) ? 1 : 0) }))
    .filter((line) => line.pieces > 0)
}
