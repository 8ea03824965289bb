import type { State } from '../../../shared-core/day/state.ts'
import { NEW_SHOP_NAME } from '../../../shared-core/shop/new-shop.ts'

/** Whether nobody has set this shop up: it is called as a new one is, and nothing was ever done in it. */
export function isNewShop({ shop, day, lastDay, batches, stock }: State): boolean {
  const isIdle = day === null && lastDay === null && batches.size === 0 && stock.size === 0
  return isIdle && (shop === null || shop.profile.name === NEW_SHOP_NAME)
}
