import type { RefObject } from 'preact'
import { useEffect, useRef } from 'preact/hooks'

/** Whoever goes to another page of the set-up is at its top, with the keyboard in it; a first look is left alone. */
export function useArrival(root: RefObject<HTMLElement | null>, hash: string): void {
  const last = useRef(hash)
  useEffect(() => {
    if (last.current === hash) return
    last.current = hash
    const sheet = root.current?.querySelector<HTMLElement>('.setup-sheet')
    sheet?.focus({ preventScroll: true })
    root.current?.scrollIntoView({ block: 'start' })
  }, [root, hash])
}
