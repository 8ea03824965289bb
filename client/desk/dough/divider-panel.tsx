import { Panel } from '../panel.tsx'
import type { RoomParts } from './room.ts'

/** Pieces weighed at the divider against what they should weigh. */
export function DividerPanel({ say }: RoomParts) {
  return (
    <Panel part="divider" title={say.learnt.divider} isWide>
      <p>{say.learnt.noDivider}</p>
    </Panel>
  )
}
