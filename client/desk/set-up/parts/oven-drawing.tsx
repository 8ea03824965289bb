import type { OvenKind } from '../../../../shared-core/shop/shop.ts'
import { Drawing } from '../../../parts/drawing.tsx'

/** A kind of oven from its door: what is drawn is what is loaded as one. */
export function OvenDrawing({ kind }: { readonly kind: OvenKind }) {
  return (
    <Drawing class="setup-oven" viewBox="0 0 120 84" width="120px" height="84px">
      {kind === 'shelves' && <Decks />}
      {kind === 'rotating' && <Wheel />}
      {kind === 'hearth' && <Vault />}
    </Drawing>
  )
}

const RINGS = [28, 44, 60, 76, 92]

function Decks() {
  return (
    <>
      {[6, 32, 58].map((top) => (
        <g key={top}>
          <rect class="setup-oven-wall" x="10" y={top} width="100" height="20" rx="2" />
          <Rings y={top + 13} />
        </g>
      ))}
    </>
  )
}

function Wheel() {
  const shelves = [
    [60, 16],
    [92, 42],
    [60, 68],
    [28, 42],
  ] as const
  return (
    <>
      <circle class="setup-oven-wall" cx="60" cy="42" r="38" />
      <circle class="setup-oven-spoke" cx="60" cy="42" r="25" stroke-dasharray="5 5" />
      {shelves.map(([x, y]) => (
        <g key={`${x} ${y}`}>
          <line class="setup-oven-shelf" x1={x - 14} x2={x + 14} y1={y + 5} y2={y + 5} />
          <circle class="setup-oven-ring" cx={x - 7} cy={y} r="4" />
          <circle class="setup-oven-ring" cx={x + 7} cy={y} r="4" />
        </g>
      ))}
    </>
  )
}

function Vault() {
  return (
    <>
      <path class="setup-oven-wall" d="M8 74 V46 A52 40 0 0 1 112 46 V74 Z" />
      <line class="setup-oven-shelf" x1="8" x2="112" y1="74" y2="74" />
      <Rings y={66} />
    </>
  )
}

function Rings({ y }: { readonly y: number }) {
  return (
    <>
      {RINGS.map((x) => (
        <circle key={x} class="setup-oven-ring" cx={x} cy={y} r="4" />
      ))}
    </>
  )
}
