import { Drawing } from '../parts/drawing.tsx'
import { Ring } from '../parts/ring.tsx'

/** Pictures of the screens, drawn from what stands on them. */
export function WallMark({ size }: { readonly size: number }) {
  return <Ring fraction={0.7} state="running" size={size} />
}

/** Shelves, each with its key. */
export function BenchMark({ size }: { readonly size: number }) {
  return (
    <Drawing class="chooser-bench" viewBox="0 0 96 96" width={`${size}px`} height={`${size}px`}>
      {[6, 37, 68].map((y) => (
        <g key={y}>
          <rect x="2" y={y} width="92" height="24" rx="12" />
          <circle cx="15" cy={y + 12} r="6" />
        </g>
      ))}
    </Drawing>
  )
}

/** The day's ruler over the lines of a list. */
export function DeskMark({ size }: { readonly size: number }) {
  return (
    <Drawing class="chooser-desk" viewBox="0 0 96 96" width={`${size}px`} height={`${size}px`}>
      <rect x="2" y="12" width="92" height="14" rx="5" />
      <rect class="chooser-past" x="2" y="12" width="50" height="14" rx="5" />
      <rect class="chooser-now" x="50" y="6" width="5" height="26" rx="2" />
      {[46, 62, 78].map((y, index) => (
        <rect key={y} class="chooser-line" x="2" y={y} width={[92, 70, 82][index]} height="6" rx="3" />
      ))}
    </Drawing>
  )
}
