import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
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

/** The edits without one entity: it is again as the shop has it, or gone when the shop never had it. */
export function withoutEdit(edits: Edits, entity: SetUpChange['entity'], id: string | null): Edits {
  return edits.filter((edit) => edit.entity !== entity || idOf(edit) !== id)
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
