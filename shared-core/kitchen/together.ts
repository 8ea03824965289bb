import type { KitchenTask, Together, TogetherPart } from './queue.ts'

/**
 * The same thing across orders: item, bagel, toasted or not, what is left out and what is more of. An item with an
 * allergy is never lumped with another one, not even with its like: each is made with clean hands for one guest.
 * @param tasks in the order in which they are due; of each item one, the part that it is at
 * @returns the kind first that has the soonest due part
 */
export function togetherOf(tasks: readonly KitchenTask[]): readonly Together[] {
  const kinds = new Map<string, { readonly first: KitchenTask; readonly parts: TogetherPart[] }>()
  const byDue = [...tasks]
    .filter(({ stage }) => stage !== 'waiting')
    .sort((one, other) => one.dueAtMs - other.dueAtMs || (one.key < other.key ? -1 : 1))
  for (const task of byDue) {
    const key = kindOf(task)
    const kind = kinds.get(key) ?? { first: task, parts: [] }
    kinds.set(key, kind)
    const { part, mark, stationId, stage, dueAtMs, status } = task
    kind.parts.push({ part, mark, stationId, stage, dueAtMs, status })
  }
  return [...kinds].map(([key, { first, parts }]) => {
    const { itemId, varietyId, toasted, without, more, allergies } = first
    const begun = parts.filter(({ stage }) => stage === 'begun').length
    return { key, itemId, varietyId, toasted, without, more, allergies, begun, waiting: parts.length - begun, parts }
  })
}

function kindOf({ itemId, varietyId, toasted, without, more, allergies, part }: KitchenTask): string {
  const kind = [itemId, varietyId ?? '', toasted ? 'toasted' : '', sorted(without), sorted(more)].join(' ')
  return allergies.length === 0 ? kind : `${kind} ${part.orderId}:${part.no}`
}

function sorted(ids: readonly string[]): string {
  return [...ids].sort().join(',')
}
