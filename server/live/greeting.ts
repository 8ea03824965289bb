import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { toJson } from '../../shared-core/day/state-json.ts'
import type { FromScreen, Welcome } from '../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../shared-core/live/protocol.ts'
import type { RoomParts } from './room-parts.ts'

/** Missing more than this, the state whole is smaller and quicker than the entries: about an hour of a busy morning. */
const CATCH_UP_ENTRIES_MAX = 500

/** What a screen needs to go on: the entries that it missed, or the state whole when it cannot catch up with these. */
export function greet(
  parts: RoomParts,
  hello: Extract<FromScreen, { type: 'hello' }>,
  device: Welcome['device'],
): Welcome {
  const { journal, state, buildId, version, demo } = parts
  const welcome = {
    type: 'welcome',
    protocol: PROTOCOL_VERSION,
    foldVersion: FOLD_VERSION,
    buildId,
    journalId: journal.journalId,
    course: journal.course,
    device,
    seq: state.seq,
    clock: parts.clock(),
    demo,
    version,
  } as const
  // A page of another form does not fold at all: it loads itself anew.
  const isOfOurForm = hello.protocol === PROTOCOL_VERSION && hello.foldVersion === FOLD_VERSION
  if (!isOfOurForm) return { ...welcome, state: null, entries: [] }
  const { afterSeq } = hello
  const canCatchUp =
    afterSeq !== null &&
    hello.journalId === journal.journalId &&
    hello.course === journal.course &&
    afterSeq <= state.seq &&
    state.seq - afterSeq <= CATCH_UP_ENTRIES_MAX
  if (!canCatchUp) return { ...welcome, state: toJson(state), entries: [] }
  return { ...welcome, state: null, entries: [...journal.entriesAfter(afterSeq)] }
}
