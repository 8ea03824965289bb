import { Drawing } from './drawing.tsx'
import type { RingState } from './ring.tsx'
import { Ring } from './ring.tsx'
import { fitRingLabel } from './ring-shape.ts'
import { textWidthPx } from './text-width.ts'

export interface OrderRingProps {
  readonly fraction: number
  readonly state: RingState
  /** The order's mark, in the hole; "" where it stands beside the ring. */
  readonly mark: string
  /** CSS pixels. */
  readonly size: number
  /** What the guest must not get: a shape of its own, inverted, whatever the ring says. */
  readonly isAllergy: boolean
  /** What is to be done meanwhile, as the part of its time that is left then. */
  readonly turns?: readonly RingTurn[] | undefined
}

export interface RingTurn {
  /** 1 at the beginning, 0 at the end. */
  readonly fraction: number
  readonly isDone: boolean
}

/** A ring inside the octagon is smaller by so much, so that its corners stand out. */
const IN_OCTAGON = 0.8

/** A thing made to order: its countdown as a ring, the order's mark in it, notches where it is turned. */
export function OrderRing({ fraction, state, mark, size, isAllergy, turns = [] }: OrderRingProps) {
  const ringPx = Math.round(isAllergy ? size * IN_OCTAGON : size)
  return (
    <span class={isAllergy ? 'order-ring order-ring-allergy' : 'order-ring'} style={box(size)}>
      {isAllergy && (
        <Drawing class="order-ring-octagon" viewBox="0 0 100 100" width={`${size}px`} height={`${size}px`}>
          <path d={OCTAGON} />
        </Drawing>
      )}
      <span class="order-ring-inner" data-block={isAllergy ? 'act' : undefined} style={box(ringPx)}>
        <Ring fraction={fraction} state={state} label={mark === '' ? undefined : mark} size={ringPx} />
        {turns.length > 0 && (
          <Drawing class="order-ring-turns" viewBox="0 0 100 100" width={`${ringPx}px`} height={`${ringPx}px`}>
            {turns.map((turn) => (
              <path
                key={turn.fraction}
                class={turn.isDone ? 'order-ring-turned' : undefined}
                d={notch(turn.fraction)}
              />
            ))}
          </Drawing>
        )}
      </span>
    </span>
  )
}

/**
 * Room for a mark beside its ring, in CSS pixels: 0 where it can be read in the hole.
 * @param leastPx font size that can be read here
 */
export function besideRingPx(mark: string, size: number, isAllergy: boolean, leastPx: number): number {
  const ringPx = isAllergy ? size * IN_OCTAGON : size
  if ((fitRingLabel(mark).fontSize * ringPx) / 100 >= leastPx) return 0
  return Math.ceil(textWidthPx(mark, leastPx, 'strong') + BESIDE_EM * leastPx)
}

/** Between a ring and its mark beside it, and after it. */
const BESIDE_EM = 0.5

function box(px: number) {
  return { width: `${px}px`, height: `${px}px` }
}

const OCTAGON = 'M30 1H70L99 30V70L70 99H30L1 70V30Z'

/** Across the ring's outer edge, where its countdown is when the turn is due: it empties clockwise. */
function notch(fraction: number): string {
  const angle = (1 - fraction) * 2 * Math.PI
  const at = (radius: number) =>
    `${(50 + radius * Math.sin(angle)).toFixed(2)} ${(50 - radius * Math.cos(angle)).toFixed(2)}`
  return `M${at(26)}L${at(50)}`
}
