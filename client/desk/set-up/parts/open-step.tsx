import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { OpenScreens } from './open-screens.tsx'
import { Wrong } from './wrong.tsx'

/** The last step: what is not saved yet is saved here, then the screens are opened. */
export function OpenStep(props: SetUpProps) {
  const { changes, misfits, say, saving } = props
  return (
    <>
      {changes.length > 0 ? (
        <>
          <Wrong misfits={misfits} say={say} />
          <p>{say.save.unsaved(changes.length)}</p>
          <button
            type="button"
            class="desk-strong"
            disabled={misfits.length > 0 || saving.status === 'waiting'}
            onClick={() => saving.save(null)}
          >
            {say.save.save}
          </button>
        </>
      ) : (
        <p class="setup-done" role="status">
          ✓ {say.guide.opened}
        </p>
      )}
      <OpenScreens {...props} />
      <p>{say.guide.nextUp}</p>
      <ol class="setup-first">
        {say.guide.first.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      <div class="setup-foot">
        <a class="desk-button" href={hashOf({ kind: 'overview' })}>
          {say.guide.leaveGuide}
        </a>
        <a class="desk-button desk-strong" href="#today">
          {say.back}
        </a>
      </div>
    </>
  )
}
