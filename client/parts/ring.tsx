import { useId } from 'preact/hooks'
import { Drawing } from './drawing.tsx'
import { fitRingLabel, RING, ringArc } from './ring-shape.ts'

/**
 * `running`: what is left, in the running hue. `act`: do it now; the whole ring, or what is left of it when `fraction`
 * is above 0. `late`: the whole ring, striped. `idle`: an outline, nothing counts here.
 */
export type RingState = 'running' | 'act' | 'late' | 'idle'

export interface RingProps {
  /** What is left, 1 to 0. */
  readonly fraction: number
  readonly state: RingState
  /** Set into the hole as large as it fits: "22 s", "12 min", "late 3 min". */
  readonly label?: string | undefined
  /** Width and height: a number of CSS pixels or a CSS length. */
  readonly size: number | string
  /** For those who listen instead of looking; without it and without a label the ring is decoration. */
  readonly name?: string | undefined
}

/** A countdown: a ring as thick as a bagel that empties clockwise. It changes only when `fraction` does. */
export function Ring({ fraction, state, label, size, name }: RingProps) {
  const box = typeof size === 'number' ? `${size}px` : size
  return (
    <Drawing class={`ring ring-${state}`} viewBox="0 0 100 100" width={box} height={box} name={name ?? label}>
      {state === 'idle' ? <IdleRing /> : state === 'late' ? <LateRing /> : <Left fraction={fraction} state={state} />}
      {label !== undefined && <Label text={label} />}
    </Drawing>
  )
}

const circle = { cx: RING.centre, cy: RING.centre, r: RING.middleRadius, 'stroke-width': RING.thickness, fill: 'none' }

function Left({ fraction, state }: { fraction: number; state: 'running' | 'act' }) {
  const arc = state === 'act' && !(fraction > 0) ? 'full' : ringArc(fraction)
  return (
    <>
      <circle class="ring-track" {...circle} />
      <Edges class="ring-track-edge" />
      {arc === 'full' && <circle class="ring-left" {...circle} />}
      {arc !== 'full' && arc !== 'empty' && (
        <path class="ring-left" d={arc} stroke-width={RING.thickness} fill="none" />
      )}
    </>
  )
}

function LateRing() {
  const pattern = useId()
  return (
    <>
      <pattern
        id={pattern}
        width="13"
        height="13"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45 50 50) translate(3 0)"
      >
        <rect class="ring-stripe-gap" width="13" height="13" />
        <rect class="ring-stripe" width="7.5" height="13" />
      </pattern>
      <circle {...circle} stroke={`url(#${pattern})`} />
      <Edges class="ring-late-edge" />
    </>
  )
}

function IdleRing() {
  return <Edges class="ring-idle-edge" />
}

const EDGE = 2

function Edges({ class: kind }: { class: string }) {
  const line = { cx: RING.centre, cy: RING.centre, 'stroke-width': EDGE, fill: 'none' }
  return (
    <>
      <circle class={kind} {...line} r={RING.middleRadius + (RING.thickness - EDGE) / 2} />
      <circle class={kind} {...line} r={RING.middleRadius - (RING.thickness - EDGE) / 2} />
    </>
  )
}

function Label({ text }: { text: string }) {
  const { lines, fontSize, baselines } = fitRingLabel(text)
  return (
    <text class="ring-label" font-size={fontSize.toFixed(2)} text-anchor="middle">
      {lines.map((line, index) => (
        <tspan key={baselines[index]} x={RING.centre} y={baselines[index]?.toFixed(2)}>
          {line}
        </tspan>
      ))}
    </text>
  )
}
