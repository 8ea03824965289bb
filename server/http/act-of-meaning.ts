import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/**
 * What a till's row does on the board, by what the desk has said of its name. Where the till is not what the shop counts
 * by, kitchen use is tapped by the kitchen and is not counted twice.
 */
export function actOfMeaning(meaning: Meaning, count: number, { counter }: Shop): Act | 'nothing' | 'too-many' {
  if (meaning.kind === 'nothing') return 'nothing'
  if (meaning.kind === 'pack') {
    const lines = meaning.lines.map(({ varietyId, pieces }) => ({ varietyId, pieces: pieces * count }))
    return lines.some(({ pieces }) => pieces > PIECES_MAX) ? 'too-many' : { type: 'sell', lines, from: 'till' }
  }
  const pieces = meaning.pieces * count
  if (pieces > PIECES_MAX) return 'too-many'
  if (meaning.kind === 'variety')
    return { type: 'sell', lines: [{ varietyId: meaning.varietyId, pieces }], from: 'till' }
  if (meaning.kind === 'unnamed') return { type: 'sellUnnamed', pieces, from: 'till' }
  if (counter.salesFrom !== 'till') return 'nothing'
  return meaning.varietyId === null
    ? { type: 'sellUnnamed', pieces, from: 'till' }
    : { type: 'remove', varietyId: meaning.varietyId, pieces, fate: 'kitchen' }
}
