import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import { hashState } from '../../../shared-core/day/hash.ts'

/** Bundled by a test and run in Chromium: the fold and its hash, as a screen reckons them. */
Object.assign(globalThis, {
  hashOfFold: (entries: Parameters<typeof applyEntry>[1][]): string => {
    const state = emptyState()
    for (const entry of entries) applyEntry(state, entry)
    return hashState(state)
  },
})
