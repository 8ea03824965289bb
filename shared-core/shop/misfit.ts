import type { SetUpChange } from './set-up-change.ts'

/** Something in a set-up that is well-formed and yet does not fit: what, and what would be right, in sentences. */
export interface Misfit extends Whose {
  /** Where inside the entity, from its field's name on, e.g. `windows/bake`; empty for the whole of it. */
  readonly field: string
  readonly wrong: string
  readonly right: string
}

export interface Whose {
  readonly entity: SetUpChange['entity']
  /** Null for a part of which there is one, and for a list as a whole. */
  readonly id: string | null
}

/** A rule that is broken or not, the field to blame, what is wrong and what would be right. */
export type Rule = readonly [broken: boolean, field: string, wrong: string, right: string]

/** The misfits of one entity: a row for each rule that is broken. */
export function broken(whose: Whose, rules: readonly Rule[]): Misfit[] {
  return rules.filter(([isBroken]) => isBroken).map(([, field, wrong, right]) => ({ ...whose, field, wrong, right }))
}
