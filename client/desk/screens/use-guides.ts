import { useEffect, useState } from 'preact/hooks'
import type { GuideName } from '../../words/desk-open.ts'

/** Where a server that has made its own certificate gives what devices are to trust. */
export const AUTHORITY = '/authority.crt'

const ALWAYS = ['kiosk', 'pedals'] as const
export const GUIDES: readonly GuideName[] = [...ALWAYS, 'https']

/** The guides that there is a reason for: that to https only where the server has made its own certificate. */
export function useGuides(): readonly GuideName[] {
  const [hasAuthority, setHasAuthority] = useState(false)
  useEffect(() => {
    if (window.location.protocol !== 'https:') return
    fetch(AUTHORITY, { method: 'HEAD' }).then(
      ({ ok }) => setHasAuthority(ok),
      () => undefined,
    )
  }, [])
  return hasAuthority ? GUIDES : ALWAYS
}
