import { useEffect, useRef } from 'preact/hooks'
import type { StationId } from '../../shared-core/ids.ts'
import type { PedalListener } from './pedal-listener.ts'
import { listenToPedals } from './pedal-listener.ts'

/** @typeParam Act what a press does: of the line, or of the kitchen; its key names it */
export interface PedalHands<Act extends { readonly key: string }> {
  /** The act that each tied station shows; null when it shows none. */
  readonly actOf: (station: StationId) => Act | null
  readonly onAct: (act: Act, station: StationId) => void
  readonly onWhyNot: (station: StationId, why: 'just-changed' | 'nothing-to-do') => void
}

/**
 * Ties the pedals of this screen to their stations for as long as it is on the page.
 * @param keys station by key code; a new object only when the settings change
 * @param isAway while a sheet lies over the line, pedals do nothing: what they would do cannot be read
 */
export function usePedals<Act extends { readonly key: string }>(
  keys: Readonly<Record<string, StationId>>,
  isAway: boolean,
  hands: PedalHands<Act>,
): void {
  const latest = useRef(hands)
  latest.current = hands
  const listener = useRef<PedalListener | null>(null)
  useEffect(() => {
    if (isAway) return
    const ties = new Map(Object.entries(keys))
    const made = listenToPedals(window, ties, (outcome) => {
      const station = [...ties.values()].find((id) => id === outcome.stationId)
      if (station === undefined) return
      if (outcome.type === 'say') return latest.current.onWhyNot(station, outcome.why)
      const act = latest.current.actOf(station)
      // Between the press and this moment nothing is painted, so what was shown still is.
      if (act !== null && act.key === outcome.actKey) latest.current.onAct(act, station)
    })
    listener.current = made
    return () => {
      listener.current = null
      made.close()
    }
  }, [keys, isAway])
  useEffect(() => {
    for (const station of new Set(Object.values(keys))) {
      listener.current?.show(station, hands.actOf(station)?.key ?? null, performance.now())
    }
  })
}
