import type { DeskParts } from './desk-screen.tsx'
import { LoadsPanel } from './loads-panel.tsx'
import { Panel } from './panel.tsx'
import { TraysPanel } from './trays-panel.tsx'

/** What is to be baked, and the trays that it is baked from. */
export function LoadsPlace(parts: DeskParts) {
  const { titles } = parts.words.desk
  return (
    <>
      <Panel part="load-list" title={titles.loads}>
        <LoadsPanel {...parts} />
      </Panel>
      <Panel part="trays" title={titles.trays}>
        <TraysPanel {...parts} />
      </Panel>
    </>
  )
}
