import type { DoughId, VarietyId } from '../ids.ts'
import { doughId, varietyId } from '../ids.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop, Variety } from '../shop/shop.ts'

/** Between a dough and what was decided at the mixer. Ids have no blanks. */
const OF = ' '

/** What a variety is boiled from: its dough, or its own where it is decided at the mixer (raisins are in it already). */
export function doughKeyOf(shop: Shop, { id, doughId: dough, decidedAt }: Variety): string {
  return decidedAt === 'mixer' && !isAlone(shop, dough) ? `${dough}${OF}${id}` : dough
}

/** The same of pieces that stand somewhere. @param of null: plain dough */
export function doughKey(shop: Shop, dough: DoughId, of: VarietyId | null): string {
  const variety = of === null ? undefined : shop.varieties.get(of)
  return variety === undefined ? dough : doughKeyOf(shop, variety)
}

export function doughOfKey(key: string): { readonly doughId: DoughId; readonly varietyId: VarietyId | null } {
  const [dough = '', of] = key.split(OF)
  return { doughId: doughId(dough), varietyId: of === undefined ? null : varietyId(of) }
}

/** All of such a dough becomes the same: nobody says so of each tray. */
function isAlone(shop: Shop, dough: DoughId): boolean {
  return inUse(shop.varieties).filter((variety) => variety.doughId === dough).length === 1
}
