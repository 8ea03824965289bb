import { paintedByView } from './same-view.tsx'
import type { StandingItem, StandingView } from './standing-view.ts'
import { TRAY } from './standing-view.ts'
import { TrayStrip } from './tray-strip.tsx'

export interface StandingPaneProps {
  readonly view: StandingView
  readonly minPx: number
}

/** What stands and waits, side by side, while the line is quiet. */
export const StandingPane = paintedByView(({ view, minPx }: StandingPaneProps) => (
  <div class="wall-standing">
    {view.columns.map(({ stage, title, items, rest }) => (
      <section key={stage} style={{ width: `${view.columnPx}px` }}>
        <h2 class="wall-heading">{title}</h2>
        {items.map((item) => (
          <Item key={item.key} item={item} view={view} minPx={minPx} />
        ))}
        {rest !== '' && <div class="wall-quiet">{rest}</div>}
      </section>
    ))}
  </div>
))

interface ItemProps extends StandingPaneProps {
  readonly item: StandingItem
}

function Item({ item: { name, count, detail, isTrouble, trays }, view, minPx }: ItemProps) {
  return (
    <div class="wall-item">
      <div style={{ fontSize: `${view.namePx}px` }}>
        <strong>
          {name} {count}
        </strong>
      </div>
      <div class={isTrouble ? 'wall-trouble' : 'wall-quiet'} style={{ fontSize: `${view.detailPx}px` }}>
        {detail}
      </div>
      {trays !== null && <TrayStrip {...trays} roomPx={view.columnPx} heightPx={Math.round(minPx * TRAY)} />}
    </div>
  )
}
