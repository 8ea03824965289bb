import { noteId } from '../ids.ts'
import { boiledOf } from '../line/float-hold.ts'
import { milliCelsius } from '../shop/temperature.ts'
import { later, spanMs } from '../units.ts'
import type { ListCommand } from './commands.ts'
import type { Case, Decision } from './decision.ts'
import { happen, happenedAt, refuse, take } from './decision.ts'
import { changeoverMark, floatMark, ovenMark, shelfMark, stepMark } from './marks.ts'
import { NOTES_MAX } from './notes.ts'
import type { Told } from './state.ts'

type Of<Type extends ListCommand['type']> = Case<Extract<ListCommand, { type: Type }>>

/** A step of a list is done; done again, it is corrected: who and when are the last ones said. */
export function decideDoStep(oneCase: Of<'doStep'>): Decision {
  const { command } = oneCase
  const refusal = stepRefusal(oneCase)
  if (refusal !== null) return refusal
  const { stepId, doughId, personId } = command
  const atMs = happenedAt(oneCase)
  const mark = { kind: 'step', id: stepMark(stepId, doughId), stepId, doughId, personId, doneAtMs: atMs } as const
  happen(oneCase, atMs, { type: 'marked', mark })
  return take(oneCase, toldOf(command))
}

export function decideGiveStep(oneCase: Of<'giveStep'>): Decision {
  const { command, state } = oneCase
  const refusal = stepRefusal(oneCase)
  if (refusal !== null) return refusal
  const { stepId, doughId, personId } = command
  const id = stepMark(stepId, doughId)
  const before = state.marks.get(id)
  const doneAtMs = before?.kind === 'step' ? before.doneAtMs : null
  happen(oneCase, happenedAt(oneCase), {
    type: 'marked',
    mark: { kind: 'step', id, stepId, doughId, personId, doneAtMs },
  })
  return take(oneCase, toldOf(command))
}

/** From one look to the next where nobody says (common practice, no source). */
const LOOK_AGAIN_MS = spanMs(15, 'min')

/**
 * A piece of dough in cold water floats when it is ready; whoever saw it says so. "Not ready" moves the dough's earliest
 * boil to the next look. It stops nobody: a dip all the same is taken.
 */
export function decideTestFloat(oneCase: Of<'testFloat'>): Decision {
  const { command, shop, state } = oneCase
  const { doughId, passed, lookAgainMs, personId } = command
  if (!shop.doughs.has(doughId)) return refuse('unknown-dough')
  if (personId !== null && !shop.people.has(personId)) return refuse('unknown-person')
  const atMs = happenedAt(oneCase)
  const lookAgainAtMs = passed ? null : later(atMs, lookAgainMs ?? LOOK_AGAIN_MS)
  const boiled = boiledOf(state, doughId)
  const id = floatMark(doughId)
  const mark = { kind: 'float', id, doughId, passed, atMs, lookAgainAtMs, personId, boiled } as const
  happen(oneCase, atMs, { type: 'marked', mark })
  return take(oneCase, { doughId })
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

export function decideSlipChangeover(oneCase: Of<'slipChangeover'>): Decision {
  const { command, shop } = oneCase
  if (shop.hours.changeoverFromMinute === null) return refuse('no-changeover')
  const id = changeoverMark()
  happen(oneCase, happenedAt(oneCase), { type: 'marked', mark: { kind: 'changeover', id, slipMs: command.slipMs } })
  return take(oneCase, { pieces: Math.round(command.slipMs / 60_000) })
}

/** Shelf by shelf: one deck may change over while another still bakes. */
export function decideChangeOverShelf(oneCase: Of<'changeOverShelf'>): Decision {
  const { command, shop, state } = oneCase
  const { shelfId, to } = command
  if (!shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
  const id = shelfMark(shelfId)
  const atMs = happenedAt(oneCase)
  if (to === 'secondMenu') happen(oneCase, atMs, { type: 'marked', mark: { kind: 'shelf-over', id, shelfId, atMs } })
  else if (state.marks.has(id)) happen(oneCase, atMs, { type: 'unmarked', markId: id })
  else return refuse('same-place')
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
