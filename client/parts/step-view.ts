import type { StepLine } from '../../shared-core/day/step-list.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { ShiftWords } from '../words/shift.ts'
import type { Words } from '../words/words.ts'

/** A line of the opening or the changeover, in words; the same on wall and bench. */
export interface StepView {
  readonly key: string
  readonly line: StepLine
  readonly name: string
  /** "at 3:40, in 12 min"; "not ready, again 4:10"; "done 3:41". */
  readonly when: string
  /** The same in few letters. */
  readonly whenShort: string
  /** "" while it is nobody's. */
  readonly who: string
  readonly tone: 'plain' | 'act' | 'late' | 'done'
}

export interface StepWording {
  readonly words: Words
  readonly shift: ShiftWords
  readonly nowMs: EpochMs
}

export function stepView(line: StepLine, { words, shift, nowMs }: StepWording): StepView {
  const { steps } = shift
  const { stepId, doughId, name, personId } = line
  const when = whenTexts(line, shift, nowMs)
  return {
    key: doughId === null ? stepId : `${stepId} ${doughId}`,
    line,
    name: doughId === null ? name : steps.float(name, words.names.dough(doughId)),
    when: when.long,
    whenShort: when.short,
    who: personId === null ? '' : words.names.person(personId),
    tone: TONES[line.status],
  }
}

/** What is still to do first, then what is done; each in the order of the list. */
export function doneLast(lines: readonly StepLine[]): readonly StepLine[] {
  const isDone = ({ status }: StepLine) => status === 'done'
  return [...lines.filter((line) => !isDone(line)), ...lines.filter(isDone)]
}

const TONES = { coming: 'plain', due: 'act', late: 'late', done: 'done' } as const

function whenTexts(
  { status, doneAtMs, dueAtMs, float }: StepLine,
  { steps }: ShiftWords,
  nowMs: EpochMs,
): { readonly long: string; readonly short: string } {
  if (status === 'done') {
    const said = float?.dippedAnyway === true ? steps.dippedAnyway : doneAtMs === null ? steps.done : null
    const text = said ?? (doneAtMs === null ? steps.done : steps.doneAt(doneAtMs))
    return { long: text, short: text }
  }
  if (status === 'coming' && float !== null && float.lookAgainAtMs !== null) {
    return { long: steps.lookAgain(float.lookAgainAtMs), short: steps.lookAgain(float.lookAgainAtMs) }
  }
  const due = { atMs: dueAtMs, status }
  return { long: steps.due(due, nowMs), short: steps.dueShort(due, nowMs) }
}
