import { Panel } from '../panel.tsx'
import type { RoomParts } from './room.ts'

/** From the mixer on every gram is accounted for. */
export function DoughAccountPanel({ say }: RoomParts) {
  return (
    <Panel part="dough-account" title={say.account.title} isWide>
      <p>{say.account.none}</p>
    </Panel>
  )
}
