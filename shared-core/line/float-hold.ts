import { floatMark } from '../day/marks.ts'
import type { Mark } from '../day/said.ts'
import type { State } from '../day/state.ts'
import type { DoughId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { kettleKey } from './touches.ts'

export type FloatMark = Extract<Mark, { kind: 'float' }>

/** Pieces of a dough that have been boiled, counted up for good. */
export function boiledOf(state: State, doughId: DoughId): number {
  return state.touches.get(kettleKey(doughId)) ?? 0
}

/** A dough whose test had not passed went into the kettle since: whoever dipped it knows better than the last look. */
export function hasDippedAnyway(state: State, { doughId, passed, boiled }: FloatMark): boolean {
  return !passed && boiledOf(state, doughId) > boiled
}

/**
 * The earliest that a dough can be boiled by its float test: when somebody looks again or, where that is past and
 * nobody has, now. Never more than a later time: a dip all the same is taken, and ends it.
 * @returns null where no test holds the dough
 */
export function earliestBoilMs(state: State, doughId: DoughId, nowMs: EpochMs): EpochMs | null {
  const mark = state.marks.get(floatMark(doughId))
  if (mark?.kind !== 'float' || mark.passed || hasDippedAnyway(state, mark)) return null
  return epochMs(Math.max(mark.lookAgainAtMs ?? nowMs, nowMs))
}
