import type { Problem } from '../../shared-core/shop/problem.ts'

/** Most loads of one list: more than any oven bakes in a day. */
export const LOADS_MAX = 200
export const LINES_MAX = 40
export const PIECES_MAX = 5_000
/** A name as the set-up has it is at most that long (`set-up-limits.ts`). */
export const NAME_MAX = 64
/** A wall-clock time, 24 hours. */
export const CLOCK = /^([01]?\d|2[0-3]):[0-5]\d$/

/** A load as somebody typed it: names and local times, each with where it stood, so that a mistake can be shown there. */
export interface TypedLoad {
  readonly at: Typed<string> | null
  readonly shelf: Typed<string> | null
  readonly lines: readonly { readonly variety: Typed<string>; readonly pieces: number }[]
}

export interface Typed<Value> {
  readonly value: Value
  /** Begins every sentence about it where a person finds it by line rather than by path; else empty. */
  readonly where: string
  readonly path: string
}

export type TypedRead =
  | { readonly ok: true; readonly loads: readonly TypedLoad[]; readonly date: string | null }
  | { readonly ok: false; readonly problems: readonly Problem[] }
