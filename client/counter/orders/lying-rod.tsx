import { Drawing } from '../../parts/drawing.tsx'

/** What is strung on it, from the left. `kept`: solid, `there`: hollow, `missing`: dashed. */
export interface Strung {
  readonly kept: number
  readonly there: number
  readonly missing: number
}

export interface LyingRodProps extends Strung {
  readonly widthPx: number
  readonly heightPx: number
  /** A ring stands for so many pieces: a half-dozen, or one thing made to order. */
  readonly perRing: number
}

/** Seen a little from the side: half as wide as high. Few have air between them, of many each is before the next. */
const RING_WIDE = 0.5
const RING_STEP = { least: 0.36, most: 0.64 } as const

/** Pieces as rings strung on a rod that lies: kept ones at its left end, what is missing at its right one. */
export function LyingRod({ widthPx, heightPx, perRing, ...pieces }: LyingRodProps) {
  const roomPx = widthPx - heightPx * RING_WIDE
  const rings = stringOf(pieces, perRing, Math.max(1, Math.floor(roomPx / (heightPx * RING_STEP.least))))
  const stepPx = Math.min(heightPx * RING_STEP.most, roomPx / Math.max(1, rings.length - 1))
  const line = Math.max(1.5, heightPx / 18)
  const radiusX = (heightPx * RING_WIDE) / 2
  return (
    <Drawing
      class="counter-lying"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={`${widthPx}px`}
      height={`${heightPx}px`}
    >
      <rect class="rod-pole" x={0} y={heightPx * 0.44} width={widthPx} height={heightPx * 0.12} rx={heightPx * 0.06} />
      {rings.map((kind, index) => (
        <ellipse
          // A place on the rod is how far along it is and nothing else.
          key={index}
          class={`counter-strung counter-strung-${kind}`}
          cx={line + radiusX + index * stepPx}
          cy={heightPx / 2}
          rx={radiusX}
          ry={heightPx / 2 - line}
          stroke-width={line}
          stroke-dasharray={kind === 'missing' ? `${line * 2} ${line * 1.6}` : undefined}
        />
      ))}
    </Drawing>
  )
}

export type RingKind = keyof Strung

/**
 * Rings for pieces, kept ones first; of each kind at least one where there is any. More than there is room for are drawn
 * in proportion, as the number beside them tells the truth.
 */
export function stringOf({ kept, there, missing }: Strung, perRing: number, most: number): readonly RingKind[] {
  const whole = (pieces: number) => Math.ceil(pieces / perRing)
  const counts: [RingKind, number][] = [
    ['kept', whole(kept)],
    ['there', whole(there)],
    ['missing', whole(missing)],
  ]
  const all = counts.reduce((sum, [, count]) => sum + count, 0)
  const share = all <= most ? 1 : most / all
  const shown = counts.map(([kind, count]) => [kind, count === 0 ? 0 : Math.max(1, Math.floor(count * share))] as const)
  return shown.flatMap(([kind, count]) => Array.from({ length: count }, () => kind))
}
