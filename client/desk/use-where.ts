import { useEffect, useState } from 'preact/hooks'
import type { Where } from './place.ts'
import { whereOf } from './place.ts'

/** The place that the address names, as it changes. */
export function useWhere(): Where {
  const [where, setWhere] = useState(() => whereOf(window.location.hash))
  useEffect(() => {
    const read = () => setWhere(whereOf(window.location.hash))
    window.addEventListener('hashchange', read)
    return () => window.removeEventListener('hashchange', read)
  }, [])
  return where
}
