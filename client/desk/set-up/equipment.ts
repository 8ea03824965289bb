import { shelfId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { Boards, OvenKind, Shelf, Shop } from '../../../shared-core/shop/shop.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import { added, SHELVES } from './lists.ts'
import { rebased } from './rebased.ts'

/** Another kind of oven: its shelves or floor, its times and lists come with it where nobody has said otherwise. */
export function withOvenKind(draft: Shop, kind: OvenKind): SetUpChange[] {
  if (kind === draft.oven.kind) return []
  const { profile, shelves, boards } = draft
  const start = startingPoint(kind, profile)
  const changes = rebased(draft, startingPoint(draft.oven.kind, profile), start)
  // A hearth has one floor and the others have none: what does not fit the new kind goes, whoever had added it.
  const misplaced = inUse(shelves).filter((shelf) => (shelf.floorBoards !== null) !== (kind === 'hearth'))
  const named = new Set(changes.flatMap((change) => (change.entity === 'shelf' ? [change.value.id] : [])))
  const retired = misplaced
    .filter(({ id }) => !named.has(id))
    .map((shelf) => SHELVES.change({ ...shelf, retired: true }))
  return [...changes, ...retired].map((change) => withFloor(asNew(change, start), boards))
}

/** A shelf that comes back under its id after it was another oven's floor, or the other way, is as a new one is. */
function asNew(change: SetUpChange, { oven, shelves }: Shop): SetUpChange {
  if (change.entity !== 'shelf' || change.value.retired) return change
  const isFloor = change.value.floorBoards !== null
  const fresh = shelves.get(change.value.id)
  if (isFloor === (oven.kind === 'hearth') || fresh === undefined) return change
  return SHELVES.change({ ...change.value, pieces: fresh.pieces, floorBoards: fresh.floorBoards })
}

/** Shelves that are loaded one by one, so many in use: the last ones go, or come back, or are added like the last. */
export function withShelfCount(draft: Shop, count: number): SetUpChange[] {
  const used = inUse(draft.shelves)
  if (count < used.length) return used.slice(count).map((shelf) => SHELVES.change({ ...shelf, retired: true }))
  let shop = draft
  const changes: SetUpChange[] = []
  for (let n = used.length; n < count; n++) {
    const shelf = nextShelf(shop)
    changes.push(SHELVES.change(shelf))
    shop = { ...shop, shelves: new Map(shop.shelves).set(shelf.id, shelf) }
  }
  return changes
}

function nextShelf(shop: Shop): Shelf {
  const used = inUse(shop.shelves)
  const name = String(used.length + 1)
  const last = used[used.length - 1]
  const pieces = last?.pieces ?? 72
  const before = shop.shelves.get(shelfId(name))
  if (before?.retired && before.floorBoards === null)
    return { ...before, name, pieces, order: (last?.order ?? 0) + 1, retired: false }
  const like: Shelf = {
    id: shelfId(name),
    name,
    order: 0,
    pieces,
    emptyByMinute: null,
    floorBoards: null,
    slots: last?.slots ?? 0,
    retired: false,
  }
  return added(SHELVES, shop, like, freeName(used, name))
}

function freeName(used: readonly Shelf[], name: string): string {
  const names = new Set(used.map((shelf) => shelf.name))
  for (let n = Number(name); ; n++) if (!names.has(String(n))) return String(n)
}

/** All shelves in use hold so many. */
export function withShelfPieces(draft: Shop, pieces: number): SetUpChange[] {
  return inUse(draft.shelves).map((shelf) => SHELVES.change({ ...shelf, pieces }))
}

/** A floor of so many boards holds what they carry. */
export function withFloorBoards(draft: Shop, floorBoards: number): SetUpChange[] {
  const pieces = floorBoards * draft.boards.pieces
  return inUse(draft.shelves).map((shelf) => SHELVES.change({ ...shelf, floorBoards, pieces }))
}

/** The boards, and with them what a hearth's floor holds. */
export function withBoards(draft: Shop, boards: Boards): SetUpChange[] {
  const change: SetUpChange = { entity: 'boards', value: boards }
  const floors = inUse(draft.shelves).filter(
    ({ floorBoards, pieces }) => floorBoards !== null && pieces === floorBoards * draft.boards.pieces,
  )
  return [
    change,
    ...floors.map((floor) => SHELVES.change({ ...floor, pieces: (floor.floorBoards ?? 0) * boards.pieces })),
  ]
}

function withFloor(change: SetUpChange, { pieces }: Boards): SetUpChange {
  if (change.entity !== 'shelf' || change.value.floorBoards === null) return change
  return SHELVES.change({ ...change.value, pieces: change.value.floorBoards * pieces })
}
