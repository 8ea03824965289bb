import { Drawing } from '../parts/drawing.tsx'

export interface TrayStripProps {
  readonly all: number
  readonly ready: number
  readonly roomPx: number
  /** Height of the strip in CSS pixels. */
  readonly heightPx: number
}

const GAP = 0.35
/** Width to height of a tray as it is drawn, from the front. */
const ASPECT = 1.7

/** Trays one by one, full when ready and hollow before; as many as fit, the count beside them tells the rest. */
export function TrayStrip({ all, ready, roomPx, heightPx }: TrayStripProps) {
  const step = heightPx * (ASPECT + GAP)
  const shown = Math.min(all, Math.floor((roomPx + heightPx * GAP) / step))
  const width = Math.max(1, Math.round(shown * step))
  const line = Math.max(2, heightPx * 0.1)
  return (
    <Drawing class="wall-trays" viewBox={`0 0 ${width} ${heightPx}`} width={`${width}px`} height={`${heightPx}px`}>
      {Array.from({ length: shown }, (_, index) => (
        <rect
          // A tray is its place in the strip: nobody can tell them apart.
          key={index}
          class={index < ready ? 'wall-tray wall-tray-ready' : 'wall-tray'}
          x={index * step + line / 2}
          y={line / 2}
          width={heightPx * ASPECT - line}
          height={heightPx - line}
          rx={heightPx * 0.22}
          stroke-width={line}
        />
      ))}
    </Drawing>
  )
}
