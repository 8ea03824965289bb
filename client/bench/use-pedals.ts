import { useEffect, useRef } from 'preact/hooks'
import type { StationId } from '../../shared-core/ids.ts'
import type { PedalListener } from '../parts/pedal-listener.ts'
import { listenToPedals } from '../parts/pedal-listener.ts'

export interface PedalHands {
  /** The key of the act that a station shows now; null when it shows none. */
  readonly shows: (station: StationId) => string | null
  /** Does the act that the station has been showing. */
  readonly onPress: (station: StationId) => void
  readonly onWhyNot: (station: StationId, why: 'just-changed' | 'nothing-to-do') => void
}

/**
 * Ties this screen's pedals and one-key pads to their stations.
 * @param keys station by key code; a new object only when the settings change
 * @param isAway while a sheet lies over the line, pedals do nothing: what they would do cannot be read
 */
export function usePedals(keys: Readonly<Record<string, StationId>>, isAway: boolean, hands: PedalHands): void {
  const latest = useRef(hands)
  latest.current = hands
  const listener = useRef<PedalListener | null>(null)
  useEffect(() => {
    if (isAway) return
    const ties = new Map(Object.entries(keys))
    const made = listenToPedals(window, ties, (outcome) => {
      const station = [...ties.values()].find((id) => id === outcome.stationId)
      if (station === undefined) return
      if (outcome.type === 'say') latest.current.onWhyNot(station, outcome.why)
      else if (latest.current.shows(station) === outcome.actKey) latest.current.onPress(station)
    })
    listener.current = made
    return () => {
      listener.current = null
      made.close()
    }
  }, [keys, isAway])
  useEffect(() => {
    for (const station of new Set(Object.values(keys))) {
      listener.current?.show(station, hands.shows(station), performance.now())
    }
  })
}
