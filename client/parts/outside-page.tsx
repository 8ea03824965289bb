import './outside-page.css'
import { render } from 'preact'
import { useEffect } from 'preact/hooks'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import { DOOR_WORDS } from '../words/door.ts'
import { Ring } from './ring.tsx'
import { useLive } from './use-live.ts'

/** Lays the page over the screen for as long as it is not let in; it goes by itself. */
export function showOutside(store: ShopStore): void {
  const place = document.createElement('div')
  place.className = 'outside-place'
  document.body.append(place)
  render(<OutsidePage store={store} />, place)
}

function OutsidePage({ store }: { readonly store: ShopStore }) {
  const live = useLive(store)
  const { connection, pending } = live
  const isOutside = connection.phase === 'outside'
  useEffect(() => {
    // What lies under it is neither seen nor reached with a keyboard.
    document.body.classList.toggle('is-outside', isOutside)
  }, [isOutside])
  if (!isOutside) return null
  const language = languageHere(live)
  const say = DOOR_WORDS[language].outside
  return (
    <main class="outside" lang={language}>
      <Ring fraction={0} state="idle" size="4em" />
      <div role="alert">
        <h1>{say.title[connection.why]}</h1>
        <p>{say.how}</p>
        {pending.length > 0 && <p class="outside-unsent">{say.unsent(pending.length)}</p>}
      </div>
      <a href="/">{say.join}</a>
      <p class="outside-quiet">{say.again}</p>
    </main>
  )
}

/** Before a first welcome the shop's language is not known: then the browser's. */
function languageHere({ settings, shown }: LiveState): 'en' | 'es' {
  return settings.language ?? shown?.shop?.profile.language ?? (navigator.language.startsWith('es') ? 'es' : 'en')
}
