import { useEffect, useRef } from 'preact/hooks'

/** Escape closes what lies over a screen. @param onClose null while nothing does */
export function useEscape(onClose: (() => void) | null): void {
  const latest = useRef(onClose)
  latest.current = onClose
  const isOpen = onClose !== null
  useEffect(() => {
    if (!isOpen) return
    const close = (event: KeyboardEvent) => {
      if (event.key === 'Escape') latest.current?.()
    }
    window.addEventListener('keydown', close)
    return () => window.removeEventListener('keydown', close)
  }, [isOpen])
}
