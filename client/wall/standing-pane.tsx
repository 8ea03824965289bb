import { paintedByView } from './same-view.tsx'
import type { StandingItem, StandingView } from './standing-view.ts'
import { TrayStrip } from './tray-strip.tsx'

export interface StandingPaneProps {
  readonly view: StandingView
}

/** What stands and waits, in the order of the line, while the line is quiet. */
export const StandingPane = paintedByView(({ view }: StandingPaneProps) => (
  <div class="wall-standing">
    {view.columns.map((blocks) => (
      <div key={blocks[0]?.stage} style={{ width: `${view.columnPx}px` }}>
        {blocks.map(({ stage, title, items, rest }) => (
          <section key={stage}>
            <h2 class="wall-heading">{title}</h2>
            {items.map((item) => (
              <Item key={item.key} item={item} view={view} />
            ))}
            {rest !== '' && <div class="wall-quiet">{rest}</div>}
          </section>
        ))}
      </div>
    ))}
  </div>
))

function Item({ item, view }: { readonly item: StandingItem; readonly view: StandingView }) {
  const { name, count, detail, isTrouble, trays } = item
  return (
    <div class="wall-item" style={{ height: `${view.itemPx}px` }}>
      <strong style={{ fontSize: `${view.namePx}px` }}>
        {name} {count}
      </strong>
      {trays !== null && <TrayStrip {...trays} heightPx={Math.round(view.namePx * 0.42)} />}
      <span class={isTrouble ? 'wall-item-detail wall-trouble' : 'wall-item-detail wall-quiet'}>{detail}</span>
    </div>
  )
}
