import '../../screens/screens.css'
import { useMemo } from 'preact/hooks'
import { openWords } from '../../../words/desk-open.ts'
import { OpenPanel } from '../../screens/open-panel.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

const PAGES = ['bench', 'wall', 'counter'] as const

/** The address of each screen, as other devices reach it, with a code for their cameras; and a way to open it right here. */
export function OpenScreens({ words, say }: Pick<SetUpProps, 'words' | 'say'>) {
  const open = useMemo(() => openWords(words), [words])
  return (
    <>
      <OpenPanel words={words} say={open} />
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
