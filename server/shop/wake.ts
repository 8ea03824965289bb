import { setImmediate } from 'node:timers/promises'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { fromJson, toJson } from '../../shared-core/day/state-json.ts'
import type { Journal, Snapshot } from '../journal/journal.ts'
import { JournalError } from '../journal/journal.ts'

/** Entries between two breaths, in which the server can say how far it is. */
const ENTRIES_A_BREATH = 5_000
/** A journal that takes more than a moment to fold: its progress is told. */
export const FULL_FOLD_TOLD_ENTRIES = 50_000

/**
 * The running shop out of its journal: the newest snapshot of this fold, then the entries after it. After an upgrade
 * that changed the fold there is no such snapshot, and everything is folded anew.
 * @param onProgress hears the share done, 0 to 1, while there is much to fold
 */
export async function wake(
  journal: Journal,
  onProgress: (share: number) => void,
  entriesABreath = ENTRIES_A_BREATH,
): Promise<State> {
  const state = fromSnapshot(journal) ?? emptyState()
  const fromSeq = state.seq
  const all = journal.lastSeq() - fromSeq
  for (const entry of journal.entriesAfter(fromSeq)) {
    fold(journal, state, entry)
    if ((entry.seq - fromSeq) % entriesABreath === 0) {
      onProgress((entry.seq - fromSeq) / all)
      await setImmediate()
    }
  }
  assertAccounted(state)
  return state
}

/** An entry that does not fit stops the start and is named: a shop that is not what was recorded helps nobody. */
function fold(journal: Journal, state: State, entry: Entry): void {
  try {
    applyEntry(state, entry)
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    const { seq, told, commandId } = entry
    throw new JournalError(
      `Entry ${seq} of the journal (${told.type}, command ${commandId}) does not fit what came before: ${why}. ${journal.remedy}`,
    )
  }
}

/** A snapshot that does not have its own hash is not believed: an older one, or the fold of everything, decides. */
function fromSnapshot(journal: Journal): State | null {
  let beforeSeq = journal.lastSeq() + 1
  for (;;) {
    const snapshot = journal.newestSnapshot(FOLD_VERSION, beforeSeq)
    if (snapshot === null) return null
    const state = read(snapshot)
    if (state !== null) return state
    beforeSeq = snapshot.seq
  }
}

function read({ json, hash }: Snapshot): State | null {
  try {
    const state = fromJson(JSON.parse(json))
    return hashState(state) === hash ? state : null
  } catch {
    return null
  }
}

export function saveSnapshot(journal: Journal, state: State): void {
  journal.saveSnapshot({
    seq: state.seq,
    foldVersion: FOLD_VERSION,
    json: JSON.stringify(toJson(state)),
    hash: hashState(state),
  })
}
