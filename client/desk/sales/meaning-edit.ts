import { varietyId } from '../../../shared-core/ids.ts'
import type { Meaning, PackLine } from '../../../shared-core/live/sales-import.ts'
import type { Variety } from '../../../shared-core/shop/shop.ts'

export const KINDS = ['variety', 'pack', 'unnamed', 'kitchen', 'nothing'] as const satisfies readonly Meaning['kind'][]

/** More pieces than one touch of a till's key ever is. */
export const PIECES_MAX = 1_000

/** Another kind of meaning begins with what the one before said of variety and pieces. */
export function begun(
  kind: Meaning['kind'],
  varieties: readonly Pick<Variety, 'id'>[],
  before: Meaning = { kind: 'nothing' },
): Meaning {
  const id = varietyIn(before) ?? varieties[0]?.id ?? varietyId('none')
  const pieces = piecesIn(before)
  switch (kind) {
    case 'variety':
      return { kind, varietyId: id, pieces }
    case 'pack':
      return { kind, lines: [{ varietyId: id, pieces }] }
    case 'unnamed':
      return { kind, pieces, among: null }
    case 'kitchen':
      return { kind, varietyId: varietyIn(before), pieces }
    case 'nothing':
      return { kind }
  }
}

function varietyIn(meaning: Meaning): PackLine['varietyId'] | null {
  if (meaning.kind === 'variety' || meaning.kind === 'kitchen') return meaning.varietyId
  return meaning.kind === 'pack' ? (meaning.lines[0]?.varietyId ?? null) : null
}

function piecesIn(meaning: Meaning): number {
  if (meaning.kind === 'nothing') return 1
  if (meaning.kind !== 'pack') return meaning.pieces
  return Math.max(
    1,
    meaning.lines.reduce((so, { pieces }) => so + pieces, 0),
  )
}

/** Whether it can be saved: pieces are whole and a pack has some of each of its varieties, none twice. */
export function isWhole(meaning: Meaning): boolean {
  const isCount = (pieces: number) => Number.isInteger(pieces) && pieces >= 1 && pieces <= PIECES_MAX
  if (meaning.kind === 'nothing') return true
  if (meaning.kind !== 'pack') return isCount(meaning.pieces)
  const ids = new Set(meaning.lines.map((line) => line.varietyId))
  return ids.size > 0 && ids.size === meaning.lines.length && meaning.lines.every(({ pieces }) => isCount(pieces))
}
