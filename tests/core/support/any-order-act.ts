import type { Act } from '../../../shared-core/day/commands.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { orderId } from '../../../shared-core/ids.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type {
  AskedItem,
  AskedLine,
  AskedOrder,
  ItemPart,
  OrderCommand,
} from '../../../shared-core/orders/order-commands.ts'
import type { Draw } from './draw.ts'
import { at } from './make.ts'

/** Orders as people take, make and hand them over, wrong ones among them. */
export const ORDER_MAKERS: {
  readonly [Type in OrderCommand['type']]: (state: State, draw: Draw) => Extract<Act, { type: Type }>
} = {
  takeOrder: (state, draw) => ({ type: 'takeOrder', ...anyOrder(state, draw) }),
  changeOrder: (state, draw) => ({
    type: 'changeOrder',
    orderId: someOrder(state, draw).id,
    ...anyOrder(state, draw),
    ...(draw.upTo(1) === 0 ? { keepsItems: true } : {}),
  }),
  cancelOrder: (state, draw) => ({ type: 'cancelOrder', orderId: someOrder(state, draw).id }),
  missOrder: (state, draw) => ({ type: 'missOrder', orderId: someOrder(state, draw).id }),
  handOverOrder: (state, draw) => ({
    type: 'handOverOrder',
    orderId: someOrder(state, draw).id,
    lines: draw.upTo(2) === 0 ? someLines(state, draw) : null,
  }),
  setStanding: (state, draw) => ({
    type: 'setStanding',
    standingId: draw.upTo(2) === 0 ? draw.oneOf([null, ...state.standing.keys()]) : null,
    mark: 'School',
    way: draw.oneOf(['pickUp', 'delivery']),
    runId: draw.oneOf([null, ...keys(state.shop?.runs)]),
    stop: draw.upTo(3) + 1,
    dueMinute: 420 + draw.upTo(300),
    lines: [someAsked(state, draw)],
    isPaid: false,
    recurrence: {
      ...{ freq: 'weekly', interval: 1, from: '2026-11-23', until: null, weekdays: [1, 2, 3, 4, 5] },
      ...{ nth: null, except: ['2026-11-26'], also: [] },
    },
    onHolidays: draw.upTo(1) === 0,
  }),
  endStanding: (state, draw) => ({
    type: 'endStanding',
    standingId: draw.oneOf([...state.standing.keys(), 'none' as never]),
  }),
  moveItems: (state, draw) => ({
    type: 'moveItems',
    parts: [somePart(state, draw)],
    to: draw.oneOf(['begun', 'begun', 'made', 'made', 'turned', 'waiting']),
    shelfId: draw.oneOf([null, ...keys(state.shop?.shelves)]),
  }),
  countPortions: (state, draw) => ({
    type: 'countPortions',
    portionId: draw.oneOf([...keys(state.shop?.portions), 'none' as never]),
    portions: draw.upTo(30),
  }),
  takeUpOrders: () => ({ type: 'takeUpOrders' }),
}

function anyOrder(state: State, draw: Draw): AskedOrder {
  const way = draw.oneOf(['here', 'here', 'pickUp', 'delivery'] as const)
  const items = keys(state.shop?.menu).length > 0 && way === 'here' ? [someItem(state, draw)] : []
  return {
    mark: draw.oneOf([null, 'AK', '41']),
    dueAtMs: way === 'here' ? null : at('9:00', draw.upTo(1)),
    way,
    runId: draw.oneOf([null, ...keys(state.shop?.runs)]),
    stop: draw.upTo(3),
    lines: items.length === 0 || draw.upTo(1) === 0 ? [someAsked(state, draw)] : [],
    items,
    isPaid: draw.upTo(1) === 0,
  }
}

function someAsked(state: State, draw: Draw): AskedLine {
  const mixed = draw.upTo(2) === 0
  const variety = draw.oneOf(keys(state.shop?.varieties))
  return {
    varietyId: mixed ? null : variety,
    without: mixed ? [variety] : [],
    dozens: draw.upTo(2),
    pieces: draw.upTo(6),
    sliced: draw.upTo(3) === 0,
    bagged: draw.upTo(3) === 0,
  }
}

function someItem(state: State, draw: Draw): AskedItem {
  const item = draw.oneOf([...(state.shop?.menu.values() ?? [])])
  const varieties: readonly VarietyId[] = keys(state.shop?.varieties)
  return {
    itemId: item.id,
    varietyId: item.onBagel ? draw.oneOf(varieties) : null,
    toasted: draw.upTo(1) === 0,
    without: draw.upTo(3) === 0 ? item.portions.map(({ portionId }) => portionId) : [],
    more: draw.upTo(3) === 0 ? item.portions.map(({ portionId }) => portionId) : [],
    allergies: draw.upTo(5) === 0 ? ['sesame'] : [],
    times: draw.upTo(2) + 1,
  }
}

function someOrder(state: State, draw: Draw): Pick<Order, 'id' | 'items'> {
  const orders = [...state.orders.values()]
  return orders.length === 0 ? { id: orderId('none'), items: [] } : draw.oneOf(orders)
}

function somePart(state: State, draw: Draw): ItemPart {
  const made = [...state.orders.values()].filter(({ items }) => items.length > 0)
  if (made.length === 0) return { orderId: orderId('none'), no: 1, step: 0 }
  const { id, items } = draw.oneOf(made)
  const { no, steps } = draw.oneOf(items)
  return { orderId: id, no, step: draw.upTo(Math.max(0, steps.length - 1)) }
}

function someLines(state: State, draw: Draw): Line[] {
  return [{ varietyId: draw.oneOf(keys(state.shop?.varieties)), pieces: draw.upTo(12) + 1 }]
}

function keys<Id>(table: ReadonlyMap<Id, unknown> | undefined): readonly Id[] {
  return table === undefined ? [] : [...table.keys()]
}
