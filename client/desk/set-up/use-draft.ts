import { useEffect, useState } from 'preact/hooks'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { Edits } from './draft.ts'
import { edited } from './draft.ts'

export interface Draft {
  readonly edits: Edits
  readonly change: (changes: readonly SetUpChange[]) => void
  readonly clear: () => void
}

/**
 * The draft of this tab. It outlasts a look at another page and a reload for a new version, not the tab: what nobody
 * has saved by then is more likely forgotten than meant.
 */
export function useDraft(running: Shop): Draft {
  const shopKey = `${running.profile.name} ${running.profile.zone}`
  const [edits, setEdits] = useState<Edits>(() => keptEdits(shopKey))
  useEffect(() => keep(shopKey, edits), [shopKey, edits])
  return {
    edits,
    change: (changes) => setEdits((now) => edited(running, now, changes)),
    clear: () => setEdits([]),
  }
}

const KEY = 'boilboard.desk.set-up-draft'

function keep(shopKey: string, edits: Edits): void {
  try {
    if (edits.length === 0) window.sessionStorage.removeItem(KEY)
    else window.sessionStorage.setItem(KEY, JSON.stringify({ build: __BUILD_ID__, shopKey, edits }))
  } catch {
    // A browser that forbids its store keeps the draft only as long as the page.
  }
}

declare const __BUILD_ID__: string

/** Only what this very build has written, for this very shop: nothing else is known to have the right form. */
function keptEdits(shopKey: string): Edits {
  try {
    const kept: unknown = JSON.parse(window.sessionStorage.getItem(KEY) ?? 'null')
    if (typeof kept !== 'object' || kept === null || !('edits' in kept)) return []
    const isOurs = 'build' in kept && kept.build === __BUILD_ID__ && 'shopKey' in kept && kept.shopKey === shopKey
    return isOurs && Array.isArray(kept.edits) ? (kept.edits as Edits) : []
  } catch {
    return []
  }
}
