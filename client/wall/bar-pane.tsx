import { Ring } from '../parts/ring.tsx'
import type { BarView } from './bar-view.ts'
import { paintedByView } from './same-view.tsx'

export interface BarPaneProps {
  readonly view: Omit<BarView, 'onShow'>
}

/** The next act in one bar across the room, and what follows. */
export const BarPane = paintedByView(({ view }: BarPaneProps) => {
  const { state, lines, fontPx, after } = view
  const block = state === 'act' || state === 'late' ? state : undefined
  return (
    <div class={`wall-bar wall-bar-${state}`} data-block={block} role="status">
      <div class="wall-bar-mark">
        <Ring fraction={state === 'done' ? 1 : 0} state={RINGS[state]} size="var(--size-headline)" />
      </div>
      <div class="wall-bar-next" style={{ fontSize: `${fontPx}px` }}>
        {lines.map(({ strong, rest }) => (
          <div key={`${strong}|${rest === '' ? 'act' : 'time'}`}>
            {strong !== '' && <strong>{strong}</strong>}
            {rest !== '' && (strong === '' ? rest : ` ${rest}`)}
          </div>
        ))}
      </div>
      <div class="wall-bar-then">{after}</div>
    </div>
  )
})

const RINGS = { none: 'idle', act: 'act', late: 'late', done: 'running' } as const
