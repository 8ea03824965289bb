import type { Together } from '../../shared-core/kitchen/queue.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import { widthOf, wrapText } from './text-lines.ts'

/** A kind that is shown, where its name stands, and how high it is. */
export interface SetKind {
  readonly kind: Together
  readonly head: Head
  /** `above`: the name over the rod; `beside`: left of it, where more kinds are to be shown. */
  readonly form: 'above' | 'beside'
  readonly heightPx: number
}

interface KindsRoom {
  readonly above: number
  readonly beside: number
  readonly namePx: number
  readonly heads: ReadonlyMap<string, Head>
}

/** The words above a rod: an allergy is never cut, so that it may take lines of its own. */
export interface Head {
  readonly allergy: readonly string[]
  readonly isNameBelow: boolean
  readonly lines: number
}

const NO_HEAD: Head = { allergy: [], isNameBelow: false, lines: 1 }
/** Edges of the block that an allergy stands in, and the space after it, in sizes of small text. */
export const BLOCK_EM = 1.5

export function headOf(kind: Together, widthPx: number, { made, sizes: { minPx } }: HeadInput): Head {
  if (kind.allergies.length === 0) return NO_HEAD
  const room = { roomPx: widthPx - BLOCK_EM * minPx, fontPx: minPx, weight: 'strong' } as const
  const allergy = wrapText(made.orders.allergy(kind.allergies), room)
  const lastPx = widthOf(allergy[allergy.length - 1] ?? '', minPx, 'strong') + BLOCK_EM * minPx
  const namePx = widthOf(made.orders.item({ ...kind, allergies: [] }, 1), minPx, 'strong')
  const isNameBelow = lastPx + namePx > widthPx
  return { allergy, isNameBelow, lines: allergy.length + (isNameBelow ? 1 : 0) }
}

/** Names above their rods where all fit so; else beside them, except where there is an allergy to be read. */
export function kindsThatFit(
  kinds: readonly Together[],
  roomPx: number,
  { above, beside, namePx, heads }: KindsRoom,
): readonly SetKind[] {
  const aboveOf = ({ key }: Together) => above + ((heads.get(key)?.lines ?? 1) - 1) * namePx
  const isRoomy = kinds.reduce((sum, kind) => sum + aboveOf(kind), 0) <= roomPx
  const set = kinds.map((kind): SetKind => {
    const head = heads.get(kind.key) ?? NO_HEAD
    return isRoomy || rankOf(kind) === 0
      ? { kind, head, form: 'above', heightPx: aboveOf(kind) }
      : { kind, head, form: 'beside', heightPx: beside }
  })
  const heightOf = (some: readonly SetKind[]) => some.reduce((sum, { heightPx }) => sum + heightPx, 0)
  if (heightOf(set) <= roomPx) return set
  let count = set.length - 1
  while (count > 1 && heightOf(set.slice(0, count)) > roomPx - namePx) count -= 1
  return set.slice(0, count)
}

interface HeadInput {
  readonly made: Pick<WallKitchenWords, 'orders'>
  readonly sizes: TextSizes
}

/** What stands first: an allergy. */
export function rankOf({ allergies }: Together): number {
  return allergies.length > 0 ? 0 : 1
}
