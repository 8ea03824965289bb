import { useLayoutEffect } from 'preact/hooks'
import type { StationId } from '../../shared-core/ids.ts'

/** Keys that a keyboard needs for itself: no pedal may be set to one of them. */
const TAKEN: ReadonlySet<string> = new Set([
  'Escape',
  'Tab',
  'ShiftLeft',
  'ShiftRight',
  'ControlLeft',
  'ControlRight',
  'AltLeft',
  'AltRight',
])

/**
 * The next key that is pressed is the pedal's. It listens as soon as the screen asks for it: a foot may be quicker than
 * the next frame of a slow tablet.
 * @param station null: nothing is learnt
 */
export function useLearning(station: StationId | null, onLearnt: (code: string, station: StationId) => void): void {
  useLayoutEffect(() => {
    if (station === null) return
    const learn = (event: KeyboardEvent) => {
      if (event.code === '' || TAKEN.has(event.code)) return
      event.preventDefault()
      event.stopPropagation()
      onLearnt(event.code, station)
    }
    window.addEventListener('keydown', learn, { capture: true })
    return () => window.removeEventListener('keydown', learn, { capture: true })
  })
}
