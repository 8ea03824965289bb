import { useEffect, useState } from 'preact/hooks'
import type { Panel } from '../parts/legibility.ts'

/** The page as the panel that it fills: a wall runs in full screen. Follows the window's size. */
export function usePanel(diagonalInch: number): Panel {
  const [size, setSize] = useState(sizeOfWindow)
  useEffect(() => {
    const read = () => setSize(sizeOfWindow())
    window.addEventListener('resize', read)
    return () => window.removeEventListener('resize', read)
  }, [])
  return { diagonalInch, widthPx: size.width, heightPx: size.height }
}

/** In CSS pixels: with a panel given in them, one of its pixels is one of theirs. */
function sizeOfWindow() {
  return { width: Math.max(1, window.innerWidth), height: Math.max(1, window.innerHeight) }
}
