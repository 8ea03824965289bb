import type { State } from '../../../shared-core/day/state.ts'
import { menuItemId, portionId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { AskedItem, ItemPart, OrderCommand } from '../../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at, stateWith } from './make.ts'
import { play } from './play.ts'
import { shopWith } from './shop.ts'
import { kitchenParts } from './shop-kitchen.ts'

export const KITCHEN_SHOP = shopWith(kitchenParts())

/** An afternoon's kitchen, played act by act on a state. */
export class Afternoon {
  readonly state: State

  constructor(parts: Partial<Parameters<typeof stateWith>[0]> = {}) {
    this.state = stateWith({ shop: KITCHEN_SHOP, ...parts })
  }

  /** A slip of somebody who waits, taken at a clock time; `item on variety`. @example slip('12:30', '41', 'flatbread', 'lox on sesame') */
  slip(clock: string, mark: string, ...items: readonly (string | Partial<AskedItem>)[]): this {
    const asked = items.map((item): AskedItem => {
      const said = typeof item === 'string' ? named(item) : item
      return { ...PLAIN, ...said }
    })
    const order = {
      mark,
      dueAtMs: null,
      way: 'here',
      runId: null,
      stop: 0,
      lines: [],
      items: asked,
      isPaid: true,
    } as const
    play(this.state, { type: 'takeOrder', ...order }, { nowMs: at(clock) })
    return this
  }

  /** Moves parts on: mark, item, step. */
  move(
    clock: string,
    to: Extract<OrderCommand, { type: 'moveItems' }>['to'],
    parts: readonly (readonly [mark: string, no: number, step: number])[],
    shelf: string | null = null,
  ): this {
    const moved = parts.map(([mark, no, step]) => this.part(mark, no, step))
    const into = shelf === null ? null : shelfId(shelf)
    play(this.state, { type: 'moveItems', parts: moved, to, shelfId: into }, { nowMs: at(clock) })
    return this
  }

  count(clock: string, portion: string, portions: number): this {
    play(this.state, { type: 'countPortions', portionId: portionId(portion), portions }, { nowMs: at(clock) })
    return this
  }

  part(mark: string, no: number, step: number): ItemPart {
    const order = [...this.state.orders.values()].find((one) => one.mark === mark)
    if (order === undefined) throw new Error(`no order ${mark}`)
    return { orderId: order.id, no, step }
  }

  due(mark: string): EpochMs {
    const order = [...this.state.orders.values()].find((one) => one.mark === mark)
    if (order === undefined) throw new Error(`no order ${mark}`)
    return order.dueAtMs
  }
}

const PLAIN: AskedItem = {
  itemId: menuItemId('flatbread'),
  varietyId: null,
  toasted: false,
  without: [],
  more: [],
  allergies: [],
  times: 1,
}

function named(text: string): Pick<AskedItem, 'itemId' | 'varietyId'> {
  const [item = '', on] = text.split(' on ')
  return { itemId: menuItemId(item), varietyId: on === undefined ? null : varietyId(on) }
}
