import { hashOf } from './route.ts'
import type { SetUpProps } from './set-up-parts.ts'

/** While something is not saved, it says so at the foot of every page. */
export function SaveBar({ changes, misfits, say }: SetUpProps) {
  if (changes.length === 0) return null
  return (
    <aside class="setup-bar" aria-label={say.save.unsaved(changes.length)}>
      <span>
        {say.save.unsaved(changes.length)}
        {misfits.length > 0 && <span class="setup-bar-wrong"> · {say.save.misfits(misfits.length)}</span>}
      </span>
      <a class="desk-button desk-strong" href={hashOf({ kind: 'part', part: 'save' })}>
        {say.save.look}
      </a>
    </aside>
  )
}
