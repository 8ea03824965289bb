import { AccountPanel } from '../account-panel.tsx'
import type { DeskParts } from '../desk-screen.tsx'
import { DonePanel } from '../done-panel.tsx'
import { DryPanel } from '../dry-panel.tsx'
import { Panel } from '../panel.tsx'
import { AfternoonPanel } from './afternoon-panel.tsx'
import { ChangeoverPanel } from './changeover-panel.tsx'
import { DayPanel } from './day-panel.tsx'
import { KettlePanel } from './kettle-panel.tsx'
import { NotesPanel } from './notes-panel.tsx'
import { OvenPanel } from './oven-panel.tsx'
import { RodsPanel } from './rods-panel.tsx'
import { StepsPanels } from './steps-panel.tsx'

/** The day that runs: what is to come, what needs somebody, what is left, what was done. */
export function TodayPlace(parts: DeskParts) {
  const { state, words } = parts
  const { titles } = words.desk
  return (
    <div class="desk-parts">
      <Panel part="day" title={titles.day} isWide>
        <DayPanel {...parts} />
      </Panel>
      <div class="desk-stack">
        <StepsPanels {...parts} />
        <ChangeoverPanel {...parts} />
        <OvenPanel {...parts} />
      </div>
      <div class="desk-stack">
        <NotesPanel {...parts} />
        <KettlePanel {...parts} />
        {state.unsure.size > 0 && (
          <Panel part="dry" title={titles.dry}>
            <DryPanel {...parts} />
          </Panel>
        )}
      </div>
      <RodsPanel {...parts} />
      <AfternoonPanel {...parts} />
      <Panel part="account" title={words.desk.account.title} isWide>
        <AccountPanel {...parts} />
      </Panel>
      <Panel part="done" title={titles.done} isWide>
        <DonePanel {...parts} />
      </Panel>
    </div>
  )
}
