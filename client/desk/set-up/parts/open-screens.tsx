import '../../screens/screens.css'
import { useMemo } from 'preact/hooks'
import type { Standing } from '../../../../shared-core/live/devices.ts'
import { deskDoorWords } from '../../../words/desk-door.ts'
import { openWords } from '../../../words/desk-open.ts'
import { addressOf } from '../../place.ts'
import { OpenPanel } from '../../screens/open-panel.tsx'
import { useGot } from '../../use-got.ts'
import type { SetUpProps } from '../set-up-parts.ts'

const PAGES = ['bench', 'wall', 'counter'] as const

/**
 * The address of each screen, as other devices reach it, with a code for their cameras, or where the desk lets them in;
 * and a way to open it right here.
 */
export function OpenScreens({ words, say }: Pick<SetUpProps, 'words' | 'say'>) {
  const open = useMemo(() => openWords(words), [words])
  const standing = useGot<Standing>('/api/v1/me')
  const isClosed = standing.kind === 'got' && standing.value.kind !== 'open'
  return (
    <>
      {isClosed ? (
        <p>
          {deskDoorWords(words).letIn.there} <a href={addressOf('screens')}>{words.desk.places.screens}</a>
        </p>
      ) : (
        <OpenPanel words={words} say={open} />
      )}
      <p class="setup-hint">{say.guide.openHere}</p>
      <div class="setup-acts">
        {PAGES.map((page) => (
          <a key={page} class="desk-button" href={`/${page}`} target="_blank" rel="noreferrer">
            {words.desk.screens.role[page]}
          </a>
        ))}
      </div>
    </>
  )
}
