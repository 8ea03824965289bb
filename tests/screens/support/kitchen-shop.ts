import { menuItemId, varietyId } from '../../../shared-core/ids.ts'
import type { AskedItem } from '../../../shared-core/orders/order-commands.ts'
import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import { hours } from '../../core/support/shop.ts'
import { kitchenParts } from '../../core/support/shop-kitchen.ts'
import { shiftShop } from './shift-shop.ts'
import type { ShopServer } from './shop-server.ts'

export interface KitchenShop {
  readonly language?: Language
  /** Minutes from now until the second menu bakes; below 0: it bakes already. */
  readonly secondMenuIn?: number
  readonly more?: Partial<Shop>
}

/** An invented shop with sandwiches, an oven of ten places and drinks, around the hour of its changeover. */
export function kitchenShop({ language = 'en', secondMenuIn = -30, more = {} }: KitchenShop = {}): Shop {
  const base = shiftShop({ language, changeoverIn: secondMenuIn - 30 })
  const now = (base.hours.changeoverFromMinute ?? 0) - (secondMenuIn - 30)
  return {
    ...base,
    ...kitchenParts(),
    runs: new Map(),
    hours: hours({
      ovenReadyMinute: now - 300,
      openMinute: now - 240,
      changeoverFromMinute: now + secondMenuIn - 30,
      changeoverToMinute: now + secondMenuIn,
      closeMinute: now + 240,
      secondMenu: language === 'en' ? 'Flatbreads' : 'Panes planos',
    }),
    ...more,
  }
}

/** An item as it is asked for. */
export function asked(item: string, parts: Partial<AskedItem> & { readonly on?: string } = {}): AskedItem {
  const { on, ...more } = parts
  return {
    itemId: menuItemId(item),
    varietyId: on === undefined ? null : varietyId(on),
    toasted: false,
    without: [],
    more: [],
    allergies: [],
    times: 1,
    ...more,
  }
}

/** A slip of somebody who waits at the counter. */
export function slip(server: ShopServer, mark: string, items: readonly AskedItem[], note = ''): Promise<void> {
  return server.act(
    {
      type: 'takeOrder',
      mark,
      dueAtMs: null,
      way: 'here',
      runId: null,
      stop: 0,
      lines: [],
      items,
      isPaid: true,
      ...(note === '' ? {} : { details: { name: '', phone: '', note } }),
    },
    'counter',
  )
}
