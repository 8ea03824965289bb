import { useEffect, useRef, useState } from 'preact/hooks'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/** Milliseconds in which a minute of the day passes: a morning in a minute, or one to look at closely. */
export const PACES = [50, 200, 1_000] as const
export type Pace = (typeof PACES)[number]

const MINUTE_MS = 60_000

export interface Playing {
  readonly atMs: EpochMs
  readonly isPlaying: boolean
  readonly pace: Pace
  readonly goTo: (atMs: EpochMs) => void
  readonly setPace: (pace: Pace) => void
  readonly toggle: () => void
}

/** An instant that is moved by hand or goes on by itself, until the day's end. */
export function usePlaying(day: { readonly fromMs: EpochMs; readonly toMs: EpochMs }, startMs: EpochMs): Playing {
  const [atMs, setAt] = useState<EpochMs>(startMs)
  const [isPlaying, setPlaying] = useState(false)
  const [pace, setPace] = useState<Pace>(200)
  const at = useRef<number>(atMs)
  at.current = atMs
  useEffect(() => {
    if (!isPlaying) return
    let frame = 0
    let lastMs = performance.now()
    let exact: number = at.current
    const step = (nowMs: number) => {
      exact = Math.min(day.toMs, exact + ((nowMs - lastMs) / pace) * MINUTE_MS)
      lastMs = nowMs
      setAt(epochMs(Math.floor(exact)))
      if (exact >= day.toMs) setPlaying(false)
      else frame = requestAnimationFrame(step)
    }
    frame = requestAnimationFrame(step)
    return () => cancelAnimationFrame(frame)
  }, [isPlaying, pace, day])
  return {
    atMs,
    isPlaying,
    pace,
    goTo: (wantedMs) => {
      setPlaying(false)
      setAt(epochMs(Math.min(day.toMs, Math.max(day.fromMs, wantedMs))))
    },
    setPace,
    toggle: () => {
      // At the end it begins anew.
      if (!isPlaying && at.current >= day.toMs) setAt(day.fromMs)
      setPlaying(!isPlaying)
    },
  }
}
