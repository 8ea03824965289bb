import { Drawing } from './drawing.tsx'
import type { SeenRing } from './rod-shape.ts'
import { ghostRing, partRing, wholeRing } from './rod-shape.ts'
import type { RodPlace, RodStock } from './rod-stack.ts'
import { PIECES_PER_RING, rodPlaces } from './rod-stack.ts'

export interface RodProps extends RodStock {
  /** CSS pixels from the foot to the top of the pole. */
  readonly height: number
  /** CSS pixels; about four ring heights when left out. */
  readonly width?: number | undefined
  /** What is on the way is not in the oven yet. */
  readonly isPlanned?: boolean | undefined
  /** For those who listen instead of looking, e.g. "31 for sale, 24 on the way"; without it the rod is decoration. */
  readonly name?: string | undefined
}

/** Half the seen height of a ring, and the pole's free end, in steps from ring to ring. */
const TILT = 0.78
const POLE_END = 0.9

/**
 * Stock as a rod with rings stacked on it, one a half-dozen: solid for sale, hollow kept, dashed on the way, dotted while
 * that is dough still. The foot
 * is the bottom edge of the drawing, so that rods stand on whatever line is drawn under them.
 */
export function Rod({ height, width, name, isPlanned = false, ...stock }: RodProps) {
  const places = rodPlaces(stock)
  const step = height / (stock.maxRings - 1 + 2 * TILT + POLE_END)
  const wide = width ?? Math.round(step * 4)
  const line = Math.min(4, Math.max(1.75, step * 0.125))
  const ringAt = (index: number): SeenRing => ({
    centreX: wide / 2,
    centreY: height - line / 2 - step * (index + TILT),
    radiusX: (wide - line) / 2,
    radiusY: step * TILT,
  })
  const here = places.filter((place) => place.kind !== 'coming')
  const drawn = (place: RodPlace, index: number) => (
    // A place on the rod is its height and nothing else.
    <Place key={index} place={place} ring={ringAt(index)} line={line} above={places[index + 1]} isPlanned={isPlanned} />
  )
  return (
    <Drawing class="rod" viewBox={`0 0 ${wide} ${height}`} width={`${wide}px`} height={`${height}px`} name={name}>
      {here.map(drawn)}
      <Pole x={wide / 2} thick={wide * 0.085} to={here.length === 0 ? height : ringAt(here.length - 1).centreY} />
      {places.slice(here.length).map((place, index) => drawn(place, here.length + index))}
    </Drawing>
  )
}

/** Drawn after the rings that are here: it goes down into the topmost hole, and is seen through what is on the way. */
function Pole({ x, thick, to }: { x: number; thick: number; to: number }) {
  return <rect class="rod-pole" x={x - thick / 2} width={thick} height={to} rx={thick / 2} />
}

interface PlaceProps {
  readonly place: RodPlace
  readonly ring: SeenRing
  readonly line: number
  readonly above: RodPlace | undefined
  readonly isPlanned: boolean
}

function Place({ place, ring, line, above, isPlanned }: PlaceProps) {
  if (place.hidden) return <Break kind={place.kind} ring={ring} line={line} />
  if (place.kind === 'coming') {
    const under = above !== undefined && !above.hidden && above.pieces === PIECES_PER_RING
    const d = ghostRing(ring, place.pieces, under)
    const dashes = isPlanned ? `0 ${line * 2.2}` : `${line * 2.4} ${line * 1.8}`
    const name = isPlanned ? 'rod-coming rod-planned' : 'rod-coming'
    return <path class={name} d={d} stroke-width={line} stroke-dasharray={dashes} />
  }
  const covered = above !== undefined && !above.hidden && above.kind !== 'coming' && above.pieces === PIECES_PER_RING
  const d = place.pieces < PIECES_PER_RING ? partRing(ring, place.pieces) : wholeRing(ring, !covered)
  return <path class={`rod-${place.kind}`} d={d} fill-rule="evenodd" stroke-width={line} />
}

const TEETH = 6

/** Two zigzags with nothing between them: here the drawing leaves rings out. */
function Break({ kind, ring, line }: { kind: RodPlace['kind']; ring: SeenRing; line: number }) {
  const half = ring.radiusY * 0.34
  const upper = zigzag(ring, ring.centreY - half)
  const lower = zigzag(ring, ring.centreY + half)
  return (
    <g class={`rod-break rod-${kind}`} stroke-width={line}>
      <path class="rod-gap" d={`M${[...upper, ...lower.reverse()].join('L')}Z`} />
      <path d={`M${upper.join('L')}`} />
      <path d={`M${lower.join('L')}`} />
    </g>
  )
}

function zigzag(ring: SeenRing, middleY: number): string[] {
  const rise = ring.radiusY * 0.2
  return Array.from({ length: TEETH + 1 }, (_, tooth) => {
    const x = ring.centreX + ring.radiusX * ((2 * tooth) / TEETH - 1)
    return `${x.toFixed(1)} ${(middleY + (tooth % 2 === 0 ? rise : -rise)).toFixed(1)}`
  })
}
