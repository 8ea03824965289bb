import { useEffect, useState } from 'preact/hooks'

/** The page's own size and the panel it is shown on, in CSS pixels. */
export interface GlassSize {
  readonly widthPx: number
  readonly heightPx: number
  readonly screenWidthPx: number
  readonly screenHeightPx: number
}

/** The page's size, kept up to date. */
export function useGlassSize(): GlassSize {
  const [size, setSize] = useState(read)
  useEffect(() => {
    const onResize = () => setSize(read())
    window.addEventListener('resize', onResize)
    return () => window.removeEventListener('resize', onResize)
  }, [])
  return size
}

/** A browser that hides its screen's size says 0: then the page is all that is known. */
function read(): GlassSize {
  const { innerWidth, innerHeight, screen } = window
  return {
    widthPx: innerWidth,
    heightPx: innerHeight,
    screenWidthPx: Math.max(screen.width, innerWidth, 1),
    screenHeightPx: Math.max(screen.height, innerHeight, 1),
  }
}
