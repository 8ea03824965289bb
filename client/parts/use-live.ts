import { useLayoutEffect, useReducer } from 'preact/hooks'
import type { LiveState, ShopStore } from '../live/shop-store.ts'

/**
 * What the store holds; paints again at each change. Why not the hook of the store's library: it brings React's manners
 * with it, 4 kB on every screen, under which `onChange` of a text field means each letter.
 */
export function useLive(store: ShopStore): LiveState {
  const [, paintAgain] = useReducer<number, void>((times) => times + 1, 0)
  const live = store.getState()
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was painted first is compared once, when listening begins.
  useLayoutEffect(() => {
    const stop = store.subscribe(() => paintAgain())
    if (store.getState() !== live) paintAgain()
    return stop
  }, [store])
  return live
}
