import { assertAccounted } from '../../../shared-core/day/account.ts'
import type { AskCode } from '../../../shared-core/day/answers.ts'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Act, Command } from '../../../shared-core/day/commands.ts'
import type { Context, Decision } from '../../../shared-core/day/decide.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { Entry, Event, EventType } from '../../../shared-core/day/events.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, deviceId } from '../../../shared-core/ids.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at } from './make.ts'

export interface When {
  readonly nowMs?: EpochMs
  readonly tappedAtMs?: EpochMs | null
  readonly confirmed?: readonly AskCode[]
  readonly id?: string
  readonly localDate?: string
  readonly device?: string
  readonly seenSeq?: number
}

/** A command tapped at 6:47 and decided at once, unless said otherwise. */
export function tap(act: Act, when: When = {}): Command {
  const nowMs = when.nowMs ?? at('6:47')
  const tappedAtMs = when.tappedAtMs === undefined ? nowMs : when.tappedAtMs
  const seen = when.seenSeq === undefined ? {} : { seenSeq: when.seenSeq }
  return {
    id: commandId(when.id ?? 'tap0000001'),
    deviceSeq: 1,
    tappedAtMs,
    confirmed: when.confirmed ?? [],
    ...seen,
    ...act,
  }
}

/** The shop's clock is UTC−6 on the test day. */
export function context(when: When = {}): Context {
  const localDate = when.localDate ?? '2026-11-24'
  return {
    nowMs: when.nowMs ?? at('6:47'),
    deviceId: deviceId(when.device ?? 'bench-1'),
    localDate,
    noonOf: (label) => epochMs(Date.parse(`${label}T18:00:00Z`)),
  }
}

export function decided(state: State, act: Act, when: When = {}): Decision {
  return decide(state, tap(act, when), context(when))
}

/** "taken", or the code of the refusal, or the asked codes. */
export function outcome(decision: Decision): string {
  if (decision.kind === 'refused') return decision.refusal.code
  return decision.kind === 'ask' ? `ask ${decision.asks.map((ask) => ask.code).join(' ')}` : 'taken'
}

/** Decides and folds one act, as the room does; the state is changed in place. @throws when it is not taken */
export function play(state: State, act: Act, when: When = {}): readonly Event[] {
  const command = tap(act, { id: `tap${String(state.seq).padStart(7, '0')}`, ...when })
  const decision = decide(state, command, context(when))
  if (decision.kind !== 'taken') throw new Error(`${act.type}: ${outcome(decision)}`)
  applyEntry(state, entryOf(state, command, decision, when))
  assertAccounted(state)
  return decision.events
}

export function entryOf(
  state: State,
  command: Command,
  decision: Extract<Decision, { kind: 'taken' }>,
  when: When = {},
): Entry {
  return {
    seq: state.seq + 1,
    commandId: command.id,
    deviceId: deviceId(when.device ?? 'bench-1'),
    recordedAtMs: epochMs(Math.max(state.recordedAtMs, when.nowMs ?? at('6:47'))),
    told: decision.told,
    events: decision.events,
  }
}

export function eventsOf<Type extends EventType>(
  events: readonly Event[],
  type: Type,
): Extract<Event, { type: Type }>[] {
  return events.filter((event): event is Extract<Event, { type: Type }> => event.type === type)
}

/** Where a state's pieces are: "rack plain 36", sorted; what is in the oven by variety. */
export function places(state: State): readonly string[] {
  const sums = new Map<string, number>()
  for (const batch of state.batches.values()) {
    const key = `${batch.stage} ${batch.varietyId ?? `${batch.doughId} dough`}`
    sums.set(key, (sums.get(key) ?? 0) + batch.pieces)
  }
  for (const stock of state.stock.values()) {
    const pieces = stock.lots.reduce((sum, lot) => sum + lot.pieces, 0)
    if (pieces > 0) sums.set(`out ${stock.varietyId}`, pieces)
    if (stock.kept > 0) sums.set(`kept ${stock.varietyId}`, stock.kept)
  }
  return [...sums].map(([place, pieces]) => `${place} ${pieces}`).sort()
}
