import type { SetUpId } from '../ids.ts'
import { applySetUp } from '../shop/set-up-apply.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import { rebased } from '../shop/set-up-rebase.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { Event } from './events.ts'
import type { PlannedSetUp, State } from './state.ts'
import { eventVersion } from './upcast.ts'

/**
 * Changes of the set-up that take effect later. Each is held against the shop as it is now: whenever the shop changes,
 * those still to come are rebased on it, so that they change what they were meant to change and nothing else.
 */

/** Whether a shop may become another. */
export type Fits = (before: Shop, after: Shop) => boolean

/** A planned change in its turn: what it has become by then, and the shop after it; null when it does not fit. */
export interface InTurn {
  readonly setUp: PlannedSetUp
  readonly after: Shop | null
}

/** Oldest first, each on the shop that those before it leave; one that does not fit is passed over. */
export function inTurn(shop: Shop, setUps: Iterable<PlannedSetUp>, fits: Fits): InTurn[] {
  let so = shop
  let coming = [...setUps].sort((one, other) => one.fromMs - other.fromMs || (one.id < other.id ? -1 : 1))
  const turns: InTurn[] = []
  for (let setUp = coming[0]; setUp !== undefined; setUp = coming[0]) {
    coming = coming.slice(1)
    const next = applySetUp(so, setUp.changes)
    if (!fits(so, next)) {
      turns.push({ setUp, after: null })
      continue
    }
    const before = so
    coming = coming.map((one) => rebasedOn(one, before, next))
    so = next
    turns.push({ setUp, after: next })
  }
  return turns
}

/** Those that would not fit in their turn. */
export function lostIn(shop: Shop, setUps: Iterable<PlannedSetUp>, fits: Fits): ReadonlySet<SetUpId> {
  return new Set(inTurn(shop, setUps, fits).flatMap(({ setUp, after }) => (after === null ? [setUp.id] : [])))
}

/**
 * What happens when the time of planned changes has come, oldest first. One that no longer fits what the shop has become
 * since is dropped rather than breaking the shop; the list of versions tells it.
 */
export function dueSetUps(
  { shop, setUps }: Pick<State, 'shop' | 'setUps'>,
  nowMs: EpochMs,
  fits: Fits,
): readonly Event[] {
  if (shop === null) return []
  const due = [...setUps.values()].filter(({ fromMs }) => fromMs <= nowMs)
  if (due.length === 0) return []
  const turns = inTurn(shop, due, fits)
  const taken = turns.flatMap(({ setUp, after }): readonly Event[] => {
    const dropped: Event = { v: 1, atMs: nowMs, type: 'setUpDropped', setUpId: setUp.id }
    return after === null ? [dropped] : [setUpChanged(nowMs, setUp.changes), dropped]
  })
  const later = [...setUps.values()].filter(({ fromMs }) => fromMs > nowMs)
  return [...taken, ...movedWith(later, shop, shopAfter(shop, taken), nowMs)]
}

/** The state as it is for the act that finds planned changes due. */
export function afterDue(state: State, due: readonly Event[]): State {
  if (due.length === 0 || state.shop === null) return state
  const setUps = new Map(state.setUps)
  for (const event of due) {
    if (event.type === 'setUpDropped') setUps.delete(event.setUpId)
    if (event.type === 'setUpPlanned') setUps.set(event.setUp.id, event.setUp)
  }
  return { ...state, shop: shopAfter(state.shop, due), setUps }
}

/** Planned changes that a change of the shop moves, as they are planned from now on. */
export function movedWith(setUps: Iterable<PlannedSetUp>, before: Shop, after: Shop, atMs: EpochMs): readonly Event[] {
  return [...setUps].flatMap((setUp): readonly Event[] => {
    const moved = rebasedOn(setUp, before, after)
    return moved === setUp ? [] : [{ v: eventVersion('setUpPlanned'), atMs, type: 'setUpPlanned', setUp: moved }]
  })
}

export function setUpChanged(atMs: EpochMs, changes: readonly SetUpChange[]): Event {
  return { v: eventVersion('setUpChanged'), atMs, type: 'setUpChanged', changes }
}

function shopAfter(shop: Shop, events: readonly Event[]): Shop {
  return events.reduce((so, event) => (event.type === 'setUpChanged' ? applySetUp(so, event.changes) : so), shop)
}

function rebasedOn(setUp: PlannedSetUp, before: Shop, after: Shop): PlannedSetUp {
  const changes = setUp.changes.map((change) => rebased(change, before, after))
  return changes.every((change, index) => change === setUp.changes[index]) ? setUp : { ...setUp, changes }
}
