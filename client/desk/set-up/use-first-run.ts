import { useEffect } from 'preact/hooks'
import type { State } from '../../../shared-core/day/state.ts'
import { isNewShop } from './new-shop.ts'
import { hashOf } from './route.ts'

/** The desk of a shop that nobody has set up opens on the steps, unless its address says where to go. */
export function useFirstRun(state: State): void {
  const isNew = isNewShop(state)
  useEffect(() => {
    if (isNew && window.location.hash === '') window.location.replace(hashOf({ kind: 'guide', step: 'shop' }))
  }, [isNew])
}
