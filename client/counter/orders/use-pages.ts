import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/**
 * An element whose contents may be higher than itself, turned in pages by keys, as nothing is dragged here.
 * @returns a ref for it, and its pages: 1 where all is seen
 */
export function usePages<Element extends HTMLElement>() {
  const ref = useRef<Element>(null)
  const [{ page, pages }, setPages] = useState({ page: 0, pages: 1 })
  // Whatever was painted may have changed how high it is.
  useLayoutEffect(() => {
    const element = ref.current
    if (element === null || element.clientHeight === 0) return
    const all = Math.max(1, Math.ceil((element.scrollHeight - 1) / element.clientHeight))
    const at = Math.min(page, all - 1)
    if (all !== pages || at !== page) setPages({ page: at, pages: all })
  })
  const turn = (to: number) => {
    const element = ref.current
    element?.scrollTo({ top: to * element.clientHeight })
    setPages({ page: to, pages })
  }
  return { ref, page, pages, turn }
}
