import { useCallback, useEffect, useRef, useState } from 'preact/hooks'
import { Ring } from './ring.tsx'

/** Long enough to wipe a tablet with a wet cloth. Common practice, no source. */
export const WIPE_MS = 15_000
/** A cloth moves on sooner than this, or moves away; a knuckle that means it stays. Common practice, no source. */
const HOLD_MS = 1_500
const HOLD_MM = 8
const TICK_MS = 250

export interface WipeWords {
  /** @example "Glass locked 12 s" */
  locked(seconds: number): string
  readonly hold: string
}

/** Locks the glass against touches for a while. Pedals and keyboards go on: they have no glass to wipe. */
export function useWipeLock(): { readonly leftMs: number; readonly lock: () => void; readonly end: () => void } {
  const [untilMs, setUntil] = useState<number | null>(null)
  const [nowMs, setNow] = useState(() => performance.now())
  const leftMs = untilMs === null ? 0 : Math.max(0, untilMs - nowMs)
  useEffect(() => {
    if (untilMs === null) return
    const timer = window.setInterval(() => {
      const atMs = performance.now()
      setNow(atMs)
      if (atMs >= untilMs) setUntil(null)
    }, TICK_MS)
    return () => window.clearInterval(timer)
  }, [untilMs])
  const lock = useCallback(() => {
    const atMs = performance.now()
    setNow(atMs)
    setUntil(atMs + WIPE_MS)
  }, [])
  const end = useCallback(() => setUntil(null), [])
  return { leftMs, lock, end }
}

export interface WipeLockProps {
  readonly leftMs: number
  /** CSS pixels to a millimetre. */
  readonly mmPx: number
  readonly words: WipeWords
  readonly onEnd: () => void
}

/**
 * Lies over the whole page and takes every touch; the line under it stays in sight, as pedals go on. It ends by itself,
 * or when its own band is held down in one place.
 */
export function WipeLock({ leftMs, mmPx, words, onEnd }: WipeLockProps) {
  const hold = useHold(HOLD_MM * mmPx, onEnd)
  if (leftMs <= 0) return null
  const seconds = Math.ceil(leftMs / 1_000)
  return (
    <div class="wipe-lock">
      <button type="button" class="wipe-band" data-block="act" {...hold}>
        <Ring fraction={leftMs / WIPE_MS} state="running" size="calc(16 * var(--mm))" />
        <span>
          <strong role="status">{words.locked(seconds)}</strong>
          <span class="wipe-hold">{words.hold}</span>
        </span>
      </button>
    </div>
  )
}

interface Held {
  readonly timer: number
  readonly x: number
  readonly y: number
}

/** A touch that stays in one place long enough; a keyboard and a screen reader need not hold. */
function useHold(mostPx: number, onHeld: () => void) {
  const held = useRef<Held | null>(null)
  const latest = useRef(onHeld)
  latest.current = onHeld
  const letGo = useCallback(() => {
    if (held.current !== null) window.clearTimeout(held.current.timer)
    held.current = null
  }, [])
  useEffect(() => letGo, [letGo])
  return {
    onPointerDown: (event: PointerEvent) => {
      letGo()
      const timer = window.setTimeout(() => latest.current(), HOLD_MS)
      held.current = { timer, x: event.clientX, y: event.clientY }
    },
    onPointerMove: (event: PointerEvent) => {
      const from = held.current
      if (from !== null && Math.hypot(event.clientX - from.x, event.clientY - from.y) > mostPx) letGo()
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onClick: (event: MouseEvent) => {
      if (event.detail === 0) latest.current()
    },
    onContextMenu: (event: Event) => event.preventDefault(),
  }
}
