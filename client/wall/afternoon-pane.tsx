import type { AfternoonView } from './afternoon-view.ts'
import { paintedByView } from './same-view.tsx'

export interface AfternoonPaneProps {
  readonly view: AfternoonView
}

/** What is left for the afternoon. */
export const AfternoonPane = paintedByView(({ view }: AfternoonPaneProps) => (
  <div class="wall-afternoon">
    {view.title.map((text) => (
      <div key={text} class="wall-afternoon-title">
        {text}
      </div>
    ))}
    <div class="wall-afternoon-columns">
      {view.columns.map((items, index) => (
        // A column is its place: it has no name of its own.
        <div key={index} style={{ width: `${view.columnPx}px` }}>
          {items.map(({ key, name, count }) => (
            <div key={key} class="wall-title wall-afternoon-item" style={{ height: `${view.itemPx}px` }}>
              <span>{name}</span>
              <span>{count}</span>
            </div>
          ))}
        </div>
      ))}
    </div>
    {view.rest !== '' && <div class="wall-quiet">{view.rest}</div>}
    {view.note.map((text) => (
      <div key={text} class="wall-afternoon-note">
        {text}
      </div>
    ))}
  </div>
))
