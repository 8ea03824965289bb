import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { WindowsFields } from './windows-fields.tsx'
import { Wrong } from './wrong.tsx'

/** The shop's own times. */
export function WindowsPart(props: SetUpProps) {
  const { draft, say, misfits } = props
  return (
    <>
      <p class="setup-caution">{say.cautions.timers}</p>
      <WindowsFields parts={props} windows={draft.windows} otherwise={null} onChange={changeTo(props, 'windows')} />
      <Wrong misfits={misfits.filter(({ entity }) => entity === 'windows')} say={say} />
    </>
  )
}
