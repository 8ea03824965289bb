import './health-strip.css'
import { useEffect, useState } from 'preact/hooks'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthWords } from '../words/health.ts'
import type { Words } from '../words/words.ts'

/** Nothing that it tells is a matter of seconds. */
const ASKED_EVERY_MS = 30_000

/** Why somebody should look at the server, under the desk's head; nothing while all is well. */
export function HealthStrip({ words }: { readonly words: Words }) {
  const reasons = useHealth().filter(({ level }) => level !== 'note')
  const say = healthWords(words)
  return (
    <div role="status">
      {reasons.map(({ code, level, params }) => (
        <p key={code} class={`desk-health desk-health-${level}`}>
          <strong>{level === 'failing' ? say.failing : say.look}</strong> {say.reason({ code, params })}
        </p>
      ))}
    </div>
  )
}

function useHealth(): readonly HealthReason[] {
  const [reasons, setReasons] = useState<readonly HealthReason[]>([])
  useEffect(() => {
    const ask = () => {
      if (document.hidden) return
      healthNow().then(setReasons)
    }
    ask()
    const timer = window.setInterval(ask, ASKED_EVERY_MS)
    document.addEventListener('visibilitychange', ask)
    return () => {
      window.clearInterval(timer)
      document.removeEventListener('visibilitychange', ask)
    }
  }, [])
  return reasons
}

/** A server that fails answers 503, with its reasons. One that does not answer is told by the link's own words. */
async function healthNow(): Promise<readonly HealthReason[]> {
  try {
    const response = await fetch('/api/health', { headers: { accept: 'application/json' } })
    const { reasons }: { readonly reasons?: readonly HealthReason[] } = await response.json()
    return reasons ?? []
  } catch {
    return []
  }
}
