import { useEffect, useState } from 'preact/hooks'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { SavedText } from '../live/saved-text.ts'
import { CHOOSER_WORDS } from '../words/chooser.ts'
import { wordsFor } from '../words/words.ts'
import { chooseLanguage, firstLanguage } from './chosen-language.ts'
import { Middle } from './middle.tsx'

/** The first page of a new device: how it joins, and which screen it is. */
export function Chooser({ saved, preferred }: { readonly saved: SavedText; readonly preferred: readonly string[] }) {
  const [language, setLanguage] = useState<Language>(() => firstLanguage(saved, preferred))
  const demo = useDemo()
  const say = CHOOSER_WORDS[language]
  const choose = (chosen: Language) => {
    chooseLanguage(saved, chosen)
    setLanguage(chosen)
  }
  return (
    <div class="chooser" data-theme="light" lang={language}>
      <header>
        <p class="chooser-name">
          Boilboard
          {demo !== null && <span class="chooser-demo">{wordsFor(language).live.demo(demo)}</span>}
        </p>
        <div class="chooser-languages" role="group" aria-label={say.language}>
          <LanguageKey language="en" text="English" chosen={language} onChoose={choose} />
          <LanguageKey language="es" text="Español" chosen={language} onChoose={choose} />
        </div>
      </header>
      <main>
        <Middle saved={saved} language={language} />
      </main>
    </div>
  )
}

interface LanguageKeyProps {
  readonly language: Language
  readonly text: string
  readonly chosen: Language
  readonly onChoose: (language: Language) => void
}

function LanguageKey({ language, text, chosen, onChoose }: LanguageKeyProps) {
  return (
    <button type="button" lang={language} aria-pressed={language === chosen} onClick={() => onChoose(language)}>
      {text}
    </button>
  )
}

/** Whether the shop here is a demo; null while that is not known, and in a real one. */
function useDemo(): { readonly handsOff: boolean } | null {
  const [demo, setDemo] = useState<{ readonly handsOff: boolean } | null>(null)
  useEffect(() => {
    fetch('/api/health')
      .then((response) => response.json())
      .then((health: unknown) => setDemo(demoIn(health)))
      // The page works without it, and the screens say so themselves.
      .catch(() => setDemo(null))
  }, [])
  return demo
}

function demoIn(health: unknown): { readonly handsOff: boolean } | null {
  if (typeof health !== 'object' || health === null || !('demo' in health)) return null
  // Whether there is a crew in it is told by its screens; here it only matters that the shop is invented.
  return health.demo === true ? { handsOff: true } : null
}
