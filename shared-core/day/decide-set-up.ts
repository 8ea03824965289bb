import { derivedId, setUpId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { applySetUp, isWholeSetUp } from '../shop/set-up-apply.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import { shopMisfits } from '../shop/set-up-rules.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { Ask } from './answers.ts'
import type { Command, DayCommand } from './commands.ts'
import type { Case, Context, Decision } from './decision.ts'
import { askFor, happen, happenedAt, refuse, take } from './decision.ts'
import type { Event } from './events.ts'
import type { State } from './state.ts'
import { eventVersion } from './upcast.ts'

/** The only command that an empty shop takes. What is running keeps the targets it began with. */
export function decideChangeSetUp(
  state: State,
  command: Extract<Command, { type: 'changeSetUp' }>,
  context: Context,
): Decision {
  if (state.shop === null && !isWholeSetUp(command.changes)) return refuse('set-up-mismatch', { id: null })
  const shop = applySetUp(state.shop, command.changes)
  const [misfit] = [...doughMoved(state.shop, shop), ...shopMisfits(shop)]
  if (misfit !== undefined) return refuse('set-up-mismatch', { id: misfit.id })
  const asked = askFor(command, retiredInUse(state, shop))
  if (asked !== null) return asked
  const { changes, fromMs } = command
  const atMs = context.nowMs
  const told = { type: 'changeSetUp', pieces: changes.length }
  if (fromMs === undefined || fromMs <= atMs) return { kind: 'taken', events: [setUpChanged(atMs, changes)], told }
  if (state.setUps.size >= SET_UPS_MAX) return refuse('too-many', { most: SET_UPS_MAX })
  const setUp = { id: setUpId(derivedId(command.id, 1)), fromMs, changes, deviceId: context.deviceId }
  return { kind: 'taken', events: [{ v: 1, atMs, type: 'setUpPlanned', setUp }], told }
}

/** More planned changes than this are more likely a mistake than a plan. */
export const SET_UPS_MAX = 20

export function decideDropSetUp(oneCase: Case<Extract<DayCommand, { type: 'dropSetUp' }>>): Decision {
  const { command, state } = oneCase
  if (!state.setUps.has(command.setUpId)) return refuse('unknown-set-up')
  happen(oneCase, happenedAt(oneCase), { type: 'setUpDropped', setUpId: command.setUpId })
  return take(oneCase)
}

/** Nothing of its own: `decide` puts what is due before every command. Without anything due it is no act. */
export function decideTakeUpSetUps(oneCase: Case<Extract<DayCommand, { type: 'takeUpSetUps' }>>): Decision {
  const { state, context } = oneCase
  const isDue = [...state.setUps.values()].some(({ fromMs }) => fromMs <= context.nowMs)
  return isDue ? take(oneCase) : refuse('nothing-due')
}

function setUpChanged(atMs: EpochMs, changes: readonly SetUpChange[]): Event {
  return { v: eventVersion('setUpChanged'), atMs, type: 'setUpChanged', changes }
}

/**
 * Planned changes whose time has come, oldest first. One that no longer fits what the shop has become since is dropped
 * rather than breaking the shop; the desk shows that it is gone.
 */
export function dueSetUps({ shop, setUps }: State, nowMs: EpochMs): readonly Event[] {
  let soFar = shop
  return [...setUps.values()]
    .filter(({ fromMs }) => fromMs <= nowMs)
    .sort((one, other) => one.fromMs - other.fromMs || (one.id < other.id ? -1 : 1))
    .flatMap(({ id, changes }): readonly Event[] => {
      const next = applySetUp(soFar, changes)
      const dropped: Event = { v: 1, atMs: nowMs, type: 'setUpDropped', setUpId: id }
      if (doughMoved(soFar, next).length + shopMisfits(next).length > 0) return [dropped]
      soFar = next
      return [setUpChanged(nowMs, changes), dropped]
    })
}

/**
 * Varieties that would be of another dough. Their pieces are booked by dough, today's and all before: a variety of
 * another dough is a new one.
 */
function doughMoved(before: Shop | null, after: Shop): readonly { readonly id: string }[] {
  const known = [...(before?.varieties.values() ?? [])]
  return known.filter(({ id, doughId }) => after.varieties.get(id)?.doughId !== doughId)
}

function retiredInUse(state: State, shop: Shop): readonly Ask[] {
  const inUse = new Map<string, number>()
  const count = (id: string, pieces: number) => inUse.set(id, (inUse.get(id) ?? 0) + pieces)
  for (const batch of state.batches.values()) {
    count(batch.doughId, batch.pieces)
    const shelfId = batch.loadId === null ? undefined : state.loads.get(batch.loadId)?.shelfId
    if (shelfId !== undefined) count(shelfId, batch.pieces)
  }
  for (const stock of state.stock.values()) count(stock.varietyId, piecesOf(stock.lots) + stock.kept)
  const before = state.shop
  const newlyRetired = [...shop.doughs.values(), ...shop.varieties.values(), ...shop.shelves.values()].filter(
    (entity) => entity.retired && !wasRetired(before, entity.id),
  )
  return newlyRetired
    .filter(({ id }) => (inUse.get(id) ?? 0) > 0)
    .map(({ id, name }) => ({ code: 'retires-in-use', params: { id, name, pieces: inUse.get(id) ?? 0 } }))
}

function wasRetired(shop: Shop | null, id: string): boolean {
  if (shop === null) return false
  const all = [...shop.doughs.values(), ...shop.varieties.values(), ...shop.shelves.values()]
  return all.some((entity) => entity.id === id && entity.retired)
}
