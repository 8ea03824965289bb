import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/**
 * The width of an element in whole CSS pixels, kept up to date; 0 until it is on the page.
 * @returns a ref for the element and its width
 */
export function useMeasuredWidth<Element extends HTMLElement>() {
  const ref = useRef<Element>(null)
  const [widthPx, setWidthPx] = useState(0)
  useLayoutEffect(() => {
    const element = ref.current
    if (element === null) return
    const read = () => setWidthPx(Math.floor(element.getBoundingClientRect().width))
    read()
    const observer = new ResizeObserver(read)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [ref, widthPx] as const
}
