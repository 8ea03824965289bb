import type { Allergen } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { MixTask, OrderCost, OrderPlace, OrderRules } from './order.ts'
import { comfortableStart } from './order-problem.ts'

/**
 * Why a mix stands where it stands, and what that brings with it; screens have the words.
 * - `bringsLater`: it contains what none before it does, so that those come first.
 * - `stronger`: its flavour is stronger than all before it.
 * - `sameBowl`: it goes after the one before without a wash.
 * - `soonest`: of all that are still to be mixed it must begin soonest to be in time.
 * - `wash`: the mixer is washed before it, for allergens that it lacks or because it is milder.
 * - `contact`: allergens that it lacks and that were in the mixer before, on that day.
 * - `waits`: the mixer waits for its pre-ferment, its soaker or the day's beginning.
 * - `benchWaits`: it is ready and waits for bench or proof space.
 * - `late`: it comes into the cooler after its time.
 */
export type OrderReason =
  | { readonly code: 'bringsLater'; readonly allergens: readonly Allergen[] }
  | { readonly code: 'stronger' }
  | { readonly code: 'sameBowl' }
  | { readonly code: 'soonest' }
  | { readonly code: 'wash'; readonly allergens: readonly Allergen[]; readonly isMilder: boolean }
  | { readonly code: 'contact'; readonly allergens: readonly Allergen[] }
  | { readonly code: 'waits'; readonly ms: number }
  | { readonly code: 'benchWaits'; readonly ms: number }
  | { readonly code: 'late'; readonly ms: number }

/** @param cost of these tasks, from `mixingOrder` or `orderCost`; @returns by place of the order */
export function orderReasons(
  tasks: readonly MixTask[],
  cost: OrderCost,
  rules: OrderRules,
): { readonly id: string; readonly reasons: readonly OrderReason[] }[] {
  const byId = new Map(tasks.map((task) => [task.id, task]))
  const order = cost.places.map(({ id }) => must(byId, id))
  return cost.places.map((place, index) => {
    const task = must(byId, place.id)
    const before = index === 0 ? rules.before : (order[index - 1] ?? null)
    const day = [...(rules.before?.dayAllergens ?? []), ...order.slice(0, index).flatMap(({ allergens }) => allergens)]
    const freeMs = index === 0 ? rules.mixerFromMs : (cost.places[index - 1]?.mixedAtMs ?? rules.mixerFromMs)
    return {
      id: place.id,
      reasons: [
        ...whyHere(task, order, index, day, before),
        ...bowl(task, place, before),
        ...times(task, place, freeMs + (place.isWashedBefore ? rules.washMs : 0)),
      ],
    }
  })
}

type Bowl = Pick<MixTask, 'allergens' | 'strength'> | null

function whyHere(
  task: MixTask,
  order: readonly MixTask[],
  index: number,
  day: readonly Allergen[],
  before: Bowl,
): OrderReason[] {
  const earlier = order.slice(0, index)
  const brings = before === null ? [] : task.allergens.filter((allergen) => !day.includes(allergen))
  const isStronger =
    before !== null && task.strength > Math.max(before.strength, ...earlier.map(({ strength }) => strength))
  const later = order.slice(index + 1)
  const isSoonest = later.length > 0 && later.every((other) => comfortableStart(task) < comfortableStart(other))
  return [
    ...(brings.length > 0 ? [{ code: 'bringsLater' as const, allergens: brings }] : []),
    ...(isStronger ? [{ code: 'stronger' as const }] : []),
    ...(isSoonest ? [{ code: 'soonest' as const }] : []),
  ]
}

function bowl(task: MixTask, { isWashedBefore, contacts }: OrderPlace, before: Bowl): OrderReason[] {
  const contact = contacts.length > 0 ? [{ code: 'contact' as const, allergens: contacts }] : []
  if (before === null) return contact
  if (!isWashedBefore) return [{ code: 'sameBowl' }, ...contact]
  const allergens = before.allergens.filter((allergen) => !task.allergens.includes(allergen))
  return [{ code: 'wash', allergens, isMilder: before.strength > task.strength }, ...contact]
}

function times(task: MixTask, place: OrderPlace, mixerFreeMs: number): OrderReason[] {
  const waitsMs = place.startAtMs - mixerFreeMs
  const benchMs = place.benchAtMs - place.mixedAtMs - task.waitMs
  return [
    ...(waitsMs > 0 ? [{ code: 'waits' as const, ms: waitsMs }] : []),
    ...(benchMs > 0 ? [{ code: 'benchWaits' as const, ms: benchMs }] : []),
    ...(place.latenessMs > 0 ? [{ code: 'late' as const, ms: place.latenessMs }] : []),
  ]
}
