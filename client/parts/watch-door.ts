import type { Connection, ShopStore } from '../live/shop-store.ts'

/**
 * Puts a page over the screen while it is not let in. The page is fetched only then: a screen that works never needs it,
 * and what the connection says in words stands meanwhile.
 */
export function watchDoor(store: ShopStore): ShopStore {
  let last: Connection | null = null
  let isShown = false
  store.subscribe(({ connection }) => {
    if (connection === last) return
    last = connection
    if (connection.phase !== 'outside' || isShown) return
    isShown = true
    import('./outside-page.tsx').then(
      ({ showOutside }) => showOutside(store),
      // Fetched again when it is turned away the next time.
      () => {
        isShown = false
      },
    )
  })
  return store
}
