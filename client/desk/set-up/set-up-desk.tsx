import { useMemo, useRef } from 'preact/hooks'
import type { State } from '../../../shared-core/day/state.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import { deskWords } from '../../words/desk.ts'
import { setUpWords } from '../../words/set-up.ts'
import { languageOf, wordsFor } from '../../words/words.ts'
import { changesOf, draftOf } from './draft.ts'
import { FormulaCardPage } from './formula/formula-card.tsx'
import { Guide } from './guide.tsx'
import { isNewShop } from './new-shop.ts'
import { Overview } from './overview.tsx'
import { PartPage } from './part-page.tsx'
import { hashOf, placeOf, useHash } from './route.ts'
import { SaveBar } from './save-bar.tsx'
import './set-up.css'
import './set-up-forms.css'
import './set-up-lists.css'
import type { SetUpProps } from './set-up-parts.ts'
import { useArrival } from './use-arrival.ts'
import { useDraft } from './use-draft.ts'
import { useSaving } from './use-saving.ts'

export interface SetUpDeskProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  readonly shop: Shop
}

/** The shop's set-up: a page for each part, or step by step. All pages edit one draft, which is saved as one change. */
export function SetUpDesk({ store, live, state, shop }: SetUpDeskProps) {
  const root = useRef<HTMLDivElement>(null)
  const hash = useHash()
  useArrival(root, hash)
  const { edits, change, clear } = useDraft(shop)
  const draft = useMemo(() => draftOf(shop, edits), [shop, edits])
  const changes = useMemo(() => changesOf(shop, edits), [shop, edits])
  const misfits = useMemo(() => shopMisfits(draft), [draft])
  // In the draft's own language: whoever has just chosen Spanish goes on in Spanish.
  const language = languageOf(live.settings.language, draft)
  const words = useMemo(
    () => deskWords(wordsFor(language, draft, (atMs) => store.localTime(atMs))),
    [language, draft, store],
  )
  const say = useMemo(() => setUpWords(words), [words])
  const saving = useSaving({ store, live, state, changes, clear })
  const props = { store, live, state, running: shop, draft, changes, misfits, words, say, change, clear, saving }
  return (
    <div class="setup" lang={language} ref={root}>
      <Page {...props} hash={hash} />
    </div>
  )
}

function Page({ hash, ...props }: SetUpProps & { readonly hash: string }) {
  const place = placeOf(hash) ?? { kind: 'overview' }
  if (place.kind === 'guide') return <Guide {...props} step={place.step} />
  if (place.kind === 'card') return <FormulaCardPage {...props} id={place.formula} />
  return (
    <>
      {place.kind === 'overview' ? <Front {...props} /> : <PartPage {...props} part={place.part} />}
      {!(place.kind === 'part' && place.part === 'save') && <SaveBar {...props} />}
    </>
  )
}

function Front(props: SetUpProps) {
  const { say, state } = props
  const isNew = isNewShop(state)
  return (
    <section class="setup-sheet" tabIndex={-1} aria-label={say.title}>
      <p>{isNew ? say.newShop : say.intro}</p>
      <a class={isNew ? 'desk-button desk-strong' : 'desk-button'} href={hashOf({ kind: 'guide', step: 'shop' })}>
        {say.lead}
      </a>
      <Overview {...props} />
    </section>
  )
}
