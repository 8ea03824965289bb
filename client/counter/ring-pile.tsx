import { Drawing } from '../parts/drawing.tsx'
import { partRing, wholeRing } from '../parts/rod-shape.ts'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'

export interface RingPileProps {
  readonly pieces: number
  /** CSS pixels. */
  readonly widthPx: number
  /** Room for so many rings; more are not drawn. */
  readonly rings: number
}

/** Pieces that are no half-dozen: one little ring each. */
export function Singles({ pieces, sizePx }: { readonly pieces: number; readonly sizePx: number }) {
  const width = Math.max(1, pieces) * 12
  const scale = sizePx / 12
  return (
    <Drawing
      class="counter-singles"
      viewBox={`0 0 ${width} 12`}
      width={`${Math.round(width * scale)}px`}
      height={`${Math.round(sizePx)}px`}
    >
      {Array.from({ length: pieces }, (_, index) => (
        <circle key={`single ${index * 12}`} cx={index * 12 + 6} cy="6" r="3.7" />
      ))}
    </Drawing>
  )
}

const RISE = 0.17
const TILT = 0.14

/** Rings as they lie on a rod, without the rod: a whole one for each half-dozen, a part of one for the rest. */
export function RingPile({ pieces, widthPx, rings }: RingPileProps) {
  const whole = Math.floor(pieces / PIECES_PER_RING)
  const rest = pieces % PIECES_PER_RING
  const step = widthPx * RISE
  const height = widthPx * TILT * 2 + step * (rings - 1) + 2
  const drawn = Array.from({ length: Math.min(rings, whole + (rest > 0 ? 1 : 0)) }, (_, index) => {
    const ring = {
      centreX: widthPx / 2,
      centreY: height - 1 - widthPx * TILT - step * index,
      radiusX: widthPx / 2 - 1,
      radiusY: widthPx * TILT,
    }
    const isTop = index === whole - (rest > 0 ? 0 : 1)
    return index < whole ? wholeRing(ring, isTop || index === rings - 1) : partRing(ring, rest)
  })
  return (
    <Drawing class="counter-pile" viewBox={`0 0 ${widthPx} ${height}`} width={`${widthPx}px`} height={`${height}px`}>
      {drawn.map((d) => (
        <path key={d} class="rod-for-sale" d={d} fill-rule="evenodd" stroke-width="1.5" />
      ))}
    </Drawing>
  )
}
