import { fitList } from '../../parts/fit.ts'
import { textWidthPx } from '../../parts/text-width.ts'
import { wrapped } from '../key-text.ts'
import type { KitchenLayout } from './kitchen-layout.ts'
import type { RodView } from './rods-view.ts'

/** One line of the words above a rod. */
export interface HeadRow {
  readonly allergy: string
  readonly name: string
  /** How it stands with the first ring. */
  readonly told: string
}

/** Edges of the block that an allergy stands in, and the space after it, in sizes of small text. */
const BLOCK_EM = 2

/**
 * What a rod holds, an allergy before all else and never cut. On a page that scrolls it takes as many lines as it needs,
 * else one: then what is left out of the name is counted, and how it stands with it, which the ring shows too, gives way.
 */
export function rodHead(
  { allergy, name, told }: Pick<RodView, 'allergy' | 'name' | 'told'>,
  { spanPx, totalPx, isNarrow }: Pick<KitchenLayout, 'spanPx' | 'totalPx' | 'isNarrow'>,
  minPx: number,
): readonly HeadRow[] {
  const widthPx = spanPx + totalPx
  const strong = (text: string) => (text === '' ? 0 : textWidthPx(text, minPx, 'strong'))
  const blockPx = allergy === '' ? 0 : strong(allergy) + BLOCK_EM * minPx
  const toldPx = textWidthPx(told, minPx) + minPx
  const wholePx = blockPx + strong(name)
  if (wholePx + toldPx <= widthPx) return [{ allergy, name, told }]
  if (wholePx <= widthPx) return [{ allergy, name, told: '' }]
  if (isNarrow) {
    const allergies = allergy === '' ? [] : wrapped(allergy, minPx, widthPx - BLOCK_EM * minPx, 'strong')
    const names = wrapped(name, minPx, widthPx, 'strong')
    return [
      ...allergies.map((text) => ({ allergy: text, name: '', told: '' })),
      ...names.map((text) => ({ allergy: '', name: text, told: '' })),
    ]
  }
  const room = { roomPx: widthPx - blockPx, fontPx: minPx, weight: 'strong' } as const
  const fitting = fitList(name.split(', '), room, (count) => `+${count}`)
  const [first = ''] = wrapped(name, minPx, room.roomPx - strong(' …'), 'strong')
  return [{ allergy, name: fitting.startsWith('+') ? `${first} …` : fitting, told: '' }]
}
