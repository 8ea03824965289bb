import { useEffect, useState } from 'preact/hooks'
import { codeInLink } from './code.ts'
import type { Joining, Seen } from './standing.ts'
import { askStanding, join, leave } from './standing.ts'

/** A shop that was not there is looked for again after this. */
const AGAIN_MS = 3_000

export interface Joined {
  readonly seen: Seen
  readonly isJoining: boolean
  readonly outcome: Joining | null
  readonly onCode: (code: string) => void
  readonly onLeave: () => void
}

/**
 * Asks who this device is, and joins with a code: typed, or out of the address that a camera read. Once it has joined it
 * goes to its page.
 * @param name what this device calls itself; ""
 * @param onNewcomer it has joined, and had no key by which the shop could know it again
 */
export function useJoining(name: string, onNewcomer: () => void): Joined {
  const [seen, setSeen] = useState<Seen>({ kind: 'asking' })
  const [isJoining, setJoining] = useState(false)
  const [outcome, setOutcome] = useState<Joining | null>(null)
  useEffect(() => {
    if (seen.kind === 'known') return
    let isCurrent = true
    const ask = () => askStanding().then((next) => isCurrent && setSeen(next))
    const timer = window.setTimeout(ask, seen.kind === 'asking' ? 0 : AGAIN_MS)
    return () => {
      isCurrent = false
      window.clearTimeout(timer)
    }
  }, [seen])
  const onCode = async (code: string) => {
    setJoining(true)
    const before = seen.kind === 'known' ? seen : await askStanding()
    const next = await join(code, name)
    if (next.kind === 'joined' && hasNoKey(before)) onNewcomer()
    setOutcome(next)
    if (next.kind === 'joined') window.location.replace(next.page)
    else setJoining(false)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the page was opened with is read once, and each new link.
  useEffect(() => {
    const fromLink = () => {
      const code = codeInLink(window.location.hash)
      if (code === null) return
      // Out of the address at once: it would stay in the history of a tablet that many use.
      window.history.replaceState(null, '', window.location.pathname + window.location.search)
      onCode(code)
    }
    fromLink()
    window.addEventListener('hashchange', fromLink)
    return () => window.removeEventListener('hashchange', fromLink)
  }, [])
  const onLeave = async () => {
    // One that was not heard is told, and who this device is by now is asked again.
    setSeen({ kind: (await leave()) ? 'asking' : 'no-contact' })
  }
  return { seen, isJoining, outcome, onCode, onLeave }
}

function hasNoKey(seen: Seen): boolean {
  if (seen.kind !== 'known' || seen.standing.kind !== 'unknown') return false
  return seen.standing.why === 'no-token' || seen.standing.why === 'forged'
}
