import { useCallback, useEffect, useState } from 'preact/hooks'

/** Long enough to be read over one's shoulder. */
const FLASH_MS = 2_500

/** Words that stand for a moment. @returns them, or null, and how to say something */
export function useFlash(): readonly [string | null, (text: string) => void] {
  const [flash, setFlash] = useState<{ readonly text: string } | null>(null)
  const say = useCallback((text: string) => setFlash({ text }), [])
  useEffect(() => {
    if (flash === null) return
    const timer = window.setTimeout(() => setFlash(null), FLASH_MS)
    return () => window.clearTimeout(timer)
  }, [flash])
  return [flash?.text ?? null, say]
}
