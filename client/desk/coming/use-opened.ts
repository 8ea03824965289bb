import { useState } from 'preact/hooks'

/** Which rows have their reasons open. */
export function useOpened<Id>(): { readonly isOpen: (id: Id) => boolean; readonly toggle: (id: Id) => void } {
  const [opened, setOpened] = useState<ReadonlySet<Id>>(new Set())
  return {
    isOpen: (id) => opened.has(id),
    toggle: (id) => {
      const next = new Set(opened)
      if (!next.delete(id)) next.add(id)
      setOpened(next)
    },
  }
}
