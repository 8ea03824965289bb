import { useCallback, useEffect, useState } from 'preact/hooks'

/** Long enough to be read from the boiler or over one's shoulder, short enough not to hide the next act. */
const FLASH_MS = 2_000

/** What was just done, for a moment. @returns the words, or null, and how to say something */
export function useFlash(): readonly [string | null, (text: string) => void] {
  const [flash, setFlash] = useState<{ readonly text: string } | null>(null)
  const say = useCallback((text: string) => setFlash({ text }), [])
  useEffect(() => {
    if (flash === null) return
    const timer = setTimeout(() => setFlash(null), FLASH_MS)
    return () => clearTimeout(timer)
  }, [flash])
  return [flash?.text ?? null, say]
}
