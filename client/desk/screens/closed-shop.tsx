import type { DeskDoorWords } from '../../words/desk-door.ts'
import type { OpenWords } from '../../words/desk-open.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { DevicesPanel } from './devices-panel.tsx'
import { LetInPanel } from './let-in-panel.tsx'
import { TokensPanel } from './tokens-panel.tsx'
import { useDoor } from './use-door.ts'

interface ClosedShopProps extends DeskParts {
  readonly say: DeskDoorWords
  readonly open: OpenWords
  /** The device that this very page runs on. */
  readonly ownId: string
}

/** Who is in, and how others come in, where the desk lets devices in one by one. */
export function ClosedShop(props: ClosedShopProps) {
  const { live, say, open } = props
  const linkedScreens = live.screens.filter(({ connected }) => connected).length
  const door = useDoor(live.nowMs, linkedScreens, say)
  const parts = { ...props, door }
  return (
    <>
      <Panel part="screens" title={open.connected}>
        {door.trouble !== '' && (
          <p class="desk-trouble" role="alert">
            {door.trouble}
          </p>
        )}
        <DevicesPanel {...parts} kind="screen" />
      </Panel>
      <Panel part="let-in" title={say.letIn.title}>
        <LetInPanel {...parts} />
      </Panel>
      <Panel part="tokens" title={say.tokens.title}>
        <DevicesPanel {...parts} kind="script" />
        <TokensPanel {...parts} />
      </Panel>
    </>
  )
}
