import { useEffect, useState } from 'preact/hooks'

/** A server that could not give the part is asked again after so long. */
const AGAIN_MS = 10_000

/**
 * A part of the program that comes once the screen stands; null until it is there.
 * @param fetchPart the same function each time
 * @param isWanted false: not fetched yet
 */
export function useFetched<Part>(fetchPart: () => Promise<Part>, isWanted = true): Part | null {
  const [part, setPart] = useState<Part | null>(null)
  const [tries, setTries] = useState(0)
  useEffect(() => {
    if (!isWanted || part !== null) return
    let isOpen = true
    let timer = 0
    fetchPart().then(
      (fetched) => isOpen && setPart(() => fetched),
      () => {
        if (isOpen) timer = window.setTimeout(() => setTries(tries + 1), AGAIN_MS)
      },
    )
    return () => {
      isOpen = false
      window.clearTimeout(timer)
    }
  }, [fetchPart, isWanted, part, tries])
  return part
}
