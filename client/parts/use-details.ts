import { useEffect, useReducer } from 'preact/hooks'
import type { Detailed, DetailsBook } from '../live/details-book.ts'
import type { LiveState } from '../live/shop-store.ts'

/** Asks for the details of all these, and again once there is contact; paints anew when they are there. */
export function useDetails(book: DetailsBook, all: readonly Detailed[], live: LiveState): void {
  const [, paintAgain] = useReducer<number, void>((times) => times + 1, 0)
  const { pending } = live
  const { phase } = live.connection
  useEffect(() => book.subscribe(() => paintAgain()), [book])
  useEffect(() => book.typed(pending.map(({ command }) => command)), [book, pending])
  // biome-ignore lint/correctness/useExhaustiveDependencies: what could not be asked for is asked for with the next contact.
  useEffect(() => book.want(all), [book, all, phase])
}
