import { floatTeaches } from '../dough/float-teaches.ts'
import type { DoughId, PersonId } from '../ids.ts'
import { noteId } from '../ids.ts'
import { boiledOf } from '../line/float-hold.ts'
import { hoursOn } from '../shop/hours.ts'
import { milliCelsius } from '../shop/temperature.ts'
import type { EpochMs } from '../units.ts'
import { later, spanMs } from '../units.ts'
import type { ListCommand } from './commands.ts'
import type { Case, Decision } from './decision.ts'
import { happen, happenedAt, refuse, take } from './decision.ts'
import { changeoverMark, floatMark, ovenMark, shelfMark, stepMark } from './marks.ts'
import { NOTES_MAX } from './notes.ts'
import { floatDoughs } from './step-list.ts'
import type { Told } from './trace.ts'

type Of<Type extends ListCommand['type']> = Case<Extract<ListCommand, { type: Type }>>

/**
 * A step of a list is done; done again, it is corrected: who and when are the last ones said. Of a float test it says
 * that the dough has passed; without a dough, that each has that stands there.
 */
export function decideDoStep(oneCase: Of<'doStep'>): Decision {
  const { command, state, shop } = oneCase
  const refusal = stepRefusal(oneCase)
  if (refusal !== null) return refusal
  const { stepId, doughId, personId } = command
  const atMs = happenedAt(oneCase)
  const isFloat = shop.steps.get(stepId)?.kind === 'float-test'
  const doughIds = !isFloat ? [] : doughId === null ? floatDoughs(state, shop) : [doughId]
  for (const one of doughIds) happenFloat(oneCase, one, { atMs, personId, lookAgainAtMs: null })
  if (doughIds.length > 0) return take(oneCase, toldOf(command))
  const mark = { kind: 'step', id: stepMark(stepId, doughId), stepId, doughId, personId, doneAtMs: atMs } as const
  happen(oneCase, atMs, { type: 'marked', mark })
  return take(oneCase, toldOf(command))
}

/**
 * Who will do a step; of one that is done, who did it: the time stays. A step that is neither given nor done is as if
 * nobody had said anything.
 */
export function decideGiveStep(oneCase: Of<'giveStep'>): Decision {
  const { command, state } = oneCase
  const refusal = stepRefusal(oneCase)
  if (refusal !== null) return refusal
  const { stepId, doughId, personId } = command
  const id = stepMark(stepId, doughId)
  const before = state.marks.get(id)
  const doneAtMs = before?.kind === 'step' ? before.doneAtMs : null
  const atMs = happenedAt(oneCase)
  const found = doughId === null ? undefined : state.marks.get(floatMark(doughId))
  const mark = { kind: 'step', id, stepId, doughId, personId, doneAtMs } as const
  if (found?.kind === 'float') happen(oneCase, atMs, { type: 'marked', mark: { ...found, personId } })
  else if (personId !== null || doneAtMs !== null) happen(oneCase, atMs, { type: 'marked', mark })
  else if (before !== undefined) happen(oneCase, atMs, { type: 'unmarked', markId: id })
  else return refuse('already-moved', { stage: null })
  return take(oneCase, toldOf(command))
}

/** From one look to the next where nobody says (common practice, no source). */
const LOOK_AGAIN_MS = spanMs(15, 'min')

/**
 * A piece of dough in cold water floats when it is ready; whoever saw it says so. "Not ready" moves the dough's earliest
 * boil to the next look. It stops nobody: a dip all the same is taken.
 */
export function decideTestFloat(oneCase: Of<'testFloat'>): Decision {
  const { command, shop } = oneCase
  const { doughId, passed, lookAgainMs, personId } = command
  if (!shop.doughs.has(doughId)) return refuse('unknown-dough')
  if (personId !== null && !shop.people.has(personId)) return refuse('unknown-person')
  const atMs = happenedAt(oneCase)
  const lookAgainAtMs = passed ? null : later(atMs, lookAgainMs ?? LOOK_AGAIN_MS)
  happenFloat(oneCase, doughId, { atMs, personId, lookAgainAtMs })
  return take(oneCase, { doughId })
}

interface Found {
  readonly atMs: EpochMs
  readonly personId: PersonId | null
  /** Null: it has passed. */
  readonly lookAgainAtMs: EpochMs | null
}

