import { setImmediate } from 'node:timers/promises'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { fromJson, toJson } from '../../shared-core/day/state-json.ts'
import type { Journal } from '../journal/journal.ts'

/** Entries between two breaths, in which the server can say how far it is. */
const ENTRIES_A_BREATH = 5_000
/** A journal that takes more than a moment to fold: its progress is told. */
export const FULL_FOLD_TOLD_ENTRIES = 50_000

/**
 * The running shop out of its journal: the newest snapshot of this fold, then the entries after it. After an upgrade
 * that changed the fold there is no such snapshot, and everything is folded anew.
 * @param onProgress hears the share done, 0 to 1, while there is much to fold
 */
export async function wake(journal: Journal, onProgress: (share: number) => void): Promise<State> {
  const state = fromSnapshot(journal) ?? emptyState()
  const fromSeq = state.seq
  const all = journal.lastSeq() - fromSeq
  for (const entry of journal.entriesAfter(fromSeq)) {
    applyEntry(state, entry)
    if ((entry.seq - fromSeq) % ENTRIES_A_BREATH === 0) {
      onProgress((entry.seq - fromSeq) / all)
      await setImmediate()
    }
  }
  assertAccounted(state)
  return state
}

/** A snapshot whose hash is wrong is not believed: the fold decides. */
function fromSnapshot(journal: Journal): State | null {
  const snapshot = journal.newestSnapshot(FOLD_VERSION)
  if (snapshot === null || snapshot.seq > journal.lastSeq()) return null
  const state = fromJson(JSON.parse(snapshot.json))
  return hashState(state) === snapshot.hash ? state : null
}

export function saveSnapshot(journal: Journal, state: State): void {
  journal.saveSnapshot({
    seq: state.seq,
    foldVersion: FOLD_VERSION,
    json: JSON.stringify(toJson(state)),
    hash: hashState(state),
  })
}
