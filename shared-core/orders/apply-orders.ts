import type { EventOf } from '../day/events.ts'
import type { Folding } from '../day/folding.ts'
import { put } from '../day/recorder.ts'
import type { Order } from './order.ts'

export function applyOrderTaken({ state, undo }: Folding, { order, slip }: EventOf<'orderTaken'>): void {
  put(state, undo, 'orders', order.id, order)
  if (slip !== null && state.day !== null) state.day = { ...state.day, lastSlip: slip }
}

export function applyOrderChanged({ state, undo }: Folding, { order }: { readonly order: Order }): void {
  put(state, undo, 'orders', order.id, order)
}

export function applyItemsMoved({ state, undo }: Folding, { orders, times }: EventOf<'itemsMoved'>): void {
  for (const order of orders) put(state, undo, 'orders', order.id, order)
  for (const one of times) put(state, undo, 'makeTimes', one.key, one)
}

export function applyPortionsLeft({ state, undo }: Folding, { left }: EventOf<'portionsLeft'>): void {
  for (const one of left) put(state, undo, 'portions', one.portionId, one)
}