function happenFloat(oneCase: Case, doughId: DoughId, { atMs, personId, lookAgainAtMs }: Found): void {
  const boiled = boiledOf(oneCase.state, doughId)
  const said = {
    id: floatMark(doughId),
    doughId,
    passed: lookAgainAtMs === null,
    atMs,
    lookAgainAtMs,
    personId,
    boiled,
  }
  happen(oneCase, atMs, { type: 'marked', mark: { kind: 'float', ...said } })
  const teaching = floatTeaches(oneCase.state, oneCase.shop, { doughId, atMs, passed: said.passed })
  if (teaching !== null) happen(oneCase, atMs, { type: 'paceTaught', teaching })
}

export function decideWriteNote(oneCase: Of<'writeNote'>): Decision {
  const { command, state, context } = oneCase
  if (state.notes.size >= NOTES_MAX) return refuse('too-many', { most: NOTES_MAX })
  const atMs = happenedAt(oneCase)
  const note = { id: noteId(oneCase.newId()), text: command.text, atMs, deviceId: context.deviceId }
  happen(oneCase, atMs, { type: 'noted', note })
  return take(oneCase, { text: command.text })
}

export function decideClearNote(oneCase: Of<'clearNote'>): Decision {
  const { command, state } = oneCase
  const note = state.notes.get(command.noteId)
  if (note === undefined) return refuse('unknown-note')
  happen(oneCase, happenedAt(oneCase, note.atMs), { type: 'noteCleared', noteId: note.id })
  return take(oneCase, { text: note.text })
}

/** Counted from what the set-up says, not from the last slip: two people who say "15 min" slip it once. */
export function decideSlipChangeover(oneCase: Of<'slipChangeover'>): Decision {
  const { command, shop, state, context } = oneCase
  const hours = hoursOn(shop, state.day?.label ?? context.localDate)
  if (hours === null || hours.changeoverFromMinute === null) return refuse('no-changeover')
  const { slipMs } = command
  const id = changeoverMark()
  const before = state.marks.get(id)
  if (slipMs === (before?.kind === 'changeover' ? before.slipMs : 0)) return refuse('already-moved', { stage: null })
  const atMs = happenedAt(oneCase)
  if (slipMs === 0) happen(oneCase, atMs, { type: 'unmarked', markId: id })
  else happen(oneCase, atMs, { type: 'marked', mark: { kind: 'changeover', id, slipMs } })
  // Half a minute back rounds to −0, which no JSON holds; plus zero it is 0.
  return take(oneCase, { pieces: Math.round(command.slipMs / 60_000) + 0 })
}

/**
 * Shelf by shelf: one deck may change over while another still bakes. A load that is in it bakes on. "Bagels again" is
 * kept as said: it keeps the shelf open after the time of the changeover too.
 */
export function decideChangeOverShelf(oneCase: Of<'changeOverShelf'>): Decision {
  const { command, shop, state } = oneCase
  const { shelfId, to } = command
  if (!shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
  const kind = to === 'secondMenu' ? 'shelf-over' : 'shelf-open'
  const id = shelfMark(shelfId)
  if (state.marks.get(id)?.kind === kind) return refuse('already-moved', { stage: null })
  const atMs = happenedAt(oneCase)
  happen(oneCase, atMs, { type: 'marked', mark: { kind, id, shelfId, atMs } })
  return take(oneCase, { shelfId })
}

export function decideReadOven(oneCase: Of<'readOven'>): Decision {
  const { command, shop } = oneCase
  const { shelfId, degrees, unit } = command
  if (shelfId !== null && !shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
  const atMs = happenedAt(oneCase)
  const read = { degrees, unit }
  const mark = { kind: 'oven', id: ovenMark(shelfId), shelfId, atMs, read, milliCelsius: milliCelsius(read) } as const
  happen(oneCase, atMs, { type: 'marked', mark })
  return take(oneCase, { pieces: degrees, ...(shelfId === null ? {} : { shelfId }) })
}

type StepCommand = Extract<ListCommand, { type: 'doStep' | 'giveStep' }>

function stepRefusal({ command, shop }: Case<StepCommand>): Decision | null {
  const { stepId, doughId, personId } = command
  if (!shop.steps.has(stepId)) return refuse('unknown-step')
  if (doughId !== null && !shop.doughs.has(doughId)) return refuse('unknown-dough')
  return personId === null || shop.people.has(personId) ? null : refuse('unknown-person')
}

function toldOf({ stepId, doughId, personId }: StepCommand): Omit<Told, 'type'> {
  return {
    stepId,
    ...(doughId === null ? {} : { doughId }),
    ...(personId === null ? {} : { personId }),
  }
}
