import type { Refused } from '../../../server/journal/journal.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import { commandId, deviceId } from '../../../shared-core/ids.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct, startedShop } from '../../core/support/any-act.ts'
import { at } from '../../core/support/make.ts'
import { decided, entryOf, tap } from '../../core/support/play.ts'
import { shopWith } from '../../core/support/shop.ts'

/** Entries 1 to `count` of one shop's morning: its set-up, then openings and closings of days, the cheapest acts. */
export function someEntries(count: number, prefix = 'entry'): Entry[] {
  const state = emptyState()
  const entries: Entry[] = []
  for (let seq = 1; seq <= count; seq += 1) {
    const id = `${prefix}${String(seq).padStart(6, '0')}`
    const when = { id, nowMs: epochMs(at('5:00') + seq * 1_000) }
    const act: Act =
      seq === 1
        ? { type: 'changeSetUp', changes: setUpChanges(null, shopWith()) }
        : { type: state.day === null ? 'openDay' : 'closeDay' }
    entries.push(takenInto(state, act, when))
  }
  return entries
}

/** A morning of drawn acts on a started shop: every kind of event among them, the same for the same seed. */
export function drawnEntries(count: number, seed: number): { entries: Entry[]; firstSeq: number } {
  const state = startedShop()
  const entries: Entry[] = []
  const firstSeq = state.seq + 1
  for (let drawn = 0; entries.length < count && drawn < count * 20; drawn += 1) {
    const act = anyAct(state, seed + drawn)
    const when = { id: `drawn${String(drawn).padStart(7, '0')}`, nowMs: epochMs(at('5:00') + drawn * 7_000) }
    if (decided(state, act, when).kind === 'taken') entries.push(takenInto(state, act, when))
  }
  return { entries, firstSeq }
}

export function refusedAt(id: string, clock: string): Refused {
  return {
    commandId: commandId(id),
    recordedAtMs: at(clock),
    answer: { kind: 'refused', refusal: { code: 'unknown-load', params: { loadId: 'gone' } } },
  }
}

export const somebody = deviceId('bench-1')

function takenInto(
  state: ReturnType<typeof emptyState>,
  act: Act,
  when: { id: string; nowMs: ReturnType<typeof at> },
): Entry {
  const decision = decided(state, act, when)
  if (decision.kind !== 'taken') throw new Error(`${act.type} was not taken`)
  const entry = entryOf(state, tap(act, when), decision, when)
  applyEntry(state, entry)
  return entry
}
