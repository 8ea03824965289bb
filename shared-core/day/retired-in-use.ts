import { piecesOf } from '../line/lines.ts'
import type { Order, StandingOrder } from '../orders/order.ts'
import type { Shop } from '../shop/shop.ts'
import type { Ask } from './answers.ts'
import type { State } from './state.ts'

/** What a set-up retires though pieces of it are there, or orders that are open or stand name it: it is asked about. */
export function retiredInUse(state: State, shop: Shop): readonly Ask[] {
  const [pieces, orders] = [piecesThere(state), ordersThatName(state)]
  const before = state.shop
  const newlyRetired = entitiesOf(shop).filter(({ kind, id, retired }) => retired && !wasRetired(before, kind, id))
  return newlyRetired.flatMap(({ kind, id, name }): Ask[] => {
    const [there, named] = [pieces.get(keyOf(kind, id)) ?? 0, orders.get(keyOf(kind, id))?.size ?? 0]
    if (there === 0 && named === 0) return []
    return [{ code: 'retires-in-use', params: { id, name, pieces: there, orders: named } }]
  })
}

/** Lists whose entities pieces or orders can be of. */
const KINDS = ['doughs', 'varieties', 'shelves', 'menu', 'kitchenStations', 'runs'] as const
type Kind = (typeof KINDS)[number]

/** Ids are of their list: a dough and a variety are often called alike. */
function keyOf(kind: Kind, id: string): string {
  return `${kind} ${id}`
}

function entitiesOf(shop: Shop) {
  return KINDS.flatMap((kind) => [...shop[kind].values()].map(({ id, name, retired }) => ({ kind, id, name, retired })))
}

function wasRetired(shop: Shop | null, kind: Kind, id: string): boolean {
  const list: ReadonlyMap<string, { readonly retired: boolean }> | undefined = shop?.[kind]
  return list?.get(id)?.retired === true
}

function piecesThere(state: State): ReadonlyMap<string, number> {
  const there = new Map<string, number>()
  const count = (kind: Kind, id: string, pieces: number) =>
    there.set(keyOf(kind, id), (there.get(keyOf(kind, id)) ?? 0) + pieces)
  for (const batch of state.batches.values()) {
    count('doughs', batch.doughId, batch.pieces)
    const shelfId = batch.loadId === null ? undefined : state.loads.get(batch.loadId)?.shelfId
    if (shelfId !== undefined) count('shelves', shelfId, batch.pieces)
  }
  for (const stock of state.stock.values()) count('varieties', stock.varietyId, piecesOf(stock.lots) + stock.kept)
  return there
}

/** Orders by what they name; an order counts once for each. */
function ordersThatName({ orders, standing }: State): ReadonlyMap<string, ReadonlySet<string>> {
  const by = new Map<string, Set<string>>()
  const note = (kind: Kind, id: string, orderId: string) => {
    const key = keyOf(kind, id)
    by.set(key, (by.get(key) ?? new Set<string>()).add(orderId))
  }
  const noteLines = ({ id, lines, runId }: Order | StandingOrder) => {
    for (const { varietyId } of lines) if (varietyId !== null) note('varieties', varietyId, id)
    if (runId !== null) note('runs', runId, id)
  }
  for (const one of standing.values()) noteLines(one)
  for (const order of orders.values()) {
    noteLines(order)
    for (const item of order.items) {
      note('menu', item.itemId, order.id)
      if (item.varietyId !== null) note('varieties', item.varietyId, order.id)
      for (const step of item.steps) {
        if (step.madeAtMs === null) note('kitchenStations', step.stationId, order.id)
        if (step.madeAtMs === null && step.shelfId !== null) note('shelves', step.shelfId, order.id)
      }
    }
  }
  return by
}
