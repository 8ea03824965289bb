import type { Allergen } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'
import type { MixTask, OrderRules } from './order.ts'

/** Tasks and rules in the form that the searches go through thousands of times: plain numbers, allergens as bits. */
export interface Problem {
  readonly rules: OrderRules
  /** By rank: the sooner latest comfortable start first, then by id. */
  readonly items: readonly Item[]
  /** What is in the bowl at the beginning; null: it is clean. */
  readonly bowl: Residue | null
  /** Allergens of all mixes of the day before these. */
  readonly dayMask: number
  readonly classes: readonly Residue[]
}

/** What a mix leaves in the bowl. */
export interface Residue {
  readonly mask: number
  readonly strength: number
}

export interface Item extends Residue {
  readonly id: string
  readonly rank: number
  readonly task: MixTask
  /** Of `classes`: mixes of one class contain the same and are as strong. */
  readonly class: number
  /** Mixes of one kind are alike in all but their id, so that they can change places. */
  readonly kind: number
  /** Its pieces are shaped that day, and need the bench. */
  readonly isShaped: boolean
}

/** @param given in any order; ids are unique */
export function problemOf(given: readonly MixTask[], rules: OrderRules): Problem {
  const tasks = [...given].sort((a, b) => comfortableStart(a) - comfortableStart(b) || (a.id < b.id ? -1 : 1))
  const classes: Residue[] = []
  const kinds: string[] = []
  const items = tasks.map((task, rank) => {
    const { id, allergens, strength, benchMs, trays } = task
    const residue = { mask: maskOf(allergens), strength }
    return {
      ...residue,
      id,
      rank,
      task,
      class: placeIn(classes, (one) => one.mask === residue.mask && one.strength === strength, residue),
      kind: placeIn(kinds, (one) => one === kindOf(task, residue), kindOf(task, residue)),
      isShaped: benchMs > 0 || trays > 0,
    }
  })
  const { before } = rules
  const bowl = before === null ? null : { mask: maskOf(before.allergens), strength: before.strength }
  return { rules, items, bowl, dayMask: maskOf(before?.dayAllergens ?? []), classes }
}

/** When a task must begin to be in time if nothing else stands in its way. */
export function comfortableStart({ dueAtMs, mixMs, waitMs, benchMs, proofMs }: MixTask): number {
  return dueAtMs - mixMs - waitMs - benchMs - proofMs
}

/** Whether the mixer must be washed before the second. */
export function needsWash(from: Residue | null, to: Residue): boolean {
  return from !== null && ((from.mask & ~to.mask) !== 0 || from.strength > to.strength)
}

/** How many of the nine allergens are in a mask. */
export function bitsIn(mask: number): number {
  let count = 0
  for (let rest = mask; rest !== 0; rest &= rest - 1) count += 1
  return count
}

export function allergensIn(mask: number): Allergen[] {
  return ALLERGENS.filter((_, bit) => (mask & (1 << bit)) !== 0)
}

function kindOf({ formulaId, earliestAtMs, mixMs, waitMs, benchMs, proofMs, trays, dueAtMs }: MixTask, of: Residue) {
  return [formulaId, of.mask, of.strength, earliestAtMs, mixMs, waitMs, benchMs, proofMs, trays, dueAtMs].join(' ')
}

/** The place of what fits in a list; it is added where nothing does. */
function placeIn<Thing>(list: Thing[], fits: (one: Thing) => boolean, otherwise: Thing): number {
  const place = list.findIndex(fits)
  return place === -1 ? list.push(otherwise) - 1 : place
}

function maskOf(allergens: readonly Allergen[]): number {
  return allergens.reduce((mask, allergen) => mask | (1 << ALLERGENS.indexOf(allergen)), 0)
}
