import type { Decide } from '../../shared-core/day/decide-with.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { keepComfort } from './comfort.ts'
import { nameInLink, withoutName } from './name-in-link.ts'
import { randomId } from './random-id.ts'
import { browserText } from './saved-text.ts'
import type { ShopStore } from './shop-store.ts'
import { createShopStore } from './shop-store.ts'
import { socketLink } from './socket-link.ts'

/** Written into the page when it is built; the server names the build that it serves. */
declare const __BUILD_ID__: string

/** A server that is gone, though its link was not noticed to be, would leave an error page that nobody reloads. */
function reloadWhenServed(): void {
  fetch(window.location.pathname, { method: 'HEAD', cache: 'no-store' }).then(
    ({ ok }) => ok && window.location.reload(),
    () => undefined,
  )
}

/** Connects a page to its shop: the one place where the live connection meets the browser. */
export function startScreen(role: Role, decide: Decide): ShopStore {
  const store = createShopStore({
    role,
    decide,
    saved: browserText(),
    openLink: (events) => socketLink(events),
    clock: { monotonicMs: () => performance.now(), wallMs: () => Date.now() },
    makeId: () => randomId((bytes) => crypto.getRandomValues(bytes)),
    buildId: __BUILD_ID__,
    reload: reloadWhenServed,
    moveTo: (another) => window.location.replace(`/${another}`),
    timers: {
      set: (run, afterMs) => window.setTimeout(run, afterMs),
      clear: (timer) => window.clearTimeout(timer),
    },
    isHidden: () => document.hidden,
  })
  const name = nameInLink(window.location.search)
  if (name !== null) {
    store.changeSettings({ name })
    window.history.replaceState(null, '', withoutName(window.location))
  }
  const { dataset } = document.documentElement
  keepComfort(store, {
    isSystemDark: () => window.matchMedia('(prefers-color-scheme: dark)').matches,
    show: ({ theme, print }) => {
      if (dataset.theme !== theme) dataset.theme = theme
      if (dataset.print !== print) dataset.print = print
    },
  })
  document.addEventListener('visibilitychange', () => store.visibilityChanged())
  for (const touch of ['pointerdown', 'keydown'] as const) {
    window.addEventListener(touch, () => store.touched(), { capture: true, passive: true })
  }
  return store
}
