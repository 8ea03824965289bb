import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { setUpChanges, standing } from '../../../shared-core/shop/set-up-diff.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

/**
 * What was edited at the desk and is not saved: whole entities, each at most once. Kept as edits rather than as a shop,
 * so that what another desk saves meanwhile stays under them.
 */
export type Edits = readonly SetUpChange[]

/** The edits with one more; it takes the place of an earlier edit of the same entity. */
export function put(edits: Edits, change: SetUpChange): Edits {
  const key = keyOf(change)
  return [...edits.filter((edit) => keyOf(edit) !== key), change]
}

/** The shop as it will be once the edits are saved. */
export function draftOf(running: Shop, edits: Edits): Shop {
  return edits.length === 0 ? running : applySetUp(running, edits)
}

/** What a save would send: edits that change nothing are left out. */
export function changesOf(running: Shop, edits: Edits): SetUpChange[] {
  return setUpChanges(running, draftOf(running, edits))
}

/** Null for a part of which there is one. */
export function idOf({ value }: SetUpChange): string | null {
  return value !== null && 'id' in value ? value.id : null
}

function keyOf(change: SetUpChange): string {
  return `${change.entity} ${idOf(change) ?? ''}`
}

/**
 * The edits after more changes. What was added here and is retired again is forgotten: the shop never had it.
 * @example edited(shop, edits, moved(VARIETIES, draft, { id, by: -1 }))
 */
export function edited(running: Shop, edits: Edits, changes: readonly SetUpChange[]): Edits {
  return changes.reduce(put, edits).filter((edit) => !(isRetired(edit) && standing(running, edit) === undefined))
}

function isRetired({ value }: SetUpChange): boolean {
  return value !== null && 'retired' in value && value.retired
}
