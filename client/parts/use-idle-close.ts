import { useEffect, useRef } from 'preact/hooks'

/** A sheet that somebody has walked away from would hide the line or the rack. Common practice, no source. */
const IDLE_MS = 90_000

/** Closes what lies over a screen once nobody has touched the screen for a while. */
export function useIdleClose(isOpen: boolean, onClose: () => void): void {
  const latest = useRef(onClose)
  latest.current = onClose
  useEffect(() => {
    if (!isOpen) return
    let timer = window.setTimeout(close, IDLE_MS)
    function close(): void {
      latest.current()
    }
    function touched(): void {
      window.clearTimeout(timer)
      timer = window.setTimeout(close, IDLE_MS)
    }
    window.addEventListener('pointerdown', touched)
    window.addEventListener('keydown', touched)
    return () => {
      window.clearTimeout(timer)
      window.removeEventListener('pointerdown', touched)
      window.removeEventListener('keydown', touched)
    }
  }, [isOpen])
}
