import canonicalize from 'canonicalize'
import type { SetUpChange } from './set-up-change.ts'
import { standing } from './set-up-diff.ts'
import type { Shop } from './shop.ts'

/**
 * A change of an entity, whole as all are, that was meant for the shop as it was before another change: the fields that
 * it changes stay, the others are as they are now. Without this, a price planned on Monday for Thursday would bring back
 * Monday's topping, and put into use again what was retired on Tuesday.
 * @returns the same object where nothing moved under it
 */
export function rebased(change: SetUpChange, before: Shop, after: Shop): SetUpChange {
  const [from, to] = [standing(before, change), standing(after, change)]
  const value: unknown = change.value
  if (isSame(from, to) || !isFields(value) || !isFields(from) || !isFields(to)) return change
  const kept = Object.entries(to).map(([field, now]) => {
    const wanted = value[field]
    return [field, isSame(wanted, from[field]) ? now : wanted]
  })
  // Fields of one entity against fields of the same entity: the type stays what it was.
  return { ...change, value: Object.fromEntries(kept) } as unknown as SetUpChange
}

/** Windows are looked at as a whole by stage; a part that was or is null has no fields to keep. */
function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

function isSame(one: unknown, other: unknown): boolean {
  return canonicalize(one ?? null) === canonicalize(other ?? null)
}
