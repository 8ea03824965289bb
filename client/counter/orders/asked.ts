import type { Line } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { OrderLine } from '../../../shared-core/orders/order.ts'
import type { AskedLine } from '../../../shared-core/orders/order-commands.ts'
import { fits } from '../../../shared-core/orders/spoken-for.ts'

/** Pieces that an order asks for, as they are touched together. */
export type Asked = readonly AskedLine[]

/** What one touch of a variety adds. */
export type Portioned = 'one' | 'half' | 'dozen'

/** A half-dozen has no baker's piece: it is sold as six. */
const HALF_PIECES = 6

/** All pieces of a line. @param dozenPieces 12, or 13 where the shop gives a baker's dozen */
export function piecesAsked({ dozens, pieces }: AskedLine, dozenPieces: number): number {
  return dozens * dozenPieces + pieces
}

export function allPieces(asked: Asked, dozenPieces: number): number {
  return asked.reduce((sum, line) => sum + piecesAsked(line, dozenPieces), 0)
}

/**
 * One touch of a variety more (null: mixed): onto the chosen line when it is of that variety, else onto the last such
 * line, else a line of its own, sliced and bagged as the chosen one is.
 * @returns the lines, and the index of the one that grew
 */
export function withMore(
  asked: Asked,
  chosen: number,
  varietyId: VarietyId | null,
  much: Portioned,
): { readonly asked: Asked; readonly chosen: number } {
  const like = asked[chosen]
  const at = like?.varietyId === varietyId ? chosen : asked.map((line) => line.varietyId).lastIndexOf(varietyId)
  if (at >= 0) return { asked: replaced(asked, at, (line) => grown(line, much)), chosen: at }
  const empty = { varietyId, without: [], dozens: 0, pieces: 0 }
  const line = { ...empty, sliced: like?.sliced ?? false, bagged: like?.bagged ?? false }
  return { asked: [...asked, grown(line, much)], chosen: asked.length }
}

function grown(line: AskedLine, much: Portioned): AskedLine {
  if (much === 'dozen') return { ...line, dozens: line.dozens + 1 }
  return { ...line, pieces: line.pieces + (much === 'half' ? HALF_PIECES : 1) }
}

/** One touch fewer of the chosen line: as much as a touch adds, or what there is; a line without pieces goes. */
export function withFewer(asked: Asked, chosen: number, much: Portioned): Asked {
  const line = asked[chosen]
  if (line === undefined) return asked
  const dozens = much === 'dozen' ? Math.max(0, line.dozens - 1) : line.dozens
  const took = much === 'half' ? HALF_PIECES : 1
  const pieces = much === 'dozen' ? line.pieces : Math.max(0, line.pieces - took)
  if (dozens === line.dozens && pieces === line.pieces) return withoutLine(asked, chosen)
  if (dozens === 0 && pieces === 0) return withoutLine(asked, chosen)
  return replaced(asked, chosen, () => ({ ...line, dozens, pieces }))
}

function withoutLine(asked: Asked, chosen: number): Asked {
  return asked.filter((_, index) => index !== chosen)
}

/** A mixed line with or without a variety in it: a touch turns it round. Others stay as they are. */
export function withTurned(asked: Asked, chosen: number, varietyId: VarietyId): Asked {
  return replaced(asked, chosen, (line) => {
    if (line.varietyId !== null) return line
    const isOut = line.without.includes(varietyId)
    return { ...line, without: isOut ? line.without.filter((one) => one !== varietyId) : [...line.without, varietyId] }
  })
}

export function withFlag(asked: Asked, chosen: number, flag: 'sliced' | 'bagged'): Asked {
  return replaced(asked, chosen, (line) => ({ ...line, [flag]: !line[flag] }))
}

function replaced(asked: Asked, at: number, change: (line: AskedLine) => AskedLine): Asked {
  return asked.map((line, index) => (index === at ? change(line) : line))
}

/** What an order holds, as it is asked for: a shop that counts its dozen otherwise by now asks for the same pieces. */
export function askedOf(lines: readonly OrderLine[], dozenPieces: number): Asked {
  return lines.map(({ dozens, pieces, ...line }) => {
    const loose = pieces - dozens * dozenPieces
    return loose < 0 ? { ...line, dozens: 0, pieces } : { ...line, dozens, pieces: loose }
  })
}

/** The lines as an order of them would have them. */
export function orderLinesOf(asked: Asked, dozenPieces: number): readonly OrderLine[] {
  return asked.map((line) => ({ ...line, pieces: piecesAsked(line, dozenPieces) }))
}

/**
 * An order in two parts: what can go now, and the rest. Pieces of a variety are first those of lines that name it; a line
 * that is split counts in pieces.
 */
export function splitAsked(
  asked: Asked,
  now: readonly Line[],
  dozenPieces: number,
): { readonly now: Asked; readonly rest: Asked } {
  const left = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of now) left.set(varietyId, (left.get(varietyId) ?? 0) + pieces)
  const parts = new Map<AskedLine, { readonly now: Asked; readonly rest: Asked }>()
  const named = asked.filter(({ varietyId }) => varietyId !== null)
  for (const line of [...named, ...asked.filter((one) => !named.includes(one))]) {
    let open = piecesAsked(line, dozenPieces)
    const whole = open
    const taken: AskedLine[] = []
    for (const [varietyId, pieces] of left) {
      const takes = fits(line, varietyId) ? Math.min(open, pieces) : 0
      if (takes === 0) continue
      left.set(varietyId, pieces - takes)
      taken.push({ ...line, varietyId, without: [], dozens: 0, pieces: takes })
      open -= takes
    }
    const isWhole = open === whole
    parts.set(line, { now: taken, rest: isWhole ? [line] : open === 0 ? [] : [{ ...line, dozens: 0, pieces: open }] })
  }
  return {
    now: asked.flatMap((line) => parts.get(line)?.now ?? []),
    rest: asked.flatMap((line) => parts.get(line)?.rest ?? []),
  }
}
