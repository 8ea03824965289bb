import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { isSame, setUpChanges, standing } from '../../../shared-core/shop/set-up-diff.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

/**
 * A draft that began from one starting point, as if it had begun from another: another kind of oven, another language.
 * Field by field: what nobody has touched becomes as the new one says, what somebody has typed stays.
 *
 * Entities of the old starting point that the new one lacks are retired, those that only the new one has are added.
 * @param from the starting point that the draft came from; whatever it names besides is only used to compare
 * @returns changes to the draft
 */
export function rebased(draft: Shop, from: Shop, to: Shop): SetUpChange[] {
  const wanted = setUpChanges(null, to).flatMap((change): SetUpChange[] => {
    const now = standing(draft, change)
    if (now === undefined) return standing(from, change) === undefined ? [change] : []
    return [merged(change, now, standing(from, change))]
  })
  const gone = setUpChanges(from, to)
    .filter((change) => isRetired(change) && isInUse(standing(draft, change)))
    .map((change) => withValue(change, { ...objectOf(standing(draft, change)), retired: true }))
  return [...wanted, ...gone].filter((change) => !isAlike(standing(draft, change), change.value))
}

/** Each field of the new value, unless the draft has another one than the old starting point. */
function merged(change: SetUpChange, now: unknown, old: unknown): SetUpChange {
  const [was, is, next] = [objectOf(old), objectOf(now), objectOf(change.value)]
  if (is === null || next === null) return isAlike(now, old) ? change : withValue(change, now)
  const fields = Object.keys({ ...is, ...next }).map((field) => {
    const isTouched = was === null ? field !== 'retired' : !isAlike(is[field], was[field])
    // The order is the draft's: things may have been added between.
    if (field === 'order') return [field, is[field]] as const
    return [field, isTouched ? is[field] : next[field]] as const
  })
  return withValue(change, Object.fromEntries(fields.filter(([, value]) => value !== undefined)))
}

/** The one cast here: the fields come from values of the very same entity. */
function withValue(change: SetUpChange, value: unknown): SetUpChange {
  return { ...change, value } as SetUpChange
}

function isRetired({ value }: SetUpChange): boolean {
  return value !== null && 'retired' in value && value.retired
}

function isInUse(value: unknown): boolean {
  return objectOf(value)?.retired === false
}

function objectOf(value: unknown): Readonly<Record<string, unknown>> | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...value } : null
}

/** What is left out is as good as null. */
function isAlike(a: unknown, b: unknown): boolean {
  return isSame(a ?? null, b ?? null)
}
