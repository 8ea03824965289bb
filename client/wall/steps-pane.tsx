import { Ring } from '../parts/ring.tsx'
import { paintedByView } from './same-view.tsx'
import type { StepRow, StepsView } from './steps-view.ts'
import { MARK } from './steps-view.ts'

export interface StepsPaneProps {
  readonly view: StepsView
}

const RINGS = { plain: 'idle', act: 'act', late: 'late' } as const
/** The mark's own size, in sizes of acts. */
const RING = 0.62

/** The opening or the changeover, line by line. */
export const StepsPane = paintedByView(({ view }: StepsPaneProps) => {
  const { title, titlePx, progress, rows, rest, done } = view
  return (
    <div class="wall-steps">
      <div class="wall-steps-title" style={{ fontSize: `${titlePx}px` }}>
        <strong>{title}</strong>
        {progress !== '' && <span class="wall-steps-progress">{progress}</span>}
      </div>
      {rows.map((row) => (
        <Row key={row.key} row={row} view={view} />
      ))}
      {rest !== '' && <div class="wall-quiet">{rest}</div>}
      {done !== '' && <div class="wall-quiet">{done}</div>}
    </div>
  )
})

function Row({ row, view }: { readonly row: StepRow; readonly view: StepsView }) {
  const { tone, name, who, when } = row
  const block = tone === 'plain' ? undefined : tone
  return (
    <div class={`wall-step wall-step-${tone}`} data-block={block} style={{ height: `${view.rowPx}px` }}>
      <span class="wall-step-mark" style={{ width: `calc(${MARK.width} * var(--size-act))` }}>
        <Ring fraction={0} state={RINGS[tone]} size={`calc(${RING} * var(--size-act))`} />
      </span>
      <strong style={{ fontSize: `${view.namePx}px` }}>{name}</strong>
      {who !== '' && <span class="wall-step-who">{who}</span>}
      <span class="wall-step-when">{when}</span>
    </div>
  )
}
